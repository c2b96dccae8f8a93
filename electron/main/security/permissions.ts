import type { Session } from 'electron';

/** Electron's security tutorial, item 5: camera, microphone, place and the rest are refused, asked for or looked up. */
export function refusePermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => {
    answer(false);
  });
  session.setPermissionCheckHandler(() => false);
}
