/** An entry module without any guard: what the program refuses must succeed here, else the tests could not fail. */
import { app, BrowserWindow, ipcMain, protocol, session } from 'electron';

const PAGE = '<!doctype html><title>Unguarded</title><h1>Unguarded</h1>';

protocol.registerSchemesAsPrivileged([{ scheme: 'open', privileges: { standard: true, secure: true } }]);
void app.whenReady().then(async () => {
  session.defaultSession.protocol.handle(
    'open',
    () => new Response(PAGE, { headers: { 'Content-Type': 'text/html; charset=utf-8' } }),
  );
  ipcMain.handle('anybody', (event) => event.senderFrame?.url ?? null);
  await new BrowserWindow().loadURL('open://app/');
});
