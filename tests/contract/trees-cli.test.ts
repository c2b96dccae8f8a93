import { cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { run, started } from './command.ts';

const root = new URL('../..', import.meta.url).pathname;

describe('[CLI-4] lint-trees', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'droplight-trees-'));
    cpSync(join(root, 'tests/trees/vocabulary'), join(folder, 'vocabulary'), { recursive: true });
  });
  afterEach(() => rmSync(folder, { recursive: true }));
  /** Puts a fixture into the folder as the tree of a complaint. */
  const put = (fixture: string, as = 'bell-does-not-ring'): void => {
    mkdirSync(join(folder, as));
    cpSync(join(root, 'tests/trees', fixture), join(folder, as, 'tree.yaml'));
  };

  it('as a process of its own, ends with 0 on the shipped trees and counts them', () => {
    const { code, out, err } = started('lint-trees', []);
    expect(err).toBe('');
    expect(out).toMatch(/^\d+ trees, 0 errors, \d+ warnings$/m);
    expect(code).toBe(0);
  });
  it('ends with 0 and one line on a folder without a fault', async () => {
    put('lint/few-phrases/good.yaml');
    expect(await run('lint-trees', [folder])).toEqual({ code: 0, out: '1 trees, 0 errors, 0 warnings\n', err: '' });
  });
  it('ends with 0 when there are warnings alone', async () => {
    put('lint/result-unexplained/bad.yaml');
    const { code, out } = await run('lint-trees', [folder]);
    expect(out).toMatch(/bell-does-not-ring\/tree\.yaml:32:15 warning result-unexplained: /);
    expect(code).toBe(0);
  });
  it.each([
    ['lint/few-phrases/bad.yaml', /bell-does-not-ring\/tree\.yaml:6:1 error few-phrases: 7 phrases/],
    ['reading/likelihood-sums-to-nine-tenths/tree.yaml', /tree\.yaml:33:7 error likelihood-sum: .*sums to 0\.9/],
    ['reading/yaml-broken/tree.yaml', /tree\.yaml:7:1 error yaml-bad-indent: /],
  ])('ends with 1 and says where: %s', async (fixture, line) => {
    put(fixture);
    const { code, out } = await run('lint-trees', [folder]);
    expect(out).toMatch(line);
    expect(out).toMatch(/^1 trees, 1 errors, 0 warnings$/m);
    expect(code).toBe(1);
  });
  it('ends with 1 when a tree lies in a folder of another name', async () => {
    put('lint/few-phrases/good.yaml', 'bell-is-dead');
    const { code, out } = await run('lint-trees', [folder]);
    expect(out).toMatch(
      /bell-is-dead\/tree\.yaml:2:5 error id-is-not-the-folder: "bell-does-not-ring" lies in the folder "bell-is-dead"/,
    );
    expect(code).toBe(1);
  });
  it('ends with 1 when a folder holds no tree.yaml', async () => {
    mkdirSync(join(folder, 'empty'));
    const { code, out } = await run('lint-trees', [folder]);
    expect(out).toMatch(/empty\/tree\.yaml:1:1 error missing-file: .*add the file/);
    expect(code).toBe(1);
  });
  it('ends with 1 when the vocabulary has a fault', async () => {
    cpSync(join(root, 'tests/trees/reading/vocabulary-status/limits.yaml'), join(folder, 'vocabulary/limits.yaml'));
    const { code, out } = await run('lint-trees', [folder]);
    expect(out).toMatch(/vocabulary\/limits\.yaml:5:11 error not-allowed-value: .*Nearest: "judgement"/);
    expect(code).toBe(1);
  });
  it.each([
    [['no-such-folder'], /no-such-folder\/vocabulary cannot be read \(ENOENT\)\. Name a folder/],
    [['trees', 'tests/trees'], /2 folders are named/],
    [['--fix'], /--fix is not an option here/],
  ])('ends with 2 and one sentence, no stack: %j', async (args, message) => {
    const { code, out, err } = await run('lint-trees', args);
    expect(err).toMatch(message);
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(out).toBe('');
    expect(code).toBe(2);
  });
  it('as a process of its own, ends with the same codes, and says nothing more', async () => {
    put('lint/few-phrases/bad.yaml');
    for (const [args, code] of [
      [[folder], 1],
      [['no-such-folder'], 2],
    ] as const) {
      const ran = started('lint-trees', args);
      expect(ran.code).toBe(code);
      expect(ran).toEqual(await run('lint-trees', args));
    }
  });
});

describe('[CLI-5] evaluate', () => {
  it('as a process of its own, scores every way over the same coaches', () => {
    const few = ['--coaches', '2', '--beside', '1', '--times', '1'];
    const { code, out } = started('evaluate', ['--tree', 'air-leaks-when-brake-held', ...few, '--json']);
    expect(code).toBe(0);
    const [row] = (JSON.parse(out) as { trees: { tree: string; ways: { way: string; cost: number }[] }[] }).trees;
    expect(row?.tree).toBe('air-leaks-when-brake-held');
    expect(new Set(row?.ways.map(({ way }) => way)).size).toBeGreaterThanOrEqual(7);
    for (const { cost } of row!.ways) expect(cost).toBeGreaterThan(0);
  });
  it.each([
    [['--tree', 'air-leaks-when-brake-hel'], /Nearest: "air-leaks-when-brake-held"/],
    [['--who', 'mechanik'], /Nearest: "mechanic"/],
    [['--coaches', '0'], /--coaches is "0", wanted is a whole number from 1/],
    [['--coaches', 'many'], /--coaches is "many"/],
    [['--seed', '1.5'], /--seed is "1\.5"/],
    [['--coches', '5'], /Unknown option '--coches'\. Nearest: "coaches"\. Use: /],
    [['--coaches'], /'--coaches <value>' argument missing\. Use: /],
    [['air-leaks-when-brake-held'], /Unexpected argument .*Use: /],
  ])('ends with 2 and one sentence, no stack: %j', async (args, message) => {
    const { code, out, err } = await run('evaluate', args);
    expect(err).toMatch(message);
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(out).toBe('');
    expect(code).toBe(2);
  });
});
