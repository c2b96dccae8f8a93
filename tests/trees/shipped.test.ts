import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadTrees, SHIPPED_TREES } from '../../electron/cli/load-trees.ts';
import { complaintIndex, formatProblem, lintTree, searchComplaints } from '../../shared/knowledge/index.ts';

const { trees, vocabulary, problems } = await loadTrees();
const shipped = [...trees.values()].flatMap(({ value }) => value ?? []);

describe('the shipped trees', () => {
  it('[KNO-5] read and lint without an error', () => {
    const all = [
      ...problems,
      ...[...trees.values()].flatMap(({ value, source }) => (value ? lintTree(value, vocabulary!, source) : [])),
    ];
    expect(all.filter(({ level }) => level === 'error').map(formatProblem)).toEqual([]);
    expect(shipped).toHaveLength(trees.size);
    expect(shipped.length).toBeGreaterThanOrEqual(5);
  });
  it('[KNO-6] every picture is there, with a text alternative, and carries no script', () => {
    const pictures = shipped.flatMap(({ checks }) => checks.flatMap(({ pictures }) => pictures));
    expect(pictures.length).toBeGreaterThan(40);
    for (const { file, alt } of pictures) {
      expect(existsSync(`${SHIPPED_TREES}/pictures/${file}`), file).toBe(true);
      expect(alt.length).toBeGreaterThan(20);
      expect(readFileSync(`${SHIPPED_TREES}/pictures/${file}`, 'utf8')).not.toMatch(/<script|onload|href="http/i);
    }
  });
});

describe('[KNO-10] the owner’s words find the complaint', () => {
  const index = complaintIndex(shipped);
  it.each([
    ['humming under my feet above 50', 'growl-through-floor-at-speed'],
    ["she won't creep off when I let the brake go", 'coach-wont-roll-free'],
    ['hissing when I stand on it', 'air-leaks-when-brake-held'],
    ['black spots on the driveway every morning', 'oil-drip-under-engine'],
    ['engine retarder does nothing going down the mountain', 'weak-engine-brake'],
    ['droning noise that gets lowder with speed', 'growl-through-floor-at-speed'],
    ['needle drops while i hold the pedel down', 'air-leaks-when-brake-held'],
    ['parking brake wont let go after winter', 'coach-wont-roll-free'],
    ['puddle of oil under the motor', 'oil-drip-under-engine'],
    ['the exhaust brake barks but does not hold me back', 'weak-engine-brake'],
  ])('%s', (words, complaint) => {
    expect(searchComplaints(index, words)[0]?.complaint).toBe(complaint);
  });
  it('nothing typed finds nothing', () => {
    expect(searchComplaints(index, '   ')).toEqual([]);
    expect(searchComplaints(index, 'xqzzt')).toEqual([]);
  });
});
