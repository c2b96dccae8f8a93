import { describe, expect, it } from 'vitest';
import { run, started } from './command.ts';

const TREE = ['--tree', 'air-leaks-when-brake-held'];

describe('walk, without a window', () => {
  it('[CLI-1] as a process of its own, prints belief, next check and verdict as JSON; the belief is sorted and sums to 1', () => {
    const { code, out } = started(
      'walk',
      [...TREE, '--json', '--findings', '-'],
      JSON.stringify([
        { check: 'static-rate', reading: 3.4, unit: 'psi/min' },
        { check: 'cold-warm', answer: 'not-sure' },
      ]),
    );
    expect(code).toBe(0);
    const report = JSON.parse(out) as {
      belief: { cause: string; probability: number }[];
      next: { check: string; reason: string; minutes: number };
      verdict: { verdict: string };
      conclusion: null;
    };
    const shares = report.belief.map(({ probability }) => probability);
    expect(shares.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 9);
    expect([...shares].sort((a, b) => b - a)).toEqual(shares);
    expect(report.belief.map(({ cause }) => cause)).toContain('unlisted');
    expect(report.next.reason).toMatch(/^Asked now because /);
    expect(report.verdict.verdict).toBe('stay-put');
  });
  it('[CLI-2] the same reading in another unit gives the same belief', async () => {
    const belief = async (reading: number, unit: string): Promise<string[]> => {
      const findings = JSON.stringify([{ check: 'static-rate', reading, unit }]);
      const { out } = await run('walk', [...TREE, '--json', '--findings', '-'], findings);
      const report = JSON.parse(out) as { belief: { probability: number }[] };
      return report.belief.map(({ probability }) => probability.toFixed(6));
    };
    expect(await belief(3.4, 'psi/min')).toEqual(await belief(3.4 * 6.894757293168, 'kPa/min'));
  });
  it.each([
    [['--tree', 'air-leaks-when-brake-hel'], '[]', /Nearest: "air-leaks-when-brake-held"/],
    [[...TREE, '--who', 'mechanik'], '[]', /Nearest: "mechanic"/],
    [[...TREE, '--findings', '-'], '[{"check":"static-rat","result":"x"}]', /Nearest: "static-rate"/],
    [[...TREE, '--findings', '-'], '[{"check":"walk-listen","result":"wheel-ned"}]', /Nearest: "wheel-end"/],
    [[...TREE, '--findings', '-'], '[{"check":"static-rate","reading":340,"unit":"psi/min"}]', /outside what/],
    [[...TREE, '--findings', '-'], '[{"check":"static-rate","reading":3,"unit":"mm"}]', /Allowed: .*psi\/min/],
    [[...TREE, '--findings', '-'], '[{"check":', /standard input:1:\d+: not JSON/],
    [['--tre', 'x'], '[]', /Nearest: "tree"/],
  ])('[CLI-3] %j with %s ends with exit code 2', async (args, input, message) => {
    const { code, err } = await run('walk', args, input);
    expect(code).toBe(2);
    expect(err).toMatch(message);
  });
  it('[CLI-3] as a process of its own, it ends with the same code and words', async () => {
    const args = ['--tree', 'air-leaks-when-brake-hel'];
    const ran = started('walk', args, '[]');
    expect(ran.code).toBe(2);
    expect(ran).toEqual(await run('walk', args, '[]'));
  });
});
