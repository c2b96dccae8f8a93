import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { lookOver } from './look.ts';
import { changing, expect, practising, test } from './shell.ts';

/** Begins an exercise with Enter, away from any button that has the focus. */
async function begin(page: Page): Promise<void> {
  await page.locator('main h1').focus();
  await changing(page, () => page.keyboard.press('Enter'));
  await expect(page.locator('h1')).toHaveText('What do you do?');
}

test('[PRA-9] [PRA-17] [PRA-18] an exercise by keyboard to its reckoning; one stopped by danger; a file in, a log out, played again', async ({
  page,
  address,
}) => {
  await practising(page, address, 'Mina');
  await lookOver(page, 'practice');
  await begin(page);
  await lookOver(page, 'exercise');
  // A safety question, a suspicion of 90 in 100, the first check that can be made, then giving up.
  await changing(page, () => page.keyboard.press('1'));
  await changing(page, () => page.keyboard.press('1'));
  await changing(page, () => page.keyboard.press('4'));
  await changing(page, () => page.keyboard.press('1'));
  await changing(page, () => page.keyboard.press('4'));
  await expect(page.locator('h1')).toHaveText('What do you do?');
  await changing(page, () => page.keyboard.press('8'));
  await changing(page, () => page.keyboard.press('1'));
  await expect(page.locator('h1')).toHaveText(/^It was /);
  await expect(page.getByRole('heading', { name: 'Step by step' })).toBeVisible();
  await expect(page.getByText(/On average you were 90 in 100 sure/)).toBeVisible();
  await lookOver(page, 'reckoning');
  await begin(page);
  await changing(page, () => page.keyboard.press('3'));
  await changing(page, () => page.getByRole('button', { name: /On the road/ }).press('Enter'));
  await expect(page.locator('h1')).toHaveText('Stopped: somebody could have been killed');
  await expect(page.locator('.score')).toHaveText('0 of 100');
  await lookOver(page, 'stopped');

  await changing(page, () => page.keyboard.press('Escape'));
  await changing(page, () => page.keyboard.press('t'));
  const lesson = [
    'format: droplight-exercise/1',
    'title: The hiss',
    'complaint: air-leaks-when-brake-held',
    'words: It hisses when I stand on it',
    'cause: service-diaphragm',
    'passed: { proven: false, found: false, hints: 0 }',
  ].join('\n');
  const file = (name: string, text: string) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
  await page.getByLabel('Exercise file').setInputFiles(file('lesson.yaml', lesson));
  await page.getByRole('button', { name: 'Sheet for the yard' }).click();
  await expect(page.getByRole('article', { name: 'Sheet for the yard' })).toContainText('It hisses when I stand on it');
  await lookOver(page, 'teach');
  await changing(page, () => page.getByRole('button', { name: 'Work this exercise' }).click());
  await expect(page.getByText('It hisses when I stand on it')).toBeVisible();
  await changing(page, () => page.keyboard.press('7'));
  await changing(page, () => page.keyboard.press('1'));
  await expect(page.getByRole('heading', { name: 'Passed' })).toBeVisible();
  await changing(page, () => page.keyboard.press('Escape'));
  await changing(page, () => page.keyboard.press('t'));
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the log of Mina' }).click();
  const log = readFileSync(await (await saving).path(), 'utf8');
  await page.getByLabel('Log of a learner').setInputFiles(file('mina.jsonl', log));
  await page
    .getByRole('button', { name: /1 choice,/ })
    .last()
    .click();
  await expect(page.getByRole('region', { name: 'The exercise again' })).toContainText('step 1 of 1');
  await page.locator('main h1').focus();
  await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('region', { name: 'The exercise again' })).toContainText('Handed over: it was');
});
