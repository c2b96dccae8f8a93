/** The parts of the one program that a test file runs at a time; `electron.ts` shows them to the sources under test. */
import { AppStandIn } from './app.ts';
import { DialogStandIn } from './dialog.ts';
import { IpcMainStandIn } from './ipc-main.ts';
import { SessionStandIn } from './session.ts';

export const app = new AppStandIn();
export const ipcMain = new IpcMainStandIn();
export const dialog = new DialogStandIn();
export const defaultSession = new SessionStandIn();

/** Everything as before a start. */
export async function forgetProgram(): Promise<void> {
  await defaultSession.forget();
  app.forget();
  ipcMain.forget();
  dialog.forget();
}
