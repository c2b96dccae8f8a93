import { readFile } from 'node:fs/promises';
import { begin, concluding, expect, nothingToStop, test } from './shell.ts';

test('from a conclusion to an agreed plan and the list of parts, by keyboard', async ({ page, address }) => {
  await begin(page, address, 'growl through the floor above 50');
  await nothingToStop(page);
  await concluding(page);
  // Take the cause: it stands in the plan.
  await page.keyboard.press('Enter');
  await expect(page.getByText(/taken as the probable cause/i)).toBeVisible();
  await page.keyboard.press('q');
  await expect(page.getByRole('heading', { level: 1, name: 'What is done, in this order' })).toBeFocused();
  await page.keyboard.press('1');
  const card = page.getByRole('article').first();
  await expect(card.getByRole('heading', { name: 'Why' })).toBeVisible();
  await page.keyboard.press('x');
  await expect(card.getByText('Declined')).toBeVisible();
  await page.keyboard.press('a');
  await expect(page.getByRole('button', { name: /^Agree/ }).first()).toHaveAttribute('aria-pressed', 'true');

  await page.keyboard.press('e');
  await expect(page.getByRole('heading', { name: 'What else it could have been' })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('heading', { level: 1, name: 'What is done, in this order' })).toBeFocused();
  // Whatever the cause was: one more line, with a part, by hand.
  await page.keyboard.press('n');
  await page.getByLabel('What is done', { exact: true }).fill('Renew the hose to the heater');
  await page.getByLabel('Parts, with commas between').fill('heater hose');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('article', { name: /Renew the hose to the heater/ })).toBeVisible();
  await page.keyboard.press('l');
  await expect(page.getByRole('heading', { level: 1, name: 'Parts, ordered once' })).toBeFocused();
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('v')]);
  expect(download.suggestedFilename()).toBe('parts.csv');
  const table = await readFile(await download.path(), 'utf8');
  expect(table).toMatch(/^\uFEFF"Part","Number","Places","State"/);
  expect(table).toContain('"heater hose","1","","measure before ordering"');
  // It is on the disk: the same plan after the page is loaded again.
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toBeFocused();
});
