import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { lookOver } from './look.ts';
import { changing, expect, practising, sheet, test } from './shell.ts';

test('one card of each drill by keyboard, then progress, then everything of it deleted', async ({
  page,
  address,
  shell,
}) => {
  await practising(page, address, 'Invented apprentice');
  await changing(page, () => page.keyboard.press('l'));
  await expect(page.locator('main h1')).toBeFocused();

  for (const [key, words, complaint] of [
    ['2', 'Tell these two apart', 'Growl through the floor'],
    ['3', 'What would you see?', 'Coolant loss'],
    ['4', 'Read the picture', 'Air escapes while the brake pedal is held'],
    ['5', 'Know the limit', 'Growl through the floor'],
  ] as const) {
    await page.keyboard.press(key);
    await page.getByRole('button', { name: new RegExp(complaint) }).focus();
    await changing(page, () => page.keyboard.press('Enter'));
    await expect(page.locator('main h1')).toBeFocused();
    await expect(page.locator('main')).toContainText(words);
    if (key === '2') {
      await page.keyboard.press('1');
      await expect(page.getByText(/Suppose that it is this/)).toBeVisible();
    }
    if (key === '4') {
      const drawn = page.getByRole('img', { name: /its words taken away/ });
      await expect
        .poll(() => drawn.evaluate((image) => image instanceof HTMLImageElement && image.naturalWidth > 0))
        .toBe(true);
    }
    if (key === '5') {
      await page.keyboard.press('Tab');
      await page.keyboard.type('1');
      if (await page.getByLabel('To', { exact: true }).isVisible()) {
        await page.keyboard.press('Tab');
        await page.keyboard.type('2');
      }
      await changing(page, () => page.keyboard.press('Enter'));
      await expect(page.locator('main .src').first()).toBeVisible();
    } else await changing(page, () => page.keyboard.press('1'));
    expect(await sheet(page)).toMatch(/Right|Half right|Not this time/);
    await expect(page.getByText(/comes back in/)).toBeVisible();
    if (key === '2') await lookOver(page, words);
    // Out of a field first, where one has the focus.
    await page.locator('main h1').focus();
    await changing(page, () => page.keyboard.press('Escape'));
  }

  await changing(page, () => page.keyboard.press('i'));
  await expect(page.getByRole('row', { name: /Coolant loss/ }).first()).toBeVisible();
  await lookOver(page, 'progress');
  const learners = join(shell.home, 'learners');
  expect(readdirSync(learners)).toHaveLength(1);
  await page.reload();
  await expect(page.getByRole('button', { name: /Begin a visit/ })).toBeVisible();
  await changing(page, () => page.keyboard.press('x'));
  await expect(page.getByRole('heading', { name: 'Work on a simulated coach' })).toBeVisible();
  await changing(page, () => page.keyboard.press('l'));
  await expect(page.getByText(/4 answers, 4\s+cards/)).toBeVisible();
  await changing(page, () => page.keyboard.press('i'));
  await page.getByRole('button', { name: /Delete everything of/ }).click();
  await changing(page, () => page.getByRole('button', { name: /for good/ }).click());
  await expect(page.locator('main h1')).toHaveText('Nobody is practising');
  expect(readdirSync(learners)).toEqual([]);
});
