import { register } from 'node:module';

/** Maps the import of electron to a stand-in, so that the built shell runs in plain Node. */
const STAND_IN = `
import { EventEmitter } from 'node:events';
import { spawn } from 'node:child_process';
const tell = (line) => process.stdout.write('STAND-IN ' + line + '\\n');
class App extends EventEmitter {
  requestSingleInstanceLock() { return true; }
  whenReady() { return new Promise((ready) => setTimeout(ready, 300)); }
  quit() { this.emit('before-quit'); setTimeout(() => process.exit(0), 500); }
  exit(code) { process.exit(code); }
}
export const app = new App();
export const session = { defaultSession: { setPermissionRequestHandler() { tell('permission-request'); }, setPermissionCheckHandler() { tell('permission-check'); } } };
export const utilityProcess = { fork(path, args) { return spawn(process.execPath, [path, ...args], { stdio: ['ignore', 'pipe', 'pipe'] }); } };
export class BrowserWindow {
  constructor(options) { tell('window ' + JSON.stringify(options)); this.webContents = Object.assign(new EventEmitter(), { setWindowOpenHandler() { tell('window-open-handler'); }, reload() {} }); }
  async loadURL(url) { const answer = await fetch(url + '/api/health'); tell('loaded ' + url + ' ' + answer.status); app.quit(); }
  focus() {}
}
export const contextBridge = { exposeInMainWorld() {} };
`;
const hooks = `
export async function resolve(name, context, next) {
  return name === 'electron' ? { url: 'stand-in:electron', shortCircuit: true } : next(name, context);
}
export async function load(url, context, next) {
  return url === 'stand-in:electron' ? { format: 'module', source: ${JSON.stringify(STAND_IN)}, shortCircuit: true } : next(url, context);
}`;
register(`data:text/javascript,${encodeURIComponent(hooks)}`);
