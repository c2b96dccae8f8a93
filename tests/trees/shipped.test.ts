import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadTrees, SHIPPED_TREES } from '../../electron/cli/load-trees.ts';
import {
  complaintIndex,
  formatProblem,
  lintTree,
  LINT_RULES,
  searchComplaints,
  type Tree,
} from '../../shared/knowledge/index.ts';

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
    expect(shipped).toHaveLength(16);
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

describe('the shipped trees together', () => {
  const ids = new Set(shipped.map(({ id }) => id));
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

/** The first shipped tree with some of it exchanged. */
const broken = (change: Partial<Tree>): string[] => {
  const [first] = shipped;
  const source = [...trees.values()][0]!.source;
  return lintTree({ ...first!, ...change }, vocabulary!, source).map(({ code }) => code);
};

describe('every lint rule finds its fault', () => {
  const [first] = shipped;
  const checks = first!.checks;
  const with0 = (change: Partial<(typeof checks)[number]>): Partial<Tree> => ({
    checks: checks.map((check, i) => (i === 0 ? { ...check, ...change } : check)),
  });
  const cases: Readonly<Record<string, Partial<Tree>>> = {
    'danger-without-stop-rule': { stopRules: [] },
    'danger-without-caution': with0({
      cautions: [],
      settles: [first!.causes.find(({ hazard }) => hazard === 'danger')!.id],
    }),
    'hazard-without-caution': with0({ cautions: [], hazards: ['rolls'] }),
    'owner-in-danger': with0({ who: 'owner-no-tools', hazards: ['lifts'] }),
    'check-separates-nothing': with0({ likelihood: checks[0]!.likelihood.map((row) => row.map(() => 1 / row.length)) }),
    'causes-alike': {
      checks: checks.map((check) => ({ ...check, likelihood: check.likelihood.map(() => check.likelihood[0]!) })),
    },
    'result-unexplained': with0({
      results: [...checks[0]!.results, { id: 'never', label: 'never', range: null }],
      likelihood: checks[0]!.likelihood.map((row) => [...row.slice(0, -1), row.at(-1)! - 0.001, 0.001]),
    }),
    'unreachable-check': with0({ requires: [{ check: checks[0]!.id, results: [checks[0]!.results[0]!.id] }] }),
    'missing-proof': { proofs: [] },
    'measure-without-limit': with0({ measure: { unit: 'psi', of: '', instrument: 'test-gauge' }, limits: [] }),
    'band-gap': with0({
      measure: { unit: 'psi', of: '', instrument: 'test-gauge' },
      results: [
        { id: 'a', label: 'a', range: [null, 1] },
        { id: 'b', label: 'b', range: [2, null] },
        ...checks[0]!.results.slice(2),
      ],
    }),
    'teaching-order': { teaching: first!.teaching.slice(1) },
    'unknown-reference': { stopRules: first!.stopRules.map((rule) => ({ ...rule, why: 'see `no-such-thing`' })) },
    'tool-not-covered': with0({ tools: ['a thing that nobody has'] }),
    'few-phrases': { phrases: ['one'] },
    'unknown-rule': { exceptions: [{ rule: 'no-such-rule', at: 'x', why: 'test' }] },
    'exception-not-needed': { exceptions: [{ rule: 'few-phrases', at: first!.id, why: 'test' }] },
  };
  it.each(Object.entries(cases))('[KNO-7] %s', (code, change) => {
    expect(broken({})).not.toContain(code);
    expect(broken(change)).toContain(code);
  });
  it('[KNO-8] no rule is without a case here', () => {
    expect(LINT_RULES.map(({ code }) => code).filter((code) => !(code in cases))).toEqual([]);
  });
  it('[KNO-9] an exception with a reason is taken', () => {
    expect(broken({ phrases: ['one'], exceptions: [{ rule: 'few-phrases', at: first!.id, why: 'test' }] })).toEqual([]);
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
