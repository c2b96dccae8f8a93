/** The desktop program: builds everything up and opens the window. */
import { join } from 'node:path';
import { app, session } from 'electron';
import { dataFolder } from '../host/data-folder.ts';
import { createHost } from '../host/host.ts';
import { programFolders } from '../host/program-folders.ts';
import { answerIpc } from './ipc.ts';
import { refusePermissions } from './security/permissions.ts';
import { declareScheme, serveScheme } from './security/scheme.ts';
import { openWindow } from './window.ts';

if (!app.requestSingleInstanceLock()) app.quit();
else {
  declareScheme();
  app.enableSandbox();
  await app.whenReady();
  const folders = programFolders(import.meta.url);
  const host = await createHost({
    dataFolder: dataFolder(),
    treesFolder: folders.trees,
    shell: 'electron',
    version: app.getVersion(),
  });
  refusePermissions(session.defaultSession);
  serveScheme(session.defaultSession, { window: folders.window, pictures: host.picturesFolder });
  const preload = join(folders.build, 'preload', 'preload.cjs');
  let window: Awaited<ReturnType<typeof openWindow>> | null = null;
  answerIpc(host, () => window?.webContents ?? null);
  // The page asks at once while it loads: the window is known before that.
  window = await openWindow(preload, (made) => (window = made));
  app.on('second-instance', () => {
    window?.focus();
  });
  app.on('window-all-closed', () => {
    app.quit();
  });
}
