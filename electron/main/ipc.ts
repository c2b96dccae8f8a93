import { ipcMain, type IpcMainInvokeEvent, type WebContents } from 'electron';
import type { HostFault } from '../../shared/host/host-api.ts';
import { HOST_METHODS } from '../../shared/host/host-methods.ts';
import { faultOf } from '../host/fault.ts';
import type { Host } from '../host/host.ts';
import { WINDOW_ORIGIN } from './security/scheme.ts';

/** What goes back over IPC: plain data, never a thrown error object. */
export type IpcResult = { readonly answer: unknown } | { readonly fault: HostFault };

/** One handler a method. Electron's security tutorial, item 17: only the main frame of our own window is answered. */
export function answerIpc(host: Host, window: () => WebContents | null): void {
  for (const method of HOST_METHODS) {
    ipcMain.handle(method, async (event, request: unknown): Promise<IpcResult> => {
      if (!isOurs(event, window())) {
        return {
          fault: {
            code: 'host-refused',
            message: `“${method}” came from somewhere else than the window. Nothing was written. Close the window and open the visit again.`,
          },
        };
      }
      try {
        return { answer: await host.answer(method, request) };
      } catch (problem) {
        return { fault: faultOf(problem) };
      }
    });
  }
}

function isOurs(event: IpcMainInvokeEvent, window: WebContents | null): boolean {
  const frame = event.senderFrame;
  return (
    frame !== null &&
    window !== null &&
    event.sender === window &&
    frame === window.mainFrame &&
    frame.url.startsWith(`${WINDOW_ORIGIN}/`)
  );
}
