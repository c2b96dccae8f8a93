import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SHIPPED_TREES } from '../../electron/cli/load-trees.ts';
import {
  complaintIndex,
  formatProblem,
  lintTree,
  searchComplaints,
  treeData,
  vocabularyFrom,
  type TreeData,
} from '../../shared/knowledge/index.ts';
import { CALCULATION_IDS, CALCULATIONS } from '../../shared/measuring/index.ts';
import { unitOf } from '../../shared/units/index.ts';
import { shippedTrees } from '../shipped-trees.ts';

const { trees, vocabulary, problems } = await shippedTrees();
const shipped = [...trees.values()].flatMap(({ value }) => value ?? []);

describe('the shipped trees', () => {
  it('[KNO-5] read and lint without an error', () => {
    const all = [
      ...problems,
      ...[...trees.values()].flatMap(({ value, source }) => (value ? lintTree(value, vocabulary!, source) : [])),
    ];
    expect(all.filter(({ level }) => level === 'error').map(formatProblem)).toEqual([]);
    expect(shipped).toHaveLength(trees.size);
    expect(shipped).toHaveLength(16);
  });
  it('[KNO-19] every calculation makes the reading of some check, in the quantity that the check measures', () => {
    const used = new Map<string, number>();
    for (const { id, calculation, measure } of shipped.flatMap(({ checks }) => checks)) {
      if (!calculation) continue;
      used.set(calculation.use, (used.get(calculation.use) ?? 0) + 1);
      expect(unitOf(CALCULATIONS[calculation.use].unit).quantity, id).toBe(unitOf(measure!.unit).quantity);
    }
    expect([...used.keys()].sort()).toEqual([...CALCULATION_IDS].sort());
    expect([...used.values()].reduce((a, b) => a + b, 0)).toBeGreaterThanOrEqual(45);
  });
  it('[HOST-18] come back from JSON as they were', () => {
    for (const tree of shipped) {
      // What JSON gives is unknown until it is compared.
      const back = JSON.parse(JSON.stringify(treeData(tree, vocabulary!))) as TreeData;
      expect(back.tree).toEqual(tree);
      expect(vocabularyFrom(back.vocabulary)).toEqual(vocabulary);
    }
  });
  it('[KNO-6] every picture is there, with a text alternative, and carries no script', () => {
    const pictures = shipped.flatMap(({ checks }) => checks.flatMap(({ pictures }) => pictures));
    expect(pictures.length).toBeGreaterThan(400);
    for (const { file, alt } of pictures) {
      expect(existsSync(`${SHIPPED_TREES}/pictures/${file}`), file).toBe(true);
      expect(alt.length).toBeGreaterThan(20);
      expect(readFileSync(`${SHIPPED_TREES}/pictures/${file}`, 'utf8')).not.toMatch(/<script|onload|href="http/i);
    }
  });
});

/** Shared checks of one part of one coach, with the number of complaints that have them. */
const ONE_COACH: readonly (readonly [string, number])[] = [
  ['cap-test', 2],
  ['combustion-gas-test', 3],
  ['cylinder-air-to-coolant', 2],
  ['coolant-bubbles', 2],
  ['coolant-level', 2],
  ['oil-level', 5],
  ['oil-cooler-bench', 2],
  ['open-under-pressure', 3],
  ['lockup-psi', 3],
  ['idle-speed', 2],
  ['fuel-under-covers', 2],
  ['trans-fluid-look', 2],
  ['compression', 2],
];
/** Where the complaint itself makes the finding likelier; the tree says why. */
const DIFFERS = new Set(['oil-drip-under-engine/oil-level']);

describe('the shipped trees together', () => {
  const ids = new Set(shipped.map(({ id }) => id));
  it('ask no question under one name twice: what several have is one shared check', () => {
    const named = new Map<string, string[]>();
    for (const { id, checks } of shipped)
      for (const check of checks)
        if (check.sharedAs === undefined)
          named.set(check.name, [...(named.get(check.name) ?? []), `${id}/${check.id}`]);
    expect([...named.values()].filter((places) => places.length > 1)).toEqual([]);
  });
  it.each(ONE_COACH)('judge a bystander alike: %s', (sharedAs, wanted) => {
    // The row that most causes of a tree have is that of a coach on which the part is not to blame.
    const rows = shipped.flatMap(({ id, checks }) =>
      checks
        .filter((check) => check.sharedAs === sharedAs && !DIFFERS.has(`${id}/${sharedAs}`))
        .map(({ likelihood }) => {
          const counted = new Map<string, number>();
          for (const row of likelihood.values()) {
            const figures = JSON.stringify(row);
            counted.set(figures, (counted.get(figures) ?? 0) + 1);
          }
          return [...counted].sort((one, other) => other[1] - one[1])[0]![0];
        }),
    );
    expect(rows.length).toBe(wanted);
    expect(new Set(rows).size, rows.join('\n')).toBe(1);
  });
  it('every door and every likeness leads to a complaint that is there', () => {
    const named = shipped.flatMap(({ id, leadsTo, confusedWith }) =>
      [...leadsTo, ...confusedWith].flatMap(({ complaint }) => (complaint === undefined ? [] : [{ id, complaint }])),
    );
    expect(named.length).toBeGreaterThan(90);
    expect(named.filter(({ id, complaint }) => !ids.has(complaint) || complaint === id)).toEqual([]);
  });
  it('every shared check serves at least two complaints', () => {
    const uses = [...vocabulary!.checks.keys()].map((shared) => ({
      shared,
      trees: shipped.filter(({ checks }) => checks.some(({ sharedAs }) => sharedAs === shared)).length,
    }));
    expect(uses.filter(({ trees: many }) => many < 2)).toEqual([]);
  });
  it('every rule that holds the coach says what to do at once, in words that can be kept in mind', () => {
    const rules = shipped.flatMap(({ stopRules }) => stopRules.filter(({ verdict }) => verdict !== 'drive-and-book'));
    expect(rules.length).toBeGreaterThan(200);
    expect(rules.filter(({ now }) => now === '').map(({ id }) => id)).toEqual([]);
    expect(rules.filter(({ now }) => now.split(/\s+/).length > 65).map(({ id }) => id)).toEqual([]);
  });
  it('rules stand strictest first', () => {
    const order = ['stay-put', 'creep-to-safe-place', 'drive-and-book'];
    for (const { id, stopRules } of shipped) {
      const ranks = stopRules.map(({ verdict }) => order.indexOf(verdict));
      expect(ranks, id).toEqual([...ranks].sort((a, b) => a - b));
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
