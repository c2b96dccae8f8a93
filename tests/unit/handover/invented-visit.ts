import type { HandOverInput, InspectedPart, Reader } from '../../../shared/handover/index.ts';
import {
  EVENT_VERSION,
  newEventId,
  replay,
  type EventHead,
  type VisitEvent,
  type VisitEventBody,
} from '../../../shared/visit/index.ts';
import type { PlanEventBody } from '../../../shared/visit/plan/events.ts';
import type { Plan } from '../../../shared/visit/plan/plan.ts';
import { HASH, PINNED } from './invented-tree.ts';

/** Name of a stored photo, as a hash of its content would be. */
export const PHOTO = `${'1f'.repeat(32)}.jpg`;

type Body = VisitEventBody | PlanEventBody | ({ readonly kind: string } & Readonly<Record<string, unknown>>);

/** A log from bodies: a minute between two events, Mina until the third day, then Joel. */
export function logOf(bodies: readonly Body[]): readonly VisitEvent[] {
  return bodies.map((body, i) => {
    const head: EventHead = {
      id: newEventId(1000 + i, i, 'seed'),
      v: EVENT_VERSION,
      at: new Date(Date.UTC(2026, 4, 14 + Math.floor(i / 8), 8, i)).toISOString(),
      by: i < 8 ? 'Mina' : 'Joel',
    };
    // Subjects of the visit that other folders own have kinds of their own; the report reads them by the ids they name.
    return { ...head, ...body } as VisitEvent;
  });
}

const reading = (value: number, unit: string) => ({ kind: 'reading', reading: { value, unit } }) as const;

/** An invented job: heard, checked, corrected, proven; a second complaint left open. */
export const BODIES: readonly Body[] = [
  { kind: 'visit.opened', coach: 'Invented coach 12', demo: true },
  { kind: 'person.set', who: 'mechanic' },
  { kind: 'layout.set', feature: 'axles', value: 'three' },
  {
    kind: 'complaint.opened',
    complaint: 'c-1',
    tree: 'growl',
    treeHash: HASH,
    words: 'It hums louder the faster I go',
  },
  { kind: 'stop.answered', complaint: 'c-1', rule: 'hot-hub', answer: 'no' },
  { kind: 'noticed.asked', complaint: 'c-1' },
  {
    kind: 'finding.recorded',
    complaint: 'c-1',
    finding: 'f-1',
    check: 'where',
    value: { kind: 'result', result: 'front' },
    note: 'worst in a right bend',
  },
  {
    kind: 'finding.recorded',
    complaint: 'c-1',
    finding: 'f-2',
    check: 'end-play',
    value: reading(0.011, 'in'),
    site: 'left front',
    photos: [PHOTO],
  },
  {
    kind: 'finding.recorded',
    complaint: 'c-1',
    finding: 'f-3',
    check: 'spin',
    value: { kind: 'result', result: 'gritty' },
    site: 'left front',
  },
  {
    kind: 'finding.recorded',
    complaint: 'c-1',
    finding: 'f-4',
    check: 'tread',
    value: { kind: 'cant-do', why: 'wheel still on the road' },
  },
  { kind: 'correction.started', complaint: 'c-1', cause: 'bearing' },
  {
    kind: 'correction.done',
    complaint: 'c-1',
    cause: 'bearing',
    partSeen: 'bad',
    parts: ['inner bearing', 'cup'],
    alsoRenewed: ['hub seal'],
    minutes: 210,
    note: 'pits over a third of the track',
  },
  {
    kind: 'finding.recorded',
    complaint: 'c-1',
    finding: 'f-5',
    check: 'end-play',
    value: reading(0.003, 'in'),
    site: 'left front',
  },
  { kind: 'proof.recorded', complaint: 'c-1', outcome: 'gone', note: 'same stretch, same speed' },
  { kind: 'complaint.opened', complaint: 'c-2', tree: 'growl', treeHash: HASH, words: 'and it moans on the lift' },
  { kind: 'inspection.seen', item: 'i-1', found: { what: 'crack', value: 0.25, unit: 'in', metric: '6.4 mm' } },
  { kind: 'inspection.seen', item: 'i-2' },
  {
    kind: 'air.step',
    step: 'a-1',
    found: { value: 62, unit: 'psi', metric: '427 kPa' },
    heldAgainst: '60 psi or above',
  },
  { kind: 'plan.decided', line: 'item:i-1', decision: 'declined', who: 'Ada', words: 'not before the trip' },
  { kind: 'reminder.set', reminder: 'r-1', what: 'Try the wheel nuts', dueMiles: 75 },
  { kind: 'note.added', complaint: 'c-2', text: 'only heard by the owner' },
];

