import { afterEach, describe, expect, it } from 'vitest';
import type { WebContents } from 'electron';
import type { Host } from '../../electron/host/host.ts';
import { answerIpc } from '../../electron/main/ipc.ts';
import { HostError } from '../../shared/host/host-api.ts';
import { forgetProgram, ipcMain } from '../electron-stand-in/program.ts';

afterEach(forgetProgram);

/** A host that fails in one way, answered for a window that is the sender itself. */
function ask(problem: unknown, url = 'droplight://app/', from?: { readonly url: string }): Promise<unknown> {
  // A host may break its promise and throw anything: that is what is tested.
  // eslint-disable-next-line @typescript-eslint/prefer-promise-reject-errors
  const host: Host = { picturesFolder: '', call: () => Promise.reject(problem), answer: () => Promise.reject(problem) };
  const mainFrame = { url };
  const contents = { mainFrame };
  // Of the contents, the checks look at the frame alone.
  answerIpc(host, () => contents as unknown as WebContents);
  return ipcMain.deliver({ sender: contents, senderFrame: from ?? mainFrame }, 'app.info', [{}]);
}

describe('a failure crosses as plain data', () => {
  it('a refusal of the host as it is, without what lies underneath', async () => {
    const cause = new Error('inside');
    expect(await ask(new HostError({ code: 'disk', message: 'The disk is full.' }, { cause }))).toEqual({
      fault: { code: 'disk', message: 'The disk is full.' },
    });
  });

  it.each([new TypeError('x is not a function'), 'a text', undefined, { code: 'disk', message: 'not a HostError' }])(
    '[HOST-12] %s as machine-side',
    async (problem) => {
      expect(await ask(problem)).toEqual({
        fault: { code: 'machine-side', message: expect.stringContaining('did not expect') as unknown },
      });
    },
  );

  it.each(['droplight://app', 'droplight://apple/', 'https://app.droplight.invalid/', 'about:blank', ''])(
    'the window at “%s” is refused before the host is asked',
    async (url) => {
      expect(await ask(new Error('The host was asked.'), url)).toMatchObject({ fault: { code: 'host-refused' } });
    },
  );

  // A page can give a frame within it its own address (document.open does so): the address alone proves nothing.
  it('a frame within the window is refused even at the window’s own address', async () => {
    expect(await ask(new Error('The host was asked.'), undefined, { url: 'droplight://app/' })).toMatchObject({
      fault: { code: 'host-refused' },
    });
  });
});
