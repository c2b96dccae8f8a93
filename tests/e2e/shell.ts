import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base, expect, type Page } from '@playwright/test';

const SERVER = new URL('../../build/server/main.js', import.meta.url).pathname;

/** The built machine side on a data folder of its own, which a test may kill and start again. */
export class Shell {
  readonly home = mkdtempSync(join(tmpdir(), 'droplight-'));
  #process: ChildProcess | null = null;

  /** Starts the machine side; gives the address to open once. */
  async start(): Promise<string> {
    if (!existsSync(SERVER)) throw new Error('build/ is missing: run npm run build first.');
    const started = spawn(process.execPath, [SERVER], {
      env: { ...process.env, DROPLIGHT_HOME: this.home },
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    this.#process = started;
    return new Promise((resolve, reject) => {
      started.stdout.once('data', (data: Buffer) => resolve(data.toString().trim()));
      started.once('error', reject);
    });
  }

  /** Ends it the hard way. */
  async kill(): Promise<void> {
    const running = this.#process;
    if (!running || running.exitCode !== null || running.signalCode !== null) return;
    await new Promise<void>((resolve) => {
      running.once('exit', () => resolve());
      running.kill('SIGKILL');
    });
  }

  async end(): Promise<void> {
    await this.kill();
    rmSync(this.home, { recursive: true, force: true });
  }
}

/** A test with a running machine side, and a page on which nothing may be reported to the console. */
export const test = base.extend<{ shell: Shell; address: string; complaints: string[] }>({
  shell: async ({}, use) => {
    const shell = new Shell();
    await use(shell);
    await shell.end();
  },
  address: async ({ shell }, use) => {
    await use(await shell.start());
  },
  complaints: async ({}, use) => {
    await use([]);
  },
  // The machine side outlives the page, so that its end is not reported as a fault of the page.
  page: async ({ page, complaints, shell }, use) => {
    expect(shell.home).not.toBe('');
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(error.message));
    await use(page);
    expect(complaints, 'console errors, warnings and policy reports').toEqual([]);
  },
});

export { expect };

/** From the yard to the page of practice, as somebody with a name. */
export async function practising(page: Page, address: string, name: string): Promise<void> {
  await page.goto(address);
  // The first start makes the list of complaints, which takes its time on a busy machine.
  await expect(page.getByRole('button', { name: /Begin a visit/ })).toBeVisible({ timeout: 60_000 });
  await changing(page, () => page.keyboard.press('x'));
  await page.getByLabel(/your name/i).fill(name);
  await changing(page, () => page.keyboard.press('Enter'));
  await expect(page.getByRole('heading', { name: 'Work on a simulated coach' })).toBeVisible();
}

/** Name of the sheet in front. */
export async function sheet(page: Page): Promise<string> {
  return (await page.locator('main h1').first().textContent()) ?? '';
}

/** Does something that changes the sheet and waits until the next one is there, fetched and drawn. */
export async function changing(page: Page, run: () => Promise<unknown>): Promise<void> {
  const before = await sheet(page);
  await run();
  const passing = [before, '', 'Opening the page'];
  await expect.poll(async () => passing.includes(await sheet(page)), { timeout: 20_000 }).toBe(false);
}

/** From the yard to the first safety question. */
export async function begin(
  page: Page,
  address: string,
  words: string,
  options: { readonly who?: string; readonly title?: RegExp } = {},
): Promise<void> {
  await page.goto(address);
  await page.getByRole('button', { name: /Begin a visit/ }).click();
  await page.getByRole('textbox', { name: 'What is it doing?' }).fill(words);
  await page.getByLabel('Name or number').fill('Invented coach 12');
  await page.getByRole('radio', { name: options.who ?? 'Mechanic' }).check();
  await page.getByRole('button', { name: options.title ?? /^(1 )?Growl through the floor/ }).click();
  await expect(page.getByText(/question 1 of/)).toBeVisible();
}

/** Answers every safety question with "No, I looked". */
export async function nothingToStop(page: Page): Promise<void> {
  await expect(page.getByText(/Safety first, question/)).toBeVisible();
  while (await page.getByText(/Safety first, question/).isVisible()) {
    await changing(page, () => page.getByRole('button', { name: /No, I looked/ }).click());
  }
  await nothingNoticed(page);
}

/** Passes the question what has already been noticed, where it is asked. */
export async function nothingNoticed(page: Page): Promise<void> {
  const none = page.getByRole('button', { name: /None of these: go on/ });
  if (await none.isVisible()) await changing(page, () => none.click());
}

/**
 * Answers whatever is asked until a cause is named; gives the number of answers.
 *
 * @param how.say       what is found, by the name of the check; where nothing is said the first result.
 * @param how.onLayout  done before a question about the build is answered.
 */
export async function concluding(
  page: Page,
  how: { readonly say?: Readonly<Record<string, string>>; readonly onLayout?: () => Promise<void> } = {},
): Promise<number> {
  for (let looked = 0; looked < 60; looked++) {
    // A new sheet takes the focus to its heading; a key pressed before that would go to what has just left the page.
    await expect(page.locator('main h1').first()).toBeFocused();
    if (await page.locator('.concl').isVisible()) return looked;
    if (await page.getByRole('button', { name: /Go on where it stands/ }).isVisible()) {
      await changing(page, () => page.keyboard.press('Enter'));
    } else if (await page.getByText('asked once').isVisible()) {
      await how.onLayout?.();
      await changing(page, () => page.keyboard.press('1'));
    } else {
      const said = how.say?.[await page.locator('main h1').first().innerText()];
      if (said !== undefined) {
        await changing(page, () => page.getByRole('button', { name: new RegExp(`^\\d+ ${said}$`) }).click());
        continue;
      }
      await changing(page, async () => page.keyboard.press((await page.getByLabel('Unit').isVisible()) ? 'c' : '1'));
    }
  }
  throw new Error('No cause was named after 60 answers.');
}
