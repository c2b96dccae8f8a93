import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { staticFile } from '../../electron/host/static-files.ts';
import { CONTENT_SECURITY_POLICY } from '../../shared/host/csp.ts';
import { closeBrowser } from '../electron-stand-in/chromium.ts';
import { defaultSession } from '../electron-stand-in/program.ts';
import { startProgram, stopProgram, type Running } from '../electron-stand-in/start-program.ts';

let running: Running;
beforeAll(async () => {
  running = await startProgram();
});
afterAll(async () => {
  await stopProgram();
  await closeBrowser();
});

const answerTo = async (
  address: string,
  init?: RequestInit,
): Promise<{ status: number; type: string; text: string }> => {
  const response = await defaultSession.ask(address, init);
  expect(response.headers.get('content-security-policy'), address).toBe(CONTENT_SECURITY_POLICY);
  expect(response.headers.get('x-content-type-options'), address).toBe('nosniff');
  return {
    status: response.status,
    type: response.headers.get('content-type') ?? '',
    text: await response.text(),
  };
};

describe('the scheme serves the built window and the drawings, each answer with the policy', () => {
  it('serves the page, its scripts and a drawing', async () => {
    const page = await answerTo('droplight://app/');
    expect(page).toMatchObject({ status: 200, type: 'text/html; charset=utf-8' });
    const script = /src="\.\/(assets\/[^"]+\.js)"/.exec(page.text)?.[1] ?? 'no script';
    expect(await answerTo(`droplight://app/${script}`)).toMatchObject({
      status: 200,
      type: 'text/javascript; charset=utf-8',
    });
    expect(await answerTo('droplight://app/pictures/heat-by-hand.svg')).toMatchObject({
      status: 200,
      type: 'image/svg+xml',
    });
  });

  it.each([
    'droplight://app/no-such-file.html',
    'droplight://app/assets/',
    'droplight://app/assets',
    'droplight://app/..%2f..%2fpackage.json',
    'droplight://app/..%2F..%2F..%2F..%2Fetc%2Fhosts.txt',
    'droplight://app/assets/..%2f..%2f..%2fpackage.json',
    'droplight://app/assets/%2e%2e/%2e%2e/stamp',
    'droplight://app/..%5c..%5cpackage.json',
    'droplight://app/index.html%00.svg',
    'droplight://app/%E0%A4%A.html',
    'droplight://app/pictures/..%2fvocabulary%2flimits.yaml',
    'droplight://app/pictures/..%2f..%2fpackage.json',
    'droplight://app/pictures/no-such.svg',
    'droplight://other/index.html',
    'droplight://app.elsewhere.example/index.html',
    'droplight:///index.html',
  ])('refuses %s', async (address) => {
    expect(await answerTo(address)).toEqual({
      status: 404,
      type: 'text/plain;charset=UTF-8',
      text: 'There is no such file.',
    });
  });

  it.each(['POST', 'PUT', 'DELETE', 'HEAD', 'OPTIONS'])('refuses to be asked by %s', async (method) => {
    expect((await answerTo('droplight://app/index.html', { method })).status).toBe(404);
  });
});

it.each([
  '../../package.json',
  '../package.json',
  '..',
  '',
  'assets/../../package.json',
  '../renderer-other/index.html',
  '../stamp.txt',
])('a path that does not begin at the top, “%s”, leads out of no folder', async (path) => {
  const window = new URL('../../build/renderer', import.meta.url).pathname;
  expect(await staticFile(path, { window, pictures: window })).toBeNull();
});

describe('the policy holds in the page', () => {
  it.each([
    ['a script of another origin', 'script', 'src', 'https://elsewhere.example/x.js'],
    ['a picture of another origin', 'img', 'src', 'https://elsewhere.example/x.png'],
    ['a style of another origin', 'link', 'href', 'https://elsewhere.example/x.css'],
    ['a frame', 'iframe', 'src', 'https://elsewhere.example/'],
    ['its own page in a frame', 'iframe', 'src', 'index.html'],
  ])('%s is not loaded', async (_, tag, attribute, address) => {
    const directives = await running.page.evaluate(
      ([name, field, to]) =>
        new Promise<string[]>((resolve) => {
          const seen: string[] = [];
          document.addEventListener('securitypolicyviolation', (event) => seen.push(event.effectiveDirective), {
            once: true,
          });
          const element = document.createElement(name);
          if (element instanceof HTMLLinkElement) element.rel = 'stylesheet';
          // A plain address is no trusted script address: that alone must stop a script.
          try {
            element.setAttribute(field, to);
          } catch (problem) {
            if (!(problem instanceof TypeError)) throw problem;
          }
          document.body.append(element);
          setTimeout(() => {
            element.remove();
            resolve(seen);
          }, 300);
        }),
      [tag, attribute, address] as const,
    );
    expect(directives).toHaveLength(1);
    expect(defaultSession.outside).toEqual([]);
  });

  it('text is not run as a script, and the page has no way to fetch', async () => {
    expect(
      await running.page.evaluate(async () => {
        const inline = document.createElement('script');
        let refusedText = false;
        try {
          inline.text = 'document.title = "taken"';
        } catch (problem) {
          refusedText = problem instanceof TypeError;
        }
        document.body.append(inline);
        const fetched = await fetch('index.html').then(
          () => true,
          () => false,
        );
        return [refusedText, document.title, fetched];
      }),
    ).toEqual([true, 'Droplight', false]);
  });
});
