/**
 * What the page may call: one named method a call of the contract, nothing generic. Electron's security tutorial, item 20:
 * no Electron object and no event reaches the page.
 */
import { contextBridge, ipcRenderer } from 'electron';
import { HOST_METHODS } from '../../shared/host/host-methods.ts';

contextBridge.exposeInMainWorld(
  'droplight',
  Object.fromEntries(
    HOST_METHODS.map((method) => [method, (request: unknown): Promise<unknown> => ipcRenderer.invoke(method, request)]),
  ),
);
