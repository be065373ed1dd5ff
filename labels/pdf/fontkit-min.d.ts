/** Half the source of the plain build, which has letters beyond Latin 1 in it and is therefore held at two bytes each. */
declare module '@pdf-lib/fontkit/dist/fontkit.umd.min.js' {
  import fontkit from '@pdf-lib/fontkit';
  export default fontkit;
}
