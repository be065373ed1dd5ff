import { contextBridge } from 'electron';

/** All that the page learns of the shell: that it is there. Everything else goes through the hub. */
contextBridge.exposeInMainWorld('shoulderline', { shell: true });
