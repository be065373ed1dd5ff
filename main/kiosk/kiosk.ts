export { readEnvironment } from '../hub/environment.ts';
export { KioskWindow } from './browser-window.ts';
export { DEATHS, HubKeeper } from './hub-keeper.ts';
export { servePage } from './page-server.ts';
export { stoppedPage } from './stopped-page.ts';
