import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  planOf,
  replay,
  type InspectedItem,
  type PinnedTree,
  type VisitEvent,
  type VisitEventBody,
} from '../../../shared/visit/index.ts';
import { growlConcluded, item, log, planTrees, twoComplaints } from '../../unit/visit/plan/visit.ts';

let trees: ReadonlyMap<string, PinnedTree>;
beforeAll(async () => {
  trees = await planTrees();
});

const place = fc.constantFrom('left front', 'right front', 'left drive', 'drive axle', 'left side', '');
const items: fc.Arbitrary<readonly InspectedItem[]> = fc
  .array(
    fc.record({
      kind: fc.constantFrom('bearing', 'seal', 'drum', 'lining', 'chamber', 'hose', 'bushing', 'thing'),
      place,
      state: fc.constantFrom('bad', 'watch', 'good', 'not-opened'),
    }),
    { maxLength: 8 },
  )
  .map((all) => all.map(({ kind, place: site, state }, i) => ({ ...item(kind, site, state), id: `i${i}` })));
const line = fc.constantFrom('complaint:g:front-bearing', 'line:1', 'line:2', 'item:i0', 'item:i1');
const body: fc.Arbitrary<VisitEventBody> = fc.oneof(
  fc.record({
    kind: fc.constant('plan.line-added' as const),
    line,
    title: fc.constantFrom('a', 'b'),
    why: fc.constant(''),
    danger: fc.boolean(),
    urgency: fc.constantFrom('now', 'soon', 'watch'),
    access: fc.constantFrom('hub-open', 'wheel-off', 'under-coach', 'bench', 'parked', 'no-such-state'),
    place,
    minutes: fc.constant([5, 10] as const),
  }),
  fc.record({ kind: fc.constant('plan.line-removed' as const), line }),
  fc.record({
    kind: fc.constant('plan.decided' as const),
    line,
    decision: fc.constantFrom('agreed', 'declined', 'deferred', null),
    who: fc.constant(''),
    words: fc.constant(''),
  }),
  fc.record({ kind: fc.constant('plan.place-set' as const), line, place }),
  fc.record({ kind: fc.constant('plan.done' as const), line, words: fc.constant('') }),
  fc.record({
    kind: fc.constant('plan.proven' as const),
    line,
    outcome: fc.constantFrom('held', 'did-not-hold'),
    words: fc.constant(''),
  }),
  fc.constant({ kind: 'visit.closed-out' as const, unproven: [], words: '' }),
);
const visits = fc.tuple(fc.array(body, { maxLength: 12 }), items);
const events = (bodies: readonly VisitEventBody[]): VisitEvent[] =>
  log([...twoComplaints(trees), ...growlConcluded(), ...bodies]);

describe('[PLN-15] any plan', () => {
  it('[PLN-3] [PLN-4] [PLN-6] opens nothing twice, takes no longer than one by one, loses no line, and is no milder than a line', () => {
    fc.assert(
      fc.property(visits, ([bodies, inspection]) => {
        const visit = replay(events(bodies), trees);
        const plan = planOf(visit, trees, inspection);
        const { hours, stages, lines } = plan;
        const opened = stages.filter(({ lines: [first] }) => first === undefined).flatMap(({ step }) => step?.id ?? []);
        expect(new Set(opened).size).toBe(opened.length);
        expect(hours.saved).toBeGreaterThanOrEqual(0);
        expect(hours.total[0]).toBeLessThanOrEqual(hours.apart[0]);
        expect(hours.total[1] - hours.own[1]).toBe(hours.access);
        const listed = new Set(stages.flatMap((stage) => stage.lines));
        for (const { id, decision, urgency, proof, meanwhile } of lines) {
          const out = !proof.doneAt && (decision ? decision.decision !== 'agreed' : urgency === 'watch');
          expect(listed.has(id)).toBe(!out);
          if (meanwhile.verdict === 'stay-put' && proof.state !== 'held')
            expect(plan.meanwhile?.verdict).toBe('stay-put');
        }
        expect(new Set(lines.map(({ id }) => id)).size).toBe(lines.length);
        // An event that was refused has left nothing behind, and a closing stands only over proven work.
        if (plan.closedOut)
          expect(lines.filter(({ from, proof }) => from.kind !== 'inspection' && proof.state === 'unproven')).toEqual(
            [],
          );
      }),
      { numRuns: 30, seed: 6 },
    );
  });
  it('is the same in any reading order, and what is taken back leaves no trace', () => {
    fc.assert(
      fc.property(visits, fc.nat(), ([bodies, inspection], pick) => {
        const all = events(bodies);
        const plan = planOf(replay(all, trees), trees, inspection);
        expect(planOf(replay([...all].reverse(), trees), trees, inspection)).toEqual(plan);
        if (bodies.length === 0) return;
        const target = all[all.length - 1 - (pick % bodies.length)]!;
        const last = all.at(-1)!;
        const back = { ...last, id: `${last.id}x`, kind: 'event.taken-back' as const, event: target.id };
        const without = all.filter(({ id }) => id !== target.id);
        expect(planOf(replay([...all, back], trees), trees, inspection)).toEqual(
          planOf(replay(without, trees), trees, inspection),
        );
      }),
      { numRuns: 12, seed: 7 },
    );
  });
});
