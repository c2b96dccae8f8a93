import type { Page } from '@playwright/test';
import { tonesInNoise, wavFile } from '../component/sounds.ts';
import { lookOver } from './look.ts';
import { changing, expect, test } from './shell.ts';

async function atBench(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await expect(page.locator('h1')).toHaveText('The yard is empty');
  await page.keyboard.press('m');
  await expect(page.locator('h1')).toHaveText('Air leak-down');
  await expect(page.locator('h1')).toBeFocused();
}

const wav = (name: string, bytes: Uint8Array) => ({ name, mimeType: 'audio/wav', buffer: Buffer.from(bytes) });

/** Fills something into every page, so that verdicts, refusals and drawings are there to be looked at. */
async function everyPage(page: Page, look: (name: string) => Promise<void>): Promise<void> {
  const fill = (label: string, text: string): Promise<void> => page.getByRole('textbox', { name: label }).fill(text);
  const pages: readonly (readonly [key: string, name: string, fill: () => Promise<unknown>])[] = [
    [
      '1',
      'leak-down',
      async () => {
        await fill('Pressure on the gauge now', '118');
        await page.getByRole('button', { name: /^Start( space)?$/ }).click();
        await page.waitForTimeout(300);
        await page.getByRole('button', { name: /^117 psi/ }).click();
        await page.getByRole('button', { name: /^End( e)?$/ }).click();
      },
    ],
    ['2', 'build-up', () => fill('Time taken', '44')],
    ['3', 'bands', () => fill('Knob popped at', '42')],
    ['4', 'flow', () => fill('Leak rate', 'two')],
    [
      '5',
      'stroke',
      async () => {
        await fill('Tank pressure, engine off', '90');
        await page.getByLabel('Chamber, axle 2').selectOption('clamp 30');
        await fill('Axle 2, left', '2 1/4');
        await fill('Axle 2, right', '2');
      },
    ],
    ['6', 'lining', () => fill('Thinnest place', '3/16')],
    [
      '7',
      'heat',
      async () => {
        await fill('First to last reading', '4');
        await fill('Steer axle, left', '150');
        await fill('Steer axle, right', '190');
      },
    ],
    ['8', 'end play', () => fill('Whole movement', '0.006')],
    [
      '9',
      'orders',
      async () => {
        await fill('Road speed', '60');
        await fill('Turns of a tyre over a mile', '500');
        await fill('Axle ratio', '4.11');
        await fill('Or typed', '34');
      },
    ],
    [
      '0',
      'sound',
      async () => {
        await page
          .getByLabel('Open a WAV file')
          .setInputFiles(wav('tone.wav', wavFile(tonesInNoise([[34.2, 0.1]], 10, 8000), 8000)));
        await expect(page.getByRole('heading', { name: /stands out, by/ })).toBeVisible();
      },
    ],
  ];
  for (const [key, name, run] of pages) {
    if (key !== '1') await changing(page, () => page.keyboard.press(key));
    await run();
    await page.locator('main h1').focus();
    await look(name);
  }
}

test('leak-down with the keyboard alone', async ({ page, address }) => {
  await atBench(page, address);
  await page.getByRole('textbox', { name: 'Pressure on the gauge now' }).focus();
  await page.keyboard.type('120');
  await page.keyboard.press('Enter');
  await expect(page.getByText('running', { exact: true })).toBeVisible();
  await page.keyboard.press('Escape');
  await page.waitForTimeout(1500);
  await page.keyboard.press('Space');
  await page.waitForTimeout(1500);
  await page.keyboard.press('Space');
  await page.keyboard.press('e');
  await expect(page.getByRole('list', { name: 'Marks' }).getByRole('listitem')).toHaveCount(3);
  // Two pounds in three seconds: some forty a minute, far beyond three.
  await expect(page.getByRole('heading', { name: /Beyond the limit/ })).toBeVisible();
  await page.keyboard.press('2');
  await expect(page.locator('h1')).toHaveText('Build-up and tanks');
  await page.keyboard.press('1');
  await expect(page.getByRole('list', { name: 'Marks' }).getByRole('listitem')).toHaveCount(3);
  await page.keyboard.press('Escape');
  await expect(page.locator('h1')).toHaveText('The yard is empty');
});

test('a WAV file: the tone of 43 Hz is found in its noise, by a worker', async ({ page, address }) => {
  await atBench(page, address);
  await changing(page, () => page.keyboard.press('0'));
  const worker = page.waitForEvent('worker');
  await page
    .getByLabel('Open a WAV file')
    .setInputFiles(wav('humming.wav', wavFile(tonesInNoise([[43, 0.05]], 30, 44_100), 44_100)));
  expect((await worker).url()).toContain('spectrum.worker');
  const heading = page.getByRole('heading', { name: /Hz stands out, by/ });
  await expect(heading).toBeVisible();
  const [, hz, db] = /^([\d.]+) Hz stands out, by (\d+) dB/.exec((await heading.textContent()) ?? '') ?? [];
  expect(Number(hz)).toBeCloseTo(43, 0);
  expect(Math.abs(Number(hz) - 43)).toBeLessThan(0.11);
  expect(Number(db)).toBeGreaterThan(15);
  await expect(page.getByRole('img', { name: /^Spectrum from 3 to 120 Hz\. Peaks: 4(3|3\.1|2\.9) Hz/ })).toBeVisible();
});

test('a long analysis can be stopped', async ({ page, address }) => {
  await atBench(page, address);
  await changing(page, () => page.keyboard.press('0'));
  await page
    .getByLabel('Open a WAV file')
    .setInputFiles(wav('long.wav', wavFile(tonesInNoise([[43, 0.05]], 150, 44_100), 44_100)));
  await expect(page.getByRole('progressbar')).toBeVisible();
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText('Nothing opened yet.')).toBeVisible();
  await page.waitForTimeout(1500);
  await expect(page.getByText('Nothing opened yet.')).toBeVisible();
});

test('a hostile WAV file is refused with the reason', async ({ page, address }) => {
  await atBench(page, address);
  await changing(page, () => page.keyboard.press('0'));
  const lying = wavFile(tonesInNoise([], 2, 8000), 8000);
  new DataView(lying.buffer).setUint32(40, 4_000_000_000, true);
  await page.getByLabel('Open a WAV file').setInputFiles(wav('lying.wav', lying));
  await expect(page.getByText(/should go on to byte 4000000044, but ends at/)).toBeVisible();
  await page
    .getByLabel('Open a WAV file')
    .setInputFiles(wav('not.wav', Buffer.from('<html>a page, not a sound</html>')));
  await expect(page.getByText(/This is no WAVE recording/)).toBeVisible();
  const channels = wavFile(tonesInNoise([], 2, 8000), 8000);
  new DataView(channels.buffer).setUint16(22, 9000, true);
  await page.getByLabel('Open a WAV file').setInputFiles(wav('channels.wav', channels));
  await expect(page.getByText(/9000 channels; 1 or 2 can be read/)).toBeVisible();
});

test('a microphone that is not allowed is said in words', async ({ page, address }) => {
  await atBench(page, address);
  await changing(page, () => page.keyboard.press('0'));
  await page.getByRole('button', { name: /Record by microphone/ }).click();
  await expect(page.getByText(/The microphone was not allowed|No microphone was found/)).toBeVisible();
});

test('every page of the bench: axe finds nothing, by day and by night, narrow and wide', async ({ page, address }) => {
  await atBench(page, address);
  await everyPage(page, (name) => lookOver(page, name));
});
