import { inflateSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import { cleanPng } from '../../electron/host/photo/png.ts';
import { shippedTrees } from '../shipped-trees.ts';
import { readTreeFolder, snapshotsOf } from '../../electron/host/tree-files.ts';
import { DEMO_PROFILE, demoOdometer } from '../../renderer/demo/demo-coach.ts';
import { DEMO_TREES, demoDay } from '../../renderer/demo/demo-day.ts';
import { demoLastYear, demoLookOver } from '../../renderer/demo/demo-earlier.ts';
import { demoPicture } from '../../renderer/demo/demo-pictures.ts';
import { demoDates, demoLog, treesOf } from '../../renderer/demo/write-demo.ts';
import { coachProfile, COACH_EVENT_VERSION, readCoachEvent } from '../../shared/coach/index.ts';
import {
  caseId,
  closedCases,
  inspectionHolds,
  planOf,
  readEvent,
  replay,
  type PinnedTree,
  type VisitEvent,
} from '../../shared/visit/index.ts';

const NOW = new Date(2026, 4, 14, 17, 30);
const dates = demoDates(NOW);
let pinned: ReadonlyMap<string, PinnedTree>;
let logs: Readonly<Record<'lookOver' | 'lastYear' | 'day', readonly VisitEvent[]>>;

beforeAll(async () => {
  const only = Object.values(DEMO_TREES);
  const { trees, vocabulary } = await shippedTrees(...only);
  const hashes = new Map(
    snapshotsOf(await readTreeFolder(new URL('../../trees', import.meta.url).pathname)).map(({ id, hash }) => [
      id,
      hash,
    ]),
  );
  const known = only.map((id) => ({ tree: trees.get(id)!.value!, vocabulary: vocabulary!, hash: hashes.get(id)! }));
  pinned = new Map(known.map((each) => [each.hash, each]));
  const used = treesOf(new Map(known.map((each) => [each.hash, each])))!;
  logs = {
    lookOver: demoLog(dates.lookOver, 'c-1', demoLookOver()),
    lastYear: demoLog(dates.lastYear, 'c-1', demoLastYear(used.air)),
    day: demoLog(
      dates.arrived,
      'c-1',
      demoDay(used, (of) => `${of}.png`, [], dates.later),
    ),
  };
});

describe('the invented visits', () => {
  it('are read as any other, with nothing that does not fit, each marked as invented and in the past', () => {
    for (const log of Object.values(logs)) {
      const visit = replay(
        log.map((event) => readEvent(JSON.parse(JSON.stringify(event)))),
        pinned,
      );
      expect(visit.ignored.map(({ event, why }) => `${JSON.stringify(event)}: ${why}`)).toEqual([]);
      expect(visit).toMatchObject({ demo: true, coach: 'Invented coach (demo)' });
      expect(log.every(({ by }) => by.includes('invented'))).toBe(true);
      expect(log.every(({ at }) => Date.parse(at) < NOW.getTime())).toBe(true);
      expect(new Set(log.map(({ id }) => id)).size).toBe(log.length);
    }
  });

  it('teach nothing: no cure of theirs counts for real coaches', () => {
    const visit = replay(logs.day, pinned);
    expect(visit.complaints[0]).toMatchObject({ phase: 'closed', closedHow: 'cured' });
    for (const log of Object.values(logs)) expect(closedCases('v', replay(log, pinned))).toEqual([]);
    // The same without the mark does count: it is the mark that keeps it out.
    const real = logs.day.map((event) => (event.kind === 'visit.opened' ? { ...event, demo: false } : event));
    expect(closedCases('v', replay(real, pinned)).map(({ id }) => id)).toEqual([caseId('v', 'c-growl')]);
  });

  it('show the whole job: three complaints, sheets, photos, a declined danger, a proof, reminders', () => {
    const visit = replay(logs.day, pinned);
    expect(visit.complaints.map(({ phase }) => phase)).toEqual(['closed', 'concluded', 'checking.choosing']);
    const plan = planOf(visit, pinned, visit.inspection.items);
    const line = (id: string) => plan.lines.find((each) => each.id === id)!;
    expect(plan.lines.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['complaint:c-growl:front-bearing', 'complaint:c-air:service-diaphragm']),
    );
    expect(line('item:hose@right tag')).toMatchObject({ danger: true, decision: { decision: 'declined' } });
    expect(line('item:hose@right tag').decision?.record).toMatch(/danger|hurt|burst/i);
    expect(line('item:damper@right drive').decision?.decision).toBe('deferred');
    expect(line('complaint:c-growl:front-bearing').proof.state).toBe('held');
    expect(plan.reminders).toHaveLength(3);
    expect(plan.meanwhile?.verdict).toBe('stay-put');
    expect(inspectionHolds(visit.inspection, visit.plan).map(({ of }) => of)).toEqual(['hose@right tag']);
    expect(visit.road.drives[0]?.notes.length).toBeGreaterThan(15);
    const photos = [
      ...visit.arrival.spots.flatMap(({ photo }) => photo ?? []),
      ...visit.inspection.items.flatMap((item) => item.photos),
      ...visit.complaints.flatMap(({ trail }) => trail.flatMap((each) => each.photos)),
    ];
    expect(photos.sort()).toEqual(['bearing.png', 'hose.png', 'spot.png']);
  });

  it('have a profile in which every field is one that the program knows', () => {
    const written = [...DEMO_PROFILE, ...demoOdometer(['2024-11-06', '2025-12-06', '2026-05-12'])];
    const events = written.map((body, i) =>
      readCoachEvent({ id: `e${i}`, v: COACH_EVENT_VERSION, at: NOW.toISOString(), by: '', ...body }),
    );
    const { values, ignored } = coachProfile([
      readCoachEvent({
        id: 'e',
        v: COACH_EVENT_VERSION,
        at: NOW.toISOString(),
        by: '',
        kind: 'coach.opened',
        name: 'x',
        demo: true,
      }),
      ...events,
    ]);
    expect(ignored).toEqual([]);
    const told = written.flatMap((body) => (body.kind === 'coach.set' ? [body.field] : []));
    expect(told.length).toBeGreaterThan(40);
    expect(Object.keys(values).sort()).toEqual([...new Set(told)].sort());
  });

  it.each(['spot', 'bearing', 'hose'] as const)(
    'the picture of the %s is a PNG that the photo store takes as it is',
    (of) => {
      const bytes = Buffer.from(demoPicture(of));
      const clean = cleanPng(bytes);
      expect(clean).toMatchObject({ width: 360, height: 240 });
      expect(clean.bytes.equals(bytes)).toBe(true);
      const at = bytes.indexOf('IDAT');
      const rows = inflateSync(bytes.subarray(at + 4, at + 4 + bytes.readUInt32BE(at - 4)));
      // Four bits a dot, and before each row the filter's number, which is none.
      expect(rows.length).toBe((180 + 1) * 240);
      expect(new Set(rows.filter((_, i) => i % 181 !== 0)).size).toBeGreaterThan(4);
    },
  );
});
