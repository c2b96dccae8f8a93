import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { tonesInNoise, wavFile } from '../component/sounds.ts';
import { lookOver } from './look.ts';
import { changing, expect, Shell, test } from './shell.ts';

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
        await page.getByLabel('Chamber, axle 2', { exact: true }).selectOption('clamp 30');
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
          .getByLabel('Open a WAV file', { exact: true })
          .setInputFiles(wav('tone.wav', wavFile(tonesInNoise([[34.2, 0.1]], 10, 8000), 8000)));
        await expect(page.getByRole('heading', { name: /stands out, by/ })).toBeVisible();
      },
    ],
    [
      'Oil pressure',
      'oil pressure',
      async () => {
        await fill('Oil temperature', '205');
        await fill('Governed speed: engine speed', '2000');
        await fill('Governed speed: test gauge', '28');
        await page.getByRole('button', { name: 'Where do I find this? Oil temperature' }).click();
      },
    ],
    [
      'Drips and use',
      'drips',
      async () => {
        await fill('Drops counted', '24');
        await fill('Counted for', 'a minute');
        await fill('Counted for', '60');
        await fill('Fluid added in all', '3 quarts');
      },
    ],
  ];
  for (const [key, name, run] of pages) {
    if (key.length > 1) await changing(page, () => page.getByRole('button', { name: key, exact: true }).click());
    else if (key !== '1') await changing(page, () => page.keyboard.press(key));
    await run();
    await page.locator('main h1').focus();
    await look(name);
  }
}

test('leak-down with the keyboard alone, interrupted by a reload and gone on with', async ({ page, address }) => {
  await atBench(page, address);
  await page.getByRole('textbox', { name: 'Pressure on the gauge now' }).focus();
  await page.keyboard.type('120');
  await page.keyboard.press('Enter');
  await expect(page.getByText('running', { exact: true })).toBeVisible();
  await page.keyboard.press('Escape');
  await page.waitForTimeout(1500);
  await page.keyboard.press('Space');
  await expect(page.getByRole('list', { name: 'Marks' }).getByRole('listitem')).toHaveCount(2);
  await page.reload();
  await expect(page.locator('h1')).toHaveText('The yard is empty');
  await page.keyboard.press('m');
  // The hold went on meanwhile, and both marks are there.
  await expect(page.getByText('running', { exact: true })).toBeVisible();
  await expect(page.getByRole('list', { name: 'Marks' }).getByRole('listitem')).toHaveCount(2);
  await page.keyboard.press('Space');
  await page.keyboard.press('e');
  await expect(page.getByRole('list', { name: 'Marks' }).getByRole('listitem')).toHaveCount(3);
  const times = await page.getByRole('list', { name: 'Marks' }).getByRole('listitem').allInnerTexts();
  expect(Number.parseInt(times[2]!, 10)).toBeGreaterThanOrEqual(2);
  // Two pounds in a few seconds: far beyond three a minute.
  await expect(page.getByRole('heading', { name: /Beyond the limit/ })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.locator('h1')).toHaveText('The yard is empty');
});

/** Goes on by the Tab key until a field has the focus, and types into it. */
async function tabTo(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label, exact: true });
  for (let i = 0; i < 80 && !(await field.evaluate((each) => each === document.activeElement)); i++)
    await page.keyboard.press('Tab');
  await expect(field).toBeFocused();
  await page.keyboard.type(text);
}

test('two more calculators with the keyboard alone', async ({ page, address }) => {
  await atBench(page, address);
  await changing(page, () => page.keyboard.press('8'));
  await tabTo(page, 'Whole movement', '0.003');
  // 0.001 to 0.005 in: TMC RP 618, tests/reference/measuring/wheel-ends.test.ts.
  await expect(page.getByRole('heading', { name: 'Not too much: Within the limit' })).toBeVisible();
  await page.keyboard.press('Escape');
  await changing(page, () => page.keyboard.press('3'));
  await tabTo(page, 'Warning came on at', '62');
  await tabTo(page, 'Year of build', '1980');
  // V-37 of the limits: 62 psi against 60 passes; a dash gauge of give or take 6 cannot tell.
  await expect(page.getByRole('region', { name: 'Low-air warning' })).toContainText('at least 60 psi');
  await expect(page.getByRole('region', { name: 'Low-air warning' })).toContainText('Too close to call');
  await page.keyboard.press('Escape');
  await changing(page, () => page.keyboard.press('ArrowRight'));
  await expect(page.locator('h1')).toHaveText('Leak as a flow');
});

/** 60 mph on tyres of 500 turns a mile with an axle of 4.11 in direct drive: the shaft turns 34.25 times a second (row A). */
async function rowA(page: Page): Promise<void> {
  await changing(page, () => page.keyboard.press('9'));
  for (const [label, text] of [
    ['Road speed', '60'],
    ['Turns of a tyre over a mile', '500'],
    ['Axle ratio', '4.11'],
    ['Gear ratio (1 is direct)', '1'],
  ] as const)
    await page.getByRole('textbox', { name: label }).fill(text);
  await page.locator('main h1').focus();
  await changing(page, () => page.keyboard.press('0'));
}

