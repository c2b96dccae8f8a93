import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  benchStart,
  checkedValue,
  COACH_FIELDS,
  coachProfile,
  typedValue,
  type CoachEvent,
  type CoachEventBody,
} from '../../../shared/coach/index.ts';
import { newEventId } from '../../../shared/visit/index.ts';

const body: fc.Arbitrary<CoachEventBody> = fc.oneof(
  fc.record({
    kind: fc.constant('coach.set' as const),
    field: fc.constantFrom('ratio.axle', 'odometer', 'axle.1.chamber', 'layout.engine', 'service.hubs', 'unheard-of'),
    value: fc.constantFrom<string | number | boolean>(
      4.1,
      -1,
      120_000,
      'clamp 24',
      'two-stroke',
      true,
      '2024-05-13',
      '',
    ),
    on: fc.constantFrom('2020-01-01', '2024-05-13', '2026-01-01'),
  }),
  fc.constantFrom<CoachEventBody>(
    { kind: 'coach.cleared', field: 'odometer' },
    { kind: 'coach.cleared', field: 'ratio.axle' },
    { kind: 'coach.named', name: 'The blue one' },
  ),
);
const opened: CoachEventBody = { kind: 'coach.opened', name: 'Invented coach 7', demo: true };
const event = (body: CoachEventBody, i: number, writer: string): CoachEvent => ({
  id: newEventId(1000 + i, i, writer),
  v: 1,
  at: '2026-05-13T08:00:00Z',
  by: '',
  ...body,
});
/** What two devices wrote, each in its own order. */
const logs = fc
  .array(fc.tuple(body, fc.constantFrom('aa', 'bb')), { maxLength: 20 })
  .map((bodies) => [event(opened, 0, 'aa'), ...bodies.map(([each, writer], i) => event(each, i + 1, writer))]);
const plain = (events: readonly CoachEvent[]): unknown => ({ ...coachProfile(events), undo: null, redo: null });

describe('[COA-2] a profile', () => {
  it('is the same in whatever order the events of two devices are read, and however often', () => {
    fc.assert(
      fc.property(
        logs.chain((events) =>
          fc.tuple(fc.constant(events), fc.shuffledSubarray(events, { minLength: events.length })),
        ),
        ([events, shuffled]) => {
          expect(coachProfile([...shuffled, ...shuffled])).toEqual(coachProfile(events));
        },
      ),
      { numRuns: 200, seed: 7 },
    );
  });
  it('is as it was before when its newest event is taken back, and as after when that is put back', () => {
    fc.assert(
      fc.property(logs, body, (events, last) => {
        const added = [...events, event(last, 50, 'aa')];
        const back = [...added, event({ kind: 'event.taken-back', event: added.at(-1)!.id }, 51, 'aa')];
        expect(plain(back)).toEqual(plain(events));
        const again = [...back, event({ kind: 'event.put-back', event: added.at(-1)!.id }, 52, 'aa')];
        expect(plain(again)).toEqual(plain(added));
      }),
      { numRuns: 200, seed: 8 },
    );
  });
  it('never throws, and the bench starts with finite figures from any of them', () => {
    fc.assert(
      fc.property(logs, (events) => {
        const { figures } = benchStart(coachProfile(events));
        expect(Object.values(figures).every(({ value }) => Number.isFinite(value))).toBe(true);
      }),
      { numRuns: 100, seed: 9 },
    );
  });
});

describe('[COA-3] a value', () => {
  it('that was taken as typed is taken from a log as well; anything typed is taken or refused in a sentence', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...COACH_FIELDS),
        fc.oneof(
          fc.string(),
          fc.double({ noNaN: true }).map(String),
          fc.constantFrom('1419', '2024-05-13', '3', '16 1/2', 'clamp 24'),
        ),
        fc.constantFrom(undefined, 'in', 'mm', 'lb', 'mi', ''),
        (field, text, unit) => {
          const found = typedValue(field, text, unit);
          if (!found.ok) expect(found.message).toMatch(/^.{10,}\.$/s);
          else expect(checkedValue(field, found.value, found.unit)).toEqual(found);
        },
      ),
      { numRuns: 500, seed: 10 },
    );
  });
});
