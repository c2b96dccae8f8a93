/** Long lists on the machine side: 10,000 visits, of which 200 are one coach's. Everything in them is invented. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SHIPPED_TREES } from '../../electron/cli/load-trees.ts';
import { createHost, type Host } from '../../electron/host/host.ts';
import { coachProfile, readCoachEvent, trendsOf } from '../../shared/coach/index.ts';

const VISITS = 10_000;
const OF_ONE = 200;
const COACH = 'c-bench';

interface ListTimes {
  /** The list with the machine side running, as the yard asks for it again and again. */
  readonly again: number;
  /** The first list after a start of the program, over cards of the last time. */
  readonly afterStart: number;
  /** The list when no cards are there yet: once a machine. */
  readonly never: number;
  /** Profile, visits and trends of the coach of 200 visits. */
  readonly coach: number;
}

/** Lays out the folder, times each way of asking, and takes it away again. Milliseconds. */
export async function listTimes(): Promise<ListTimes> {
  const home = mkdtempSync(join(tmpdir(), 'droplight-bench-'));
  try {
    layOut(home);
    const start = (): Promise<Host> =>
      createHost({ dataFolder: home, treesFolder: SHIPPED_TREES, shell: 'browser', version: '0' });
    const first = await start();
    const never = await timed(() => first.call('visits.list', {}));
    const again = await median(5, () => first.call('visits.list', {}));
    const coach = await median(5, () => openCoach(first));
    const afterStart = await median(3, async () => (await start()).call('visits.list', {}));
    return { again, afterStart, never, coach };
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
}

/** What the page of a coach asks for and works out. */
async function openCoach(host: Host): Promise<void> {
  const { events } = await host.call('coaches.read', { coach: COACH });
  coachProfile(events.map(readCoachEvent));
  const { visits } = await host.call('coaches.history', { coach: COACH });
  const trends = trendsOf(visits, () => undefined);
  if (visits.length !== OF_ONE || trends.length === 0) throw new Error('The coach of the bench is not whole.');
}

function layOut(home: string): void {
  const record = (n: number, i: number, body: object): string =>
    `${JSON.stringify({ id: `${String(n).padStart(6, '0')}-${i}`, v: 1, at: '2020-01-01T00:00:00Z', by: '', ...body })}\n`;
  for (let n = 0; n < VISITS; n++) {
    const folder = join(home, 'visits', `v-${n}`);
    mkdirSync(folder, { recursive: true });
    const own = n % (VISITS / OF_ONE) === 0;
    const findings = Array.from({ length: own ? 40 : 3 }, (_, i) => ({
      kind: 'finding.recorded',
      complaint: 'c',
      finding: `f-${i}`,
      check: `check-${i % 8}`,
      value: i % 2 === 0 ? { kind: 'reading', reading: { value: i, unit: 'psi' } } : { kind: 'result', result: 'r' },
    }));
    const bodies = [
      { kind: 'visit.opened', coach: 'Invented coach', demo: true, ...(own ? { coachId: COACH } : {}) },
      { kind: 'complaint.opened', complaint: 'c', tree: 'invented', treeHash: 'a'.repeat(64), words: '' },
      ...findings,
    ];
    writeFileSync(join(folder, 'events-00000000bbbb.jsonl'), bodies.map((body, i) => record(n, i, body)).join(''));
  }
  const coach = join(home, 'coaches', COACH);
  mkdirSync(coach, { recursive: true });
  const known = Array.from({ length: 200 }, (_, i) => ({ kind: 'coach.set', field: 'odometer', value: i, unit: 'mi' }));
  writeFileSync(
    join(coach, 'events-00000000bbbb.jsonl'),
    [{ kind: 'coach.opened', name: 'Invented coach', demo: true }, ...known]
      .map((body, i) => record(0, i, body))
      .join(''),
  );
}

async function timed(run: () => Promise<unknown>): Promise<number> {
  const from = performance.now();
  await run();
  return performance.now() - from;
}

async function median(times: number, run: () => Promise<unknown>): Promise<number> {
  const taken: number[] = [];
  for (let i = 0; i < times; i++) taken.push(await timed(run));
  return taken.sort((a, b) => a - b)[Math.floor(times / 2)]!;
}
