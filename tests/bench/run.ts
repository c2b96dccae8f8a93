/** `npm run bench`: medians of what has a target. Never part of the tests: a busy machine is not a fault. */
import { loadTrees } from '../../electron/cli/load-trees.ts';
import { handOver, htmlFile } from '../../shared/handover/index.ts';
import type { Finding } from '../../shared/inference/index.ts';
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
  planOf,
  replay,
  type PinnedTree,
  type VisitEvent,
  type VisitEventBody,
} from '../../shared/visit/index.ts';
import { beliefTimes } from './belief.ts';
import { firstScreen, isBuilt, windowSize } from './window.ts';
import { listTimes } from './lists.ts';
import { benchFigures } from './measuring.ts';
import { smallComplaint } from './small-complaint.ts';

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

/** Every order of a complaint that is just small enough; drawn anew each time, since the last one is remembered. */
let seed = 0;
line(
  `every order worked out (${smallComplaint(seed).states} states)`,
  medianMs(() => rankChecks({ ...situation, tree: smallComplaint(seed++).small, findings: [] }, null), 9, 2),
  500,
  'ms',
);

const belief = beliefTimes();
// "Ten times faster" is at most a tenth of the time.
line(`belief in all causes, share of bayesjs (${belief.way})`, belief.own / belief.theirs, 0.1, '  ');

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

await benchFigures(line);

const lists = await listTimes();
line('list of 10,000 visits', lists.again, 300, 'ms');
line('the same, first after a start', lists.afterStart, 300, 'ms');
line('a coach with 200 visits, its history and trends', lists.coach, 300, 'ms');
console.log(`the list of 10,000 visits when none has ever been listed, once: ${lists.never.toFixed(0)} ms`);

/** A report with forty photos of about 300 kB each, as the window's small copies are, to the text of the file. */
const photographed = events.map((event, i): VisitEvent =>
  event.kind === 'finding.recorded' && i >= events.length - 40
    ? { ...event, photos: [`${i.toString(16).padStart(64, '0')}.jpg`] }
    : event,
);
const copy = `data:image/jpeg;base64,${'A'.repeat(400_000)}`;
const copies = new Map(
  photographed.flatMap((event) => ('photos' in event ? (event.photos ?? []) : [])).map((name) => [name, copy]),
);
line(
  `report of that visit with ${copies.size} photos, to its file`,
  medianMs(
    () => {
      const visit = replay(photographed, pinned);
      const clock = { day: (at: string) => at.slice(0, 10), time: (at: string) => at.slice(11, 16) };
      const plan = planOf(visit, pinned);
      const input = {
        visit,
        events: photographed,
        trees: pinned,
        reader: 'mechanic',
        units: 'us',
        clock,
        plan,
      } as const;
      return htmlFile(handOver(input), copies);
    },
    5,
    1,
  ),
  2000,
  'ms',
);

if (isBuilt()) {
  const size = windowSize();
  line(
    'scripts and styles before the first screen, every screen of a walk among them, compressed',
    size.first,
    250,
    'kB',
  );
  console.log(`   … of all pages, those that are fetched when they are opened too: ${size.all.toFixed(0)} kB`);
  const screen = await firstScreen();
  line('first screen from a warm machine side', screen.warm, 1, 's');
  line('… from one that has just started, on an empty data folder', screen.cold, 5, 's');
} else console.log('The window is not built; run npm run build for its size and its first screen.');