test('a WAV file: the tone at twice the shaft is found in its noise, by a worker, and named', async ({
  page,
  address,
}) => {
  await atBench(page, address);
  await rowA(page);
  const worker = page.waitForEvent('worker');
  await page
    .getByLabel('Open a WAV file', { exact: true })
    .setInputFiles(wav('humming.wav', wavFile(tonesInNoise([[68.5, 0.05]], 30, 44_100), 44_100)));
  expect((await worker).url()).toContain('spectrum.worker');
  const heading = page.getByRole('heading', { name: /stands out, by/ });
  await expect(heading).toBeVisible();
  const said = (await heading.textContent()) ?? '';
  expect(Math.abs(Number(/([\d.]+) Hz/.exec(said)?.[1]) - 68.5)).toBeLessThan(0.15);
  expect(Number(/by (\d+) dB/.exec(said)?.[1])).toBeGreaterThan(15);
  await expect(page.getByRole('region', { name: 'What it holds' })).toContainText(/shaft/i);
  await expect(page.getByRole('img', { name: /^Spectrum from 3 to 120 Hz\. Peaks: 68(\.[3-7])? Hz/ })).toBeVisible();
});

test('a long analysis can be stopped', async ({ page, address }) => {
  await atBench(page, address);
  await changing(page, () => page.keyboard.press('0'));
  await page
    .getByLabel('Open a WAV file', { exact: true })
    .setInputFiles(wav('long.wav', wavFile(tonesInNoise([[43, 0.05]], 150, 44_100), 44_100)));
  await expect(page.getByRole('progressbar')).toBeVisible();
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await expect(page.getByText('Nothing opened yet.')).toBeVisible();
  await page.waitForTimeout(1500);
  await expect(page.getByText('Nothing opened yet.')).toBeVisible();
});

test('a hostile WAV file is refused with the reason', async ({ page, address }) => {
  await atBench(page, address);
  await changing(page, () => page.keyboard.press('0'));
  const lying = wavFile(tonesInNoise([], 2, 8000), 8000);
  new DataView(lying.buffer).setUint32(40, 4_000_000_000, true);
  await page.getByLabel('Open a WAV file', { exact: true }).setInputFiles(wav('lying.wav', lying));
  await expect(page.getByText(/should go on to byte 4000000044, but ends at/)).toBeVisible();
  await page
    .getByLabel('Open a WAV file', { exact: true })
    .setInputFiles(wav('not.wav', Buffer.from('<html>a page, not a sound</html>')));
  await expect(page.getByText(/This is no WAVE recording/)).toBeVisible();
  const channels = wavFile(tonesInNoise([], 2, 8000), 8000);
  new DataView(channels.buffer).setUint16(22, 9000, true);
  await page.getByLabel('Open a WAV file', { exact: true }).setInputFiles(wav('channels.wav', channels));
  await expect(page.getByText(/9000 channels; 1 or 2 can be read/)).toBeVisible();
});

test('a microphone that is not allowed is said in words; one that is allowed hears, and keeps nothing unless used', async ({
  page,
  address,
}, { project }) => {
  await atBench(page, address);
  await changing(page, () => page.keyboard.press('0'));
  await page.getByRole('button', { name: /Record by microphone/ }).click();
  await expect(page.getByText(/The microphone was not allowed|No microphone was found/)).toBeVisible();
  const other = new Shell();
  const tone = join(other.home, 'tone.wav');
  writeFileSync(tone, wavFile(tonesInNoise([[137, 0.3]], 8, 48_000), 48_000));
  const launch = project.use.launchOptions ?? {};
  const browser = await chromium.launch({
    ...launch,
    args: [
      ...(launch.args ?? []),
      '--use-fake-ui-for-media-stream',
      '--use-fake-device-for-media-stream',
      `--use-file-for-fake-audio-capture=${tone}`,
    ],
  });
  try {
    const hearing = await browser.newPage();
    await hearing.goto(await other.start());
    await hearing.locator('h1').waitFor();
    await hearing.keyboard.press('m');
    await expect(hearing.locator('h1')).toHaveText('Air leak-down');
    await changing(hearing, () => hearing.keyboard.press('0'));
    await hearing.getByLabel('Show', { exact: true }).selectOption('300');
    const record = hearing.getByRole('button', { name: /Record by microphone/ });
    await record.click();
    await expect(hearing.getByText(/Recording, \d+ s of at most/)).toBeVisible();
    expect(new URL(hearing.url()).hash).toBe('#microphone');
    await hearing.getByRole('button', { name: 'Throw it away' }).click();
    await expect(record).toBeVisible();
    expect(new URL(hearing.url()).hash).toBe('');
    await expect(hearing.getByText('Nothing opened yet.')).toBeVisible();
    await record.click();
    await hearing.waitForTimeout(4000);
    await hearing.getByRole('button', { name: 'End the recording' }).click();
    await expect(hearing.getByText(/recorded, not kept unless used/)).toBeVisible();
    await expect(hearing.getByText('Nothing opened yet.')).toBeVisible();
    await hearing.getByRole('button', { name: 'Use this recording' }).click();
    const heading = hearing.getByRole('heading', { name: /stands out, by/ });
    await expect(heading).toBeVisible();
    expect(Math.abs(Number(/([\d.]+) Hz/.exec((await heading.textContent()) ?? '')?.[1]) - 137)).toBeLessThan(1);
  } finally {
    await browser.close();
    await other.end();
  }
});

test('every page of the bench: axe finds nothing, by day and by night, narrow and wide', async ({ page, address }) => {
  await atBench(page, address);
  await everyPage(page, (name) => lookOver(page, name));
});
