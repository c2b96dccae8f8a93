/** A road test by keyboard: refused before the safety questions, driven by two, and what it says confirmed as findings. */
import { lookOver } from './look.ts';
import { begin, changing, expect, nothingToStop, test } from './shell.ts';

test('[ROA-2] [ROA-3] [ROA-6] from the refusal to the confirmed finding, by keyboard', async ({ page, address }) => {
  test.setTimeout(240_000);
  await begin(page, address, 'growl through the floor above 50');
  await changing(page, () => page.keyboard.press('r'));
  await expect(page.getByText('No road test now.')).toBeVisible();
  await changing(page, () => page.keyboard.press('Escape'));
  await nothingToStop(page);

  await changing(page, () => page.keyboard.press('r'));
  await page.getByLabel('Who drives').focus();
  await page.keyboard.type('Ada');
  await page.keyboard.press('Tab');
  await page.keyboard.type('Ben');
  await changing(page, () => page.keyboard.press('Enter'));
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Road test, under way');
  await expect(page.locator('main h1')).toBeFocused();
  const small = await page
    .locator('button.pad')
    .evaluateAll((pads) => pads.filter((pad) => pad.getBoundingClientRect().height < 68).length);
  expect(small, 'buttons under 68 px').toBe(0);
  await page.getByRole('group', { name: 'Road speed' }).getByRole('button', { name: '50 mph' }).press('Enter');
  await expect(page.getByRole('group', { name: 'Last entry' })).toContainText('Road speed: 50 mph');
  await page.keyboard.press('2');
  await page.getByRole('group', { name: 'Pulling' }).getByRole('button', { name: 'more' }).press('Enter');
  await expect(page.getByRole('group', { name: 'Last entry' })).toContainText('Noise, pulling: more');
  await lookOver(page, 'road test');

  await changing(page, () => page.keyboard.press('0'));
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('What the drive says. Is it so?');
  await expect(page.getByRole('checkbox')).not.toBeChecked();
  await page.keyboard.press('1');
  await expect(page.getByRole('checkbox')).toBeChecked();
  await lookOver(page, 'what the drive says');
  await changing(page, () => page.keyboard.press('Enter'));
  await changing(page, () => page.keyboard.press('t'));
  await expect(page.getByText('louder when pulling', { exact: false }).first()).toBeVisible();
});
