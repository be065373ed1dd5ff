/** The name in the page's head under which a build of the screens says which one it is. */
export const SCREENS_NAME = 'screens';

/** Finds in a page which build of the screens it is of. */
export const SCREENS_NAMED = /<meta name="screens" content="([\w-]{1,64})"/;
