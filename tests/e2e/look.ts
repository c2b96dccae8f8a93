import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect } from './shell.ts';

const WIDE = { width: 1440, height: 1000 };
const NARROW = { width: 360, height: 800 };

/** The rules of axe that see colours; all others say the same of both palettes. */
const COLOUR_RULES = ['color-contrast', 'link-in-text-block'];

/**
 * What axe finds wrong with the page as it stands: by which light, which rule, where.
 *
 * @param rules  the rules to hold it against; all of them unless given.
 */
export async function faults(page: Page, rules: string[] = []): Promise<string[]> {
  // A page that has axe already need not be given its half megabyte again: twice a look, which took half of its time.
  const there = await page.evaluate(() => 'axe' in window);
  const axe = new AxeBuilder({ page, ...(there ? { axeSource: 'void 0' } : {}) })
    // The window has no frame whose faults would have to be gathered in a second page.
    .setLegacyMode(true)
    // The same rules are run; naming every element that keeps them is left out.
    .options({ resultTypes: ['violations'] });
  const { violations } = await (rules.length > 0 ? axe.withRules(rules) : axe).analyze();
  const light = await page.locator('html').getAttribute('data-light');
  return violations.map(
    ({ id, nodes }) => `by ${light}: ${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
  );
}

async function sideways(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/**
 * Holds the page as it stands against what every page has to keep: nothing for axe to find by day, wide, nothing that
 * depends on colour by night, narrow, and no sideways scrolling at 1440 and 360 px. Leaves the page wide and by day.
 */
export async function lookOver(page: Page, name: string): Promise<void> {
  await page.setViewportSize(NARROW);
  await page.emulateMedia({ colorScheme: 'dark', reducedMotion: 'reduce' });
  await expect(page.locator('html')).toHaveAttribute('data-light', 'night');
  expect(await sideways(page), `${name} at ${NARROW.width} px`).toBe(0);
  expect(await faults(page, COLOUR_RULES), name).toEqual([]);
  await page.setViewportSize(WIDE);
  await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
  await expect(page.locator('html')).toHaveAttribute('data-light', 'day');
  expect(await sideways(page), `${name} at ${WIDE.width} px`).toBe(0);
  expect(await faults(page), name).toEqual([]);
}
