import type { WebContents } from 'electron';

/** Electron's security tutorial, item 14: no page opens another window. */
export function blockNewWindows(contents: WebContents): void {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}