/** What other subjects of the visit came to. */
export const INSPECTION: readonly InspectedPart[] = [
  {
    id: 'i-1',
    item: 'hose',
    site: 'right drive',
    state: 'bad',
    readings: [{ what: 'crack', reading: { value: 0.25, unit: 'in' }, limit: 'play' }],
    note: 'cord shows',
    facts: { 'rubs-on': 'frame rail' },
    photos: [],
    at: '2026-05-15T08:15:00.000Z',
    by: 'Joel',
  },
  {
    id: 'i-2',
    item: 'hub',
    site: 'left drive',
    state: 'not-opened',
    readings: [],
    photos: [],
    at: '2026-05-15T08:16:00.000Z',
    by: 'Joel',
  },
];

export const PLAN: Plan = {
  lines: [
    {
      id: 'item:i-1',
      from: { kind: 'inspection', item: 'i-1' },
      title: 'Renew brake hose',
      plain: 'The cord of the hose shows through',
      asked: 'hose',
      place: 'right drive',
      why: [],
      hazard: 'danger',
      danger: true,
      ifLeft: 'It can burst when the brake is needed',
      urgency: 'now',
      urgencyProposed: 'now',
      parts: ['brake hose'],
      minutes: [30, 45],
      accessSteps: [],
      accessMinutes: 0,
      accessKnown: true,
      proposals: [],
      meanwhile: {
        verdict: 'stay-put',
        because: 'A brake hose shows its cord',
        doNow: 'Leave the coach where it stands.',
      },
      decision: {
        decision: 'declined',
        at: '2026-05-16T08:18:00.000Z',
        by: 'Ada',
        words: 'not before the trip',
        record: 'Ada was told that the brake hose at the right drive wheel can burst, and declined its renewal',
      },
      proof: { state: 'not-done', steps: [], wait: '' },
    },
  ],
  stages: [],
  hours: { own: [0, 0], access: 0, total: [0, 0], apart: [0, 0], saved: 0, shared: [] },
  parts: { rows: [], warnings: [] },
  meanwhile: { verdict: 'stay-put', because: 'A brake hose shows its cord', doNow: 'Leave the coach where it stands.' },
  reminders: [{ id: 'r-1', what: 'Try the wheel nuts', dueMiles: 75 }],
  reminderProposals: [],
  warnings: [],
  unproven: [],
};

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** The clock of a reader who lives at Greenwich, so that a test means the same everywhere. */
export const CLOCK: HandOverInput['clock'] = {
  day: (at) => `${Number(at.slice(8, 10))} ${MONTHS[Number(at.slice(5, 7)) - 1] ?? ''} ${at.slice(0, 4)}`,
  time: (at) => at.slice(11, 16),
};

/** The invented job as the report takes it. */
export function inventedInput(reader: Reader, more: Partial<HandOverInput> = {}): HandOverInput {
  const events = logOf(BODIES);
  return {
    visit: replay(events, PINNED),
    events,
    trees: PINNED,
    reader,
    units: 'us',
    clock: CLOCK,
    plan: PLAN,
    inspection: INSPECTION,
    others: [
      {
        id: 'air-test',
        findings: [
          {
            id: 'a-1',
            what: 'Low-air warning',
            result: 'came on',
            reading: { value: 62, unit: 'psi' },
            heldAgainst: '60 psi or above (read: invented rule book)',
            at: '2026-05-16T08:17:00.000Z',
            by: 'Joel',
          },
        ],
      },
    ],
    ...more,
  };
}
