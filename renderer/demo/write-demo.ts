import { HostError, type HostClient } from '../../shared/host/host-api.ts';
import { EVENT_VERSION, newEventId, type VisitEvent, type VisitEventBody } from '../../shared/visit/index.ts';
import { base64Of } from '../state/base64.ts';
import type { TreeList } from '../state/tree-list.svelte.ts';
import type { LoadedTree } from '../state/trees.ts';
import { DEMO_PROFILE, demoOdometer } from './demo-coach.ts';
import { DEMO_TREES, demoDay, type DemoTree, type DemoTrees } from './demo-day.ts';
import { demoLastYear, demoLookOver } from './demo-earlier.ts';
import { DEMO_COACH, MINA, type DemoEntry } from './demo-entry.ts';
import { demoPicture, type DemoPicture } from './demo-pictures.ts';

/** What writing the invented visits needs of the window. */
export interface DemoWindow {
  readonly ask: HostClient['call'];
  readonly trees: Pick<TreeList, 'known' | 'readAll'>;
  readonly coaches: {
    create(name: string, demo: boolean, known: typeof DEMO_PROFILE): Promise<string>;
  };
}

/** Entries that the machine side takes in one go. */
const AT_ONCE = 50;

/** When the invented visits took place: in the past, by day, whenever somebody looks round. */
export function demoDates(now: Date): {
  readonly lookOver: Date;
  readonly lastYear: Date;
  readonly arrived: Date;
  readonly later: string;
} {
  const day = (years: number, days: number): Date =>
    new Date(now.getFullYear() + years, now.getMonth(), now.getDate() + days, 8, 10);
  return {
    lookOver: day(-2, -20),
    lastYear: day(-1, 10),
    arrived: day(0, -2),
    later: day(0, 90).toISOString().slice(0, 10),
  };
}

/** A visit as its log: opened, then what was written down. Ids and times follow from when it began. */
export function demoLog(began: Date, coachId: string, entries: readonly DemoEntry[]): VisitEvent[] {
  const first: DemoEntry = {
    minute: 0,
    by: MINA,
    body: { kind: 'visit.opened', coach: DEMO_COACH, demo: true, coachId },
  };
  return [first, ...entries].map(({ minute, by, body }, i) => {
    const at = began.getTime() + 60_000 * minute + i;
    return { id: newEventId(at, i, 'demo'), v: EVENT_VERSION, at: new Date(at).toISOString(), by, ...body };
  });
}

/**
 * Writes the invented coach with two earlier visits and the one to look round in.
 *
 * @returns id of that visit.
 * @throws {HostError} also where its trees are not among those of this machine.
 */
export async function writeDemo(app: DemoWindow, now: Date): Promise<string> {
  await app.trees.readAll(Object.values(DEMO_TREES));
  const trees = treesOf(app.trees.known);
  if (!trees)
    throw new HostError({
      code: 'demo-trees',
      message:
        'The worked example needs three complaints that cannot be read here: growl, air leak and engine brake. Nothing was written. Look at the notices above.',
    });
  const { lookOver, lastYear, arrived, later } = demoDates(now);
  const days = [lookOver, lastYear, arrived].map((date) => date.toISOString().slice(0, 10)) as [string, string, string];
  const coach = await app.coaches.create(DEMO_COACH, true, [...DEMO_PROFILE, ...demoOdometer(days)]);
  await write(app, demoLog(lookOver, coach, demoLookOver()));
  await write(app, demoLog(lastYear, coach, demoLastYear(trees.air)));
  const newest = await write(app, demoLog(arrived, coach, []), async (visit) => {
    const photos = new Map<DemoPicture, string>();
    for (const of of ['spot', 'bearing', 'hose'] as const) {
      const data = base64Of(demoPicture(of).buffer);
      photos.set(of, (await app.ask('photos.write', { visit, type: 'image/png', data })).photo);
    }
    return demoLog(
      arrived,
      coach,
      demoDay(trees, (of) => photos.get(of) ?? '', demoLayout(), later),
    );
  });
  return newest;
}

/** The layout of the profile as answers of the visit. */
function demoLayout(): VisitEventBody[] {
  return DEMO_PROFILE.flatMap((body): VisitEventBody[] => {
    if (body.kind !== 'coach.set' || !body.field.startsWith('layout.') || typeof body.value === 'number') return [];
    return [{ kind: 'layout.set', feature: body.field.slice('layout.'.length), value: body.value }];
  });
}

/** Begins a visit and adds the rest of its log in one go. @param rest  made once the visit is there. */
async function write(
  app: DemoWindow,
  log: readonly VisitEvent[],
  rest: (visit: string) => Promise<readonly VisitEvent[]> = () => Promise.resolve(log),
): Promise<string> {
  const [first] = log;
  if (!first) throw new Error('A visit begins with its opening.');
  const { visit } = await app.ask('visits.create', { visit: `v-${first.id}`, first: { ...first } });
  const events = (await rest(visit)).slice(1);
  for (let at = 0; at < events.length; at += AT_ONCE)
    await app.ask('visits.append', { visit, events: events.slice(at, at + AT_ONCE).map((event) => ({ ...event })) });
  return visit;
}

/** The trees of the worked example among those that were read; null where one is missing. */
export function treesOf(pinned: ReadonlyMap<string, LoadedTree>): DemoTrees | null {
  const of = (id: string): DemoTree | undefined => {
    const found = [...pinned.values()].find(({ tree }) => tree.id === id);
    return found && { id, hash: found.hash, rules: found.tree.stopRules.map((rule) => rule.id) };
  };
  const [growl, air, retarder] = [of(DEMO_TREES.growl), of(DEMO_TREES.air), of(DEMO_TREES.retarder)];
  return growl && air && retarder ? { growl, air, retarder } : null;
}
