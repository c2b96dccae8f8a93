import { begin, expect, test } from './shell.ts';

test('a coach, its arrival and its history by keyboard', async ({ page, address }) => {
  await page.goto(address);
  // The first list of complaints reads every tree.
  await expect(page.locator('h1')).toHaveText('The yard is empty', { timeout: 60_000 });
  await page.keyboard.press('v');
  await expect(page.locator('h1')).toHaveText('Coaches known here');
  await page.keyboard.press('a');
  await expect(page.getByLabel('Name or number')).toBeFocused();
  await page.keyboard.type('Invented coach 7');
  await page.keyboard.press('Enter');
  await expect(page.locator('h1')).toHaveText('Invented coach 7');

  await page.keyboard.press('/');
  await page.keyboard.type('ratio of the drive');
  await page.keyboard.press('Tab');
  // The section, then the one field in it.
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: /Set\s*: Ratio of the drive axle/ })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('textbox', { name: 'Ratio of the drive axle' })).toBeFocused();
  await page.keyboard.type('41');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert')).toContainText('outside what a coach has');
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('4.1');
  await page.keyboard.press('Enter');
  await expect(page.locator('.known')).toContainText('4.1 to 1');

  await page.locator('h1').focus();
  await page.keyboard.press('a');
  await expect(page.locator('h1')).toHaveText('The coach has arrived');
  await page.getByLabel('What the owner says, a line for each').focus();
  await page.keyboard.type('it growls through the floor at speed');
  await page.keyboard.press('Enter');
  await page.keyboard.type('hissing when I stand on it');
  await expect(page.getByRole('button', { name: /Open 2 complaints/ })).toBeEnabled();
  await page.keyboard.press('Escape');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/question 1 of/)).toBeVisible();
  await page.keyboard.press('w');
  await expect(page.locator('h1')).toHaveText('Invented coach 7');
  await expect(page.getByRole('list', { name: 'Complaints of this visit' }).getByRole('button')).toHaveCount(2);
  await page.keyboard.press('l');
  await expect(page.locator('h1')).toHaveText('Earlier visits');
  await expect(page.getByRole('list', { name: 'Visits of this coach, newest first' }).getByRole('button')).toHaveCount(
    1,
  );
});

test('the pages of coach and visit do not scroll sideways at 360 px', async ({ page, address }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  const fits = async (): Promise<void> => {
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  };
  await begin(page, address, 'humming under my feet above 50');
  await page.keyboard.press('w');
  await expect(page.locator('h1')).toHaveText('Invented coach 12');
  await page.getByRole('button', { name: 'Make a profile from this visit' }).click();
  await expect(page.getByText(/0 fields known/)).toBeVisible();
  await fits();
  await page.getByRole('button', { name: /Arrival/ }).click();
  await expect(page.locator('h1')).toHaveText('The coach has arrived');
  await page.getByRole('button', { name: 'Note the spot' }).click();
  await expect(page.getByRole('img', { name: /Spot 1/ })).toBeVisible();
  await fits();
  await page.locator('h1').focus();
  await page.keyboard.press('w');
  await page.keyboard.press('o');
  await expect(page.getByLabel(/Find a field/)).toBeVisible();
  await fits();
  await page.keyboard.press('l');
  await expect(page.locator('h1')).toHaveText('Earlier visits');
  await fits();
});
