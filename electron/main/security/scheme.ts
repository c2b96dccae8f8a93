import { protocol, type Session } from 'electron';
import { SECURITY_HEADERS } from '../../../shared/host/csp.ts';
import { staticFile } from '../../host/static-files.ts';

/** Address of the window. Electron's security tutorial, item 18: no file: addresses, a scheme of our own. */
export const WINDOW_ORIGIN = 'droplight://app';

/** Must run before the app is ready. */
export function declareScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: 'droplight', privileges: { standard: true, secure: true, supportFetchAPI: false } },
  ]);
}

/** Serves the built window and the drawings, and nothing outside their folders. */
export function serveScheme(session: Session, folders: { readonly window: string; readonly pictures: string }): void {
  session.protocol.handle('droplight', async (request) => {
    const url = new URL(request.url);
    const file = url.host === 'app' && request.method === 'GET' ? await staticFile(url.pathname, folders) : null;
    if (!file) return new Response('There is no such file.', { status: 404, headers: SECURITY_HEADERS });
    return new Response(new Uint8Array(file.body), { headers: { ...SECURITY_HEADERS, 'Content-Type': file.type } });
  });
}
