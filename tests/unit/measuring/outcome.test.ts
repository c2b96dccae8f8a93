import { describe, expect, it } from 'vitest';
import { nutProcedure, outOfRange, pressureAfter, readWavHeader } from '../../../shared/measuring/index.ts';

describe('[MEA-1] what a refusal says', () => {
  it('names what was found and what is allowed, every fault of it', () => {
    expect(outOfRange(['time', -1, 0, 60, 's'])?.message).toBe(
      'The time is −1 s; allowed is 0 to 60 s. Look at the figure and its unit.',
    );
    const both = outOfRange(['time', NaN, 0, 60, 's'], ['stroke', 2, 0, 5, 'in'], ['share', Infinity, -1, 1, '']);
    expect(both?.message).toBe(
      'The time is not a number; allowed is 0 to 60 s. The share is Infinity; allowed is −1 to 1. Look at the figure and its unit.',
    );
    expect(outOfRange(['time', 0, 0, 60, 's'], ['time', 60, 0, 60, 's'])).toBeNull();
  });
  it.each([
    ['nut', nutProcedure({ spindle: 'drive', nut: 'double', threadsPerInch: 20, washer: 'tang' })],
    ['recording', readWavHeader(new Uint8Array(3))],
    ['decay', pressureAfter(100, 1e6, 10, 100)],
  ])('%s: a sentence with what to do, and no code in it', (_, found) => {
    expect(found.ok).toBe(false);
    const message = found.ok ? '' : found.message;
    expect(message).toMatch(/^[A-Z].*\.$/);
    expect(message).not.toMatch(/undefined|NaN|\[object/);
  });
});
