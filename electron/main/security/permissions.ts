import type { Session, WebContents } from 'electron';
import { MICROPHONE_MARK } from '../../../shared/host/microphone.ts';
import { WINDOW_ORIGIN } from './scheme.ts';

/**
 * Electron's security tutorial, item 5: camera, place and the rest are refused, asked for or looked up. One thing is
 * granted: sound alone, to the main frame of the own window, and only while its address carries the mark that the page
 * of recordings sets when its button is pressed and takes away again.
 */
export function refusePermissions(session: Session): void {
  session.setPermissionRequestHandler((contents, permission, answer, details) => {
    const types = 'mediaTypes' in details ? (details.mediaTypes ?? []) : [];
    const soundAlone = types.length > 0 && types.every((type) => type === 'audio');
    answer(permission === 'media' && soundAlone && mayHear(contents, details.isMainFrame, details.requestingUrl));
  });
  session.setPermissionCheckHandler(
    (contents, permission, requestingOrigin, details) =>
      permission === 'media' &&
      details.mediaType === 'audio' &&
      mayHear(contents, details.isMainFrame, requestingOrigin),
  );
}

function mayHear(contents: WebContents | null, mainFrame: boolean, asking: string): boolean {
  if (!contents || !mainFrame || !isOwn(asking)) return false;
  const address = contents.getURL();
  return isOwn(address) && new URL(address).hash === MICROPHONE_MARK;
}

function isOwn(address: string): boolean {
  if (!URL.canParse(address)) return false;
  // A scheme of one's own has no origin in the sense of the URL standard: its parts are compared.
  const { protocol, host } = new URL(address);
  return `${protocol}//${host}` === WINDOW_ORIGIN;
}
