/** The desktop program: builds everything up and opens the window. */
import { join } from 'node:path';
import { app, dialog, session, type BrowserWindow } from 'electron';
import { dataFolder, draftsFolder, sharedFolder } from '../host/data-folder.ts';
import { createHost } from '../host/host.ts';
import { programFolders } from '../host/program-folders.ts';
import { answerIpc } from './ipc.ts';
import { refusePermissions } from './security/permissions.ts';
import { declareScheme, serveScheme } from './security/scheme.ts';
import { openWindow } from './window.ts';

/** Everything that needs the program to be ready. */
async function start(): Promise<void> {
  const folders = programFolders(import.meta.url);
  const data = dataFolder();
  const host = await createHost({
    dataFolder: data,
    draftsFolder: draftsFolder(data),
    sharedFolder: sharedFolder(data),
    treesFolder: folders.trees,
    preparedCards: folders.cards,
    shell: 'electron',
    version: app.getVersion(),
  });
  refusePermissions(session.defaultSession);
  serveScheme(session.defaultSession, { window: folders.window, pictures: host.picturesFolder });
  let window: BrowserWindow | null = null;
  app.on('second-instance', () => {
    if (window?.isMinimized()) window.restore();
    window?.focus();
  });
  app.on('window-all-closed', () => {
    app.quit();
  });
  answerIpc(host, () => window?.webContents ?? null);
  // The page asks at once while it loads: the window is known before that.
  await openWindow(join(folders.build, 'preload', 'preload.cjs'), (made) => (window = made));
}

if (!app.requestSingleInstanceLock()) app.quit();
else {
  declareScheme();
  app.enableSandbox();
  // Not awaited here: the program becomes ready only after this module has been evaluated.
  app
    .whenReady()
    .then(start)
    .catch((problem: unknown) => {
      dialog.showErrorBox('Droplight could not start', problem instanceof Error ? problem.message : String(problem));
      app.exit(1);
    });
}
