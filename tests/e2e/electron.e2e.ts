import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { _electron, expect, test } from '@playwright/test';

const folder = new URL('../../node_modules/electron', import.meta.url).pathname;
const named = join(folder, 'path.txt');
const binary = existsSync(named) ? join(folder, 'dist', readFileSync(named, 'utf8').trim()) : null;

test('the desktop window opens the yard', async () => {
  const there = binary !== null && existsSync(binary);
  if (!there)
    console.log(
      'Skipped: Electron’s binary is not here, so its window was not opened. Nothing below ran under Electron.',
    );
  // The binary is fetched at install and not everywhere to be had; the main process is tested on a stand-in as well.
  test.skip(!there, 'Electron’s binary is not here');
  const program = await _electron.launch({
    executablePath: binary ?? '',
    args: [new URL('../..', import.meta.url).pathname],
  });
  const page = await program.firstWindow();
  await expect(page.locator('h1')).toContainText('yard');
  await program.close();
});
