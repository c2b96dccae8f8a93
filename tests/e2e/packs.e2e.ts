import type { Page } from '@playwright/test';
import { goodPack, zipOf } from '../packs.ts';
import { lookOver } from './look.ts';
import { changing, expect, test } from './shell.ts';

const zip = (files: Readonly<Record<string, string>>, name = 'yard-notes.zip') => ({
  name,
  mimeType: 'application/zip',
  buffer: Buffer.from(zipOf(files), 'base64'),
});

async function toTrees(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await changing(page, () => page.getByRole('button', { name: /^Trees/ }).click());
  await expect(page.locator('main h1')).toHaveText('Trees');
}

test('a pack is added, its complaint begun, the pack removed, and the visit still opens with its drawing', async ({
  page,
  address,
}) => {
  await toTrees(page, address);
  await page.getByLabel('Pack as a zip').setInputFiles(zip(goodPack()));
  await expect(page.getByRole('region', { name: 'Pack yard-notes' })).toContainText('Version 1, 1 tree, 1 drawing');
  await page.getByRole('button', { name: /To the yard/ }).click();
  await page.getByRole('button', { name: /Begin a visit/ }).click();
  await page.getByRole('textbox', { name: 'What is it doing?' }).fill('only a click, no horn');
  await page.getByLabel('Name or number').fill('Invented coach 12');
  await page.getByRole('radio', { name: 'Mechanic' }).check();
  const hit = page.getByRole('button', { name: /Air horn stays silent/ });
  await expect(hit).toContainText('From the pack yard-notes, version 1');
  await hit.click();
  await expect(page.locator('main h1')).toContainText('Listen at the horn');
  const drawing = page.getByRole('img', { name: 'A horn seen from the side' });
  const isDrawn = (): Promise<boolean> =>
    drawing.evaluate((image) => image instanceof HTMLImageElement && image.complete && image.naturalWidth > 0);
  await drawing.scrollIntoViewIfNeeded();
  await expect.poll(isDrawn).toBe(true);
  // [PLA-45] A complaint so small is worked out to the end, and says so.
  await page.getByRole('button', { name: /Why this one/ }).click();
  await expect(page.getByText(/Every order of what is left was worked out to the proven cure/)).toBeVisible();
  await page.getByRole('button', { name: /Why this one/ }).click();

  await page.getByRole('button', { name: /Yard/ }).first().click();
  await changing(page, () => page.getByRole('button', { name: /^Trees/ }).click());
  await page.getByRole('button', { name: 'Remove the pack yard-notes' }).click();
  await page.getByRole('button', { name: 'Remove yard-notes' }).click();
  await expect(page.getByText(/“yard-notes” is removed/)).toBeVisible();
  await page.reload();
  await page.getByRole('button', { name: /Open the visit of Invented coach 12/ }).click();
  await expect(page.locator('main h1')).toContainText('Listen at the horn');
  await drawing.scrollIntoViewIfNeeded();
  await expect.poll(isDrawn).toBe(true);
});

test('a hostile pack is refused with its place, and nothing of it is kept', async ({ page, address }) => {
  await toTrees(page, address);
  const drawing = '<svg xmlns="http://www.w3.org/2000/svg">\n<script>alert(1)</script></svg>';
  await page.getByLabel('Pack as a zip').setInputFiles(zip({ ...goodPack(), 'pictures/horn.svg': drawing }, 'bad.zip'));
  await expect(page.getByRole('heading', { name: '“bad.zip” was not added' })).toBeVisible();
  await expect(page.getByRole('list', { name: 'What is wrong' })).toContainText('pictures/horn.svg:2');
  await expect(page.getByText('None yet.').first()).toBeVisible();
});

test('a tree is tried in a worker of the window’s own, under the policy', async ({ page, address }) => {
  await toTrees(page, address);
  await page.getByRole('button', { name: /Look inside “Engine brake/ }).click();
  await page.getByRole('button', { name: 'Try this tree' }).click();
  await expect(page.getByRole('progressbar')).toBeVisible();
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText('Stopped. Nothing was kept.')).toBeVisible();
  await page.getByRole('button', { name: 'Try this tree' }).click();
  await expect(page.getByText(/An owner without tools can rule out danger in/)).toBeVisible({ timeout: 120_000 });
});

test('the pages of the trees: axe finds nothing, by day and by night, narrow and wide', async ({ page, address }) => {
  await toTrees(page, address);
  await page.getByLabel('Pack as a zip').setInputFiles(zip(goodPack()));
  await expect(page.getByRole('region', { name: 'Pack yard-notes' })).toBeVisible();
  await page.getByLabel('Pack as a zip').setInputFiles(zip(goodPack()));
  await expect(page.getByRole('button', { name: 'Replace it' })).toBeVisible();
  await lookOver(page, 'trees');
  await page.getByRole('button', { name: /Look inside “Air escapes/ }).click();
  await expect(page.getByRole('heading', { name: 'Weak spots' })).toBeVisible();
  await lookOver(page, 'author');
});
