import { lookOver } from './look.ts';
import { expect, Shell, test } from './shell.ts';

test('a visit goes to another machine as a file, a damaged one is refused, and once more brings nothing', async ({
  page,
  address,
}, info) => {
  await page.goto(address);
  await page.getByRole('button', { name: /invented visit/ }).click();
  await expect(page.getByRole('heading', { level: 1 }).first()).not.toHaveText(/yard/i);
  await page.getByRole('button', { name: 'Settings' }).click();
  await page.getByRole('button', { name: 'Exchange and backup' }).click();
  await expect(page.locator('main h1')).toHaveText('Exchange and backup');
  await page.keyboard.press('1');
  const made = page.getByRole('region', { name: 'The file is made' });
  await expect(made).toContainText('visit-invented-coach-demo');
  const downloading = page.waitForEvent('download');
  await made.getByRole('button', { name: 'Save a copy' }).click();
  const file = info.outputPath('visit.zip');
  await (await downloading).saveAs(file);

  const other = new Shell();
  try {
    await page.goto(await other.start());
    // A click waits for the yard, which takes its time on a machine that reads its trees for the first time.
    await page.getByRole('button', { name: /Exchange and backup/ }).click();
    await expect(page.locator('main h1')).toHaveText('Exchange and backup');
    await page.getByLabel(/Take in a visit/).setInputFiles(file);
    const came = page.getByRole('region', { name: 'Taken in' });
    await expect(came).toContainText('A visit that was not here');
    await page.getByLabel(/Take in a visit/).setInputFiles({
      name: 'half.zip',
      mimeType: 'application/zip',
      buffer: Buffer.from('half a file, and no zip any more'),
    });
    const refused = page.getByRole('region', { name: /“half.zip” was not taken in/ });
    await expect(refused).toContainText('The file is no zip, or its end is missing.');
    await lookOver(page, 'exchange');
    await page.getByLabel(/Take in a visit/).setInputFiles(file);
    await expect(came).toContainText('Everything of it was here already.');
    await page.keyboard.press('Escape');
    await expect(page.locator('main h1')).toHaveText('One visit in the yard');
  } finally {
    // The yard still fetches what it shows: a machine side that ends first would be reported as a fault of the page.
    await page.close();
    await other.end();
  }
});
