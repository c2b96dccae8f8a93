/** `npm run bench`: medians of what has a target. Never part of the tests: a busy machine is not a fault. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { loadTrees } from '../../electron/cli/load-trees.ts';
import type { Finding } from '../../shared/inference/index.ts';
import { ROLES } from '../../shared/knowledge/index.ts';
import { assess, compileTree, defaultCosts, rankChecks, type Situation } from '../../shared/planning/index.ts';
import {
  EVENT_VERSION,
  newEventId,
  replay,
  type PinnedTree,
  type VisitEvent,
  type VisitEventBody,
} from '../../shared/visit/index.ts';
import { listTimes } from './lists.ts';

function medianMs(run: () => unknown, times = 60, before = 20): number {
  for (let i = 0; i < before; i++) run();
  const taken = Array.from({ length: times }, () => {
    const from = performance.now();
    run();
    return performance.now() - from;
  });
  return taken.sort((a, b) => a - b)[Math.floor(times / 2)]!;
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
  'the whole assessment on the same',
  medianMs(() => assess(situation, { skipTriage: true })),
  16,
  'ms',
);

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

const lists = await listTimes();
line('list of 10,000 visits', lists.again, 300, 'ms');
line('the same, first after a start', lists.afterStart, 300, 'ms');
line('a coach with 200 visits, its history and trends', lists.coach, 300, 'ms');
console.log(`the list of 10,000 visits when none has ever been listed, once: ${lists.never.toFixed(0)} ms`);

const assets = new URL('../../build/renderer/assets/', import.meta.url);
if (existsSync(assets)) {
  const bytes = readdirSync(assets)
    .filter((name) => name.endsWith('.js') || name.endsWith('.css'))
    .reduce((sum, name) => sum + gzipSync(readFileSync(new URL(name, assets))).length, 0);
  line('scripts and styles of the window, compressed', bytes / 1000, 250, 'kB');
} else console.log('The window is not built; run npm run build for its size.');
