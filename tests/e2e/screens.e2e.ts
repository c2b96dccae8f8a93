import type { Page } from '@playwright/test';
import { lookOver } from './look.ts';
import { begin, changing, concluding, expect, nothingNoticed, test } from './shell.ts';
import { weighed } from './weight.ts';

/** Every screen that a walk can show, one after the other. */
async function everyScreen(page: Page, address: string, look: (name: string) => Promise<void>): Promise<void> {
  await page.goto(address);
  await expect(page.locator('h1')).toHaveText('The yard is empty');
  await look('yard, empty');
  await page.getByRole('button', { name: /Begin a visit/ }).click();
  await page.getByRole('textbox', { name: 'What is it doing?' }).fill('hissing when I stand on it');
  await look('intake');
  await page.getByRole('radio', { name: 'Mechanic' }).check();
  await page.getByRole('button', { name: /Air escapes/ }).click();
  await expect(page.getByText(/question 1 of/)).toBeVisible();
  await look('triage');
  await page.getByRole('button', { name: 'Yes', exact: false }).first().click();
  await expect(page.getByRole('button', { name: /Go on where it stands/ })).toBeVisible();
  await look('halted');
  await page.getByRole('button', { name: /Undo the last answer/ }).click();
  await expect(page.getByText(/Safety first, question/)).toBeVisible();
  while (await page.getByText(/Safety first, question/).isVisible())
    await changing(page, () => page.getByRole('button', { name: /No, I looked/ }).click());
  await expect(page.locator('h1')).toHaveText('What have you already noticed?');
  await look('noticed');
  await nothingNoticed(page);
  await look('check');
  for (const [key, name] of [
    ['k', 'checks'],
    ['t', 'findings'],
    ['b', 'belief'],
    ['v', 'coach'],
    ['p', 'person'],
    ['?', 'keys'],
  ] as const) {
    await changing(page, () => page.keyboard.press(key));
    await look(name);
  }
  await changing(page, () => page.keyboard.press('k'));
  await page.getByLabel('Find a check by name').fill('Foot-off loss');
  await changing(page, () => page.getByRole('button', { name: /Do this\s*: Foot-off loss/ }).click());
  await page.getByRole('textbox').first().fill('2.1');
  await page.getByRole('button', { name: 'Judge this reading' }).click();
  await expect(page.getByRole('heading', { name: /Too close to call/ })).toBeVisible();
  await look('reading judged');
  await page.getByRole('button', { name: /Record as it stands/ }).click();
  await concluding(page, { onLayout: () => look('layout question') });
  await look('conclusion');
  await page.getByRole('button', { name: /Take it as the cause/ }).click();
  await page.getByRole('button', { name: /Start the correction/ }).click();
  await expect(page.getByRole('button', { name: /Record the correction/ })).toBeVisible();
  await look('correction');
  await page.getByRole('radio', { name: /bad, I saw it/ }).check();
  await page.getByRole('button', { name: /Record the correction/ }).click();
  await expect(page.locator('h1')).toHaveText('Is the complaint gone?');
  await look('proof');
  await page.getByRole('button', { name: /Gone, and proven/ }).click();
  await expect(page.locator('h1')).toHaveText('Cured and proven');
  await look('closed');
}

test('every screen of a walk: axe finds nothing by day and by night, nothing scrolls sideways narrow or wide', async ({
  page,
  address,
}) => {
  const weight = weighed(page);
  await everyScreen(page, address, (name) => lookOver(page, name));
  // Pages that a walk does not open (the bench, practice, the workbench) are fetched when they are opened.
  expect(weight(), 'scripts and styles of the whole walk, kB compressed').toBeLessThan(250);
  expect(weight(), 'something was fetched').toBeGreaterThan(100);
  console.log(`   scripts and styles of the whole walk: ${weight().toFixed(0)} kB compressed`);
});

test.describe('by touch', () => {
  test.use({ hasTouch: true, isMobile: true, viewport: { width: 390, height: 844 } });
  test('a whole walk by touch, as an owner, to a hand-over', async ({ page, address }) => {
    await begin(page, address, 'humming under my feet above 50', { who: 'Owner, no tools' });
    while (await page.getByText(/Safety first, question/).isVisible())
      await changing(page, () => page.getByRole('button', { name: /No, I looked/ }).tap());
    await changing(page, () => page.getByRole('button', { name: /None of these: go on/ }).tap());
    for (let i = 0; i < 40 && !(await page.locator('.concl').isVisible()); i++) {
      if (await page.getByRole('button', { name: /Go on where it stands/ }).isVisible())
        await changing(page, () => page.getByRole('button', { name: /Go on where it stands/ }).tap());
      else {
        const answer = page.locator('.answers .answer').first();
        expect((await answer.boundingBox())?.height ?? 0).toBeGreaterThanOrEqual(56);
        await changing(page, () => answer.tap());
      }
    }
    await page.getByRole('button', { name: /Hand over to a mechanic/ }).tap();
    await expect(page.locator('h1')).toHaveText('Handed over to a mechanic');
  });
});
