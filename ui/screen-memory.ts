const own = new Map<string, string>();

/**
 * What a screen remembers over a restart: the browser's own storage. Where that is denied, full or broken the screen
 * works on and remembers until it is switched off.
 */
export const screenMemory: Pick<Storage, 'getItem' | 'setItem'> = {
  getItem(name) {
    const now = own.get(name);
    if (now !== undefined) return now;
    try {
      return localStorage.getItem(name);
    } catch {
      return null;
    }
  },
  setItem(name, value) {
    try {
      localStorage.setItem(name, value);
      own.delete(name);
    } catch {
      own.set(name, value);
    }
  },
};
