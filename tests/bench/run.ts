/** `npm run bench`: medians of what has a target. Never part of the tests: a busy machine is not a fault. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { loadTrees } from '../../electron/cli/load-trees.ts';
import { infer, type INetwork } from 'bayesjs';
import { posterior, type Finding } from '../../shared/inference/index.ts';
import { found, referenceTree } from '../reference/inference/slow-air.ts';
import { ROLES } from '../../shared/knowledge/index.ts';
import {
  assess,
  compileTree,
  defaultCosts,
  lookAhead,
  rankChecks,
  type Situation,
} from '../../shared/planning/index.ts';
import {
  EVENT_VERSION,
  newEventId,
  replay,
  type PinnedTree,
  type VisitEvent,
  type VisitEventBody,
} from '../../shared/visit/index.ts';

function medianMs(run: () => unknown, times = 60, before = 20): number {
  for (let i = 0; i < before; i++) run();
  const taken = Array.from({ length: times }, () => {
    const from = performance.now();
    run();
    return performance.now() - from;
  });
  return taken.sort((a, b) => a - b)[Math.floor(times / 2)]!;
}

/** 99th of a hundred runs, after some that are not counted. */
function slowestMs(run: () => unknown): number {
  for (let i = 0; i < 20; i++) run();
  const taken = Array.from({ length: 100 }, () => {
    const from = performance.now();
    run();
    return performance.now() - from;
  });
  return taken.sort((a, b) => a - b)[98]!;
}

function line(name: string, value: number, limit: number, unit: string): void {
  console.log(
    `${name.padEnd(58)} ${value.toFixed(2).padStart(9)} ${unit}   target ${limit} ${unit}   ${value <= limit ? 'met' : 'MISSED'}`,
  );
}

const { trees, vocabulary } = await loadTrees();
const largest = [...trees.values()]
  .flatMap(({ value }) => value ?? [])
  .sort((a, b) => b.checks.length * b.causes.length - a.checks.length * a.causes.length)[0];
if (!largest || !vocabulary) throw new Error('No tree could be read; run npm run lint:trees.');
const findings = largest.checks.slice(0, 3).map((check, i): Finding => ({
  id: `f${i}`,
  check: check.id,
  value: { kind: 'result', result: check.results[0]!.id },
}));
const situation: Situation = {
  tree: largest,
  vocabulary,
  who: 'mechanic',
  layout: {},
  findings,
  stopAnswers: {},
  corrections: [],
  access: [],
  costs: defaultCosts('mechanic'),
};
line(
  `next check, ${largest.id} (${largest.causes.length} causes, ${largest.checks.length} checks)`,
  medianMs(() => rankChecks(situation, null)),
  8,
  'ms',
);
line(
  'the same, slowest of a hundred',
  slowestMs(() => rankChecks(situation, null)),
  16,
  'ms',
);
line(
  'looking many steps ahead on the same',
  medianMs(() => lookAhead(situation, null), 9, 2),
  300,
  'ms',
);
line(
  'the whole assessment on the same',
  medianMs(() => assess(situation, { skipTriage: true })),
  16,
  'ms',
);

/** The slow-air model as it is here, and as a network of an independent library: all causes against one of them. */
const { model: slowAir, table: slowTable } = referenceTree('m5-slow-air-imperfect.json');
const seen = slowTable.checks.slice(0, 3).map(({ id, outcomes }) => found(id, outcomes[0]!));
const network: INetwork = {
  cause: {
    id: 'cause',
    states: slowTable.causes.map(({ id }) => id),
    parents: [],
    cpt: Object.fromEntries(slowTable.causes.map(({ id, prior }) => [id, prior])),
  },
  ...Object.fromEntries(
    slowTable.checks.map(({ id, outcomes, likelihood }) => [
      id,
      {
        id,
        states: [...outcomes],
        parents: ['cause'],
        cpt: slowTable.causes.map((each) => ({ when: { cause: each.id }, then: { ...likelihood[each.id]! } })),
      },
    ]),
  ),
};
const given = Object.fromEntries(slowTable.checks.slice(0, 3).map(({ id, outcomes }) => [id, outcomes[0]!]));
const theirs = medianMs(() => infer(network, { cause: slowTable.causes[0]!.id }, given));
const own = medianMs(() => posterior(slowAir, seen));
// "Ten times faster" is at most a tenth of the time.
line('belief in all causes, share of the time bayesjs takes for one', own / theirs, 0.1, '  ');

/** Every tree on paper for every role, once; then the slowest of them with the median of five. */
const papers = [...trees.values()]
  .flatMap(({ value }) => value ?? [])
  .flatMap((tree) =>
    ROLES.map((who): Situation => ({ ...situation, tree, who, findings: [], costs: defaultCosts(who) })),
  )
  .map((blank) => {
    const from = performance.now();
    compileTree(blank);
    return { blank, ms: performance.now() - from };
  });
const { blank } = papers.reduce((a, b) => (b.ms > a.ms ? b : a));
line(
  `on paper, slowest: ${blank.tree.id}, ${blank.who}`,
  medianMs(() => compileTree(blank), 5, 0),
  2000,
  'ms',
);

const hash = 'a'.repeat(64);
const pinned: ReadonlyMap<string, PinnedTree> = new Map([[hash, { tree: largest, vocabulary }]]);
const bodies: VisitEventBody[] = [
  { kind: 'visit.opened', coach: 'Invented coach', demo: true },
  { kind: 'complaint.opened', complaint: 'c-1', tree: largest.id, treeHash: hash, words: '' },
  ...largest.stopRules.map(({ id }): VisitEventBody => ({
    kind: 'stop.answered',
    complaint: 'c-1',
    rule: id,
    answer: 'no',
  })),
];
for (let i = 0; bodies.length < 200; i++) {
  const check = largest.checks[i % largest.checks.length]!;
  bodies.push({
    kind: 'finding.recorded',
    complaint: 'c-1',
    finding: `f-${i}`,
    check: check.id,
    value: { kind: 'result', result: check.results[0]!.id },
  });
}
const events = bodies.map((body, i): VisitEvent => ({
  id: newEventId(i, i, 'bench'),
  v: EVENT_VERSION,
  at: '2020-01-01T00:00:00Z',
  by: '',
  ...body,
}));
line(
  'replay of a visit of 200 events',
  medianMs(() => replay(events, pinned)),
  10,
  'ms',
);

const assets = new URL('../../build/renderer/assets/', import.meta.url);
if (existsSync(assets)) {
  const bytes = readdirSync(assets)
    .filter((name) => name.endsWith('.js') || name.endsWith('.css'))
    .reduce((sum, name) => sum + gzipSync(readFileSync(new URL(name, assets))).length, 0);
  line('scripts and styles of the window, compressed', bytes / 1000, 250, 'kB');
} else console.log('The window is not built; run npm run build for its size.');
