import type { WebContents } from 'electron';

/** Electron's security tutorial, item 13: the window never leaves its own page. */
export function blockNavigation(contents: WebContents): void {
  contents.on('will-navigate', (event) => {
    event.preventDefault();
  });
  contents.on('will-redirect', (event) => {
    event.preventDefault();
  });
  contents.on('will-attach-webview', (event) => {
    event.preventDefault();
  });
}
