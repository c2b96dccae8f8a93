// Adds up what the two test runners reported, for the closing line of `npm test`.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** "N passed, N failed, N skipped" over both reports. */
export function countTests(folder) {
  const unit = JSON.parse(readFileSync(join(folder, 'vitest.json'), 'utf8'));
  const desktop = JSON.parse(readFileSync(join(folder, 'playwright.json'), 'utf8')).stats;
  const passed = unit.numPassedTests + desktop.expected + desktop.flaky;
  const failed = unit.numFailedTests + desktop.unexpected;
  const skipped = unit.numPendingTests + desktop.skipped;
  return `${passed} passed, ${failed} failed, ${skipped} skipped`;
}
