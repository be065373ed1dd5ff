import { register } from 'node:module';

/** Maps the import of electron to a stand-in, so that the built shell runs in plain Node. */
const stand = new URL('./stand-in-electron.mjs', import.meta.url).href;
const hooks = `
export async function resolve(name, context, next) {
  return name === 'electron' ? { url: ${JSON.stringify(stand)}, shortCircuit: true } : next(name, context);
}`;
register(`data:text/javascript,${encodeURIComponent(hooks)}`);
