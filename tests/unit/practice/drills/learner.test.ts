import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { shippedTrees } from '../../../shipped-trees.ts';
import {
  answered,
  deckOf,
  learnerState,
  nextCard,
  progressOf,
  readLearnerEvents,
  type Card,
  type LearnerEvent,
  type Next,
  type Outcome,
} from '../../../../shared/practice/drills/index.ts';
import { EventError, readEvent } from '../../../../shared/visit/index.ts';

const START = Date.UTC(2026, 2, 2, 8);
const MINUTE = 60_000;
const DAY = 86_400_000;
let deck: readonly Card[];
beforeAll(async () => {
  const { trees, vocabulary } = await shippedTrees('air-leaks-when-brake-held');
  const tree = trees.get('air-leaks-when-brake-held')?.value;
  if (!tree || !vocabulary) throw new Error('The shipped tree cannot be read.');
  deck = deckOf(tree, vocabulary, { who: 'apprentice' });
});

let count = 0;
function answer(card: Card, outcome: Outcome, at: number): LearnerEvent {
  const head = { id: `e${String(++count).padStart(5, '0')}`, v: 1, at: new Date(at).toISOString(), by: '' };
  return { ...head, ...answered(card, outcome, false) };
}
function asked(next: Next): Card {
  if (next.kind !== 'card') throw new Error(`No card was asked, but "${next.kind}".`);
  return next.card;
}

describe('[DRI-11] what is asked next', () => {
  it('the drills take turns among new cards', () => {
    const drills = deck.slice(0, 4).map(({ drill }) => drill);
    expect(new Set(drills).size).toBe(4);
    const state = learnerState([]);
    expect(asked(nextCard(deck, state, null, START))).toBe(deck[0]);
    expect(asked(nextCard(deck, state, 'limit', START)).drill).toBe('limit');
  });

  it('a wrong one comes back within minutes, a right one after days; in between new ones come', () => {
    const [first, second] = [deck[0]!, deck[1]!];
    const log = [answer(first, 'wrong', START), answer(second, 'right', START + MINUTE)];
    const at = (time: number): Card => asked(nextCard(deck, learnerState(log), null, time));
    expect(at(START + 30_000)).toBe(deck[2]);
    expect(at(START + 2 * MINUTE)).toBe(first);
    log.push(answer(first, 'right', START + 2 * MINUTE));
    expect(at(START + 3 * MINUTE)).toBe(deck[2]);
    log.push(answer(second, 'right', START + 20 * MINUTE));
    const due = learnerState(log).cards.get(second.id)!.memory.due;
    expect(due).toBeGreaterThan(START + DAY);
  });

  it('when everything has been asked it is said when the first comes back', () => {
    const limits = deck.filter(({ drill }) => drill === 'limit');
    const log = limits.map((card, i) => answer(card, 'right', START + i));
    const next = nextCard(deck, learnerState(log), 'limit', START + 1000);
    expect(next).toEqual({ kind: 'later', due: learnerState(log).cards.get(limits[0]!.id)!.memory.due });
    expect(nextCard([], learnerState(log), null, START)).toEqual({ kind: 'none' });
  });
});

describe('[DRI-9] a learner is the fold of their log', () => {
  it('in whatever order the lines are read, and each line once', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(7), fc.constantFrom<Outcome>('right', 'nearly', 'wrong'), fc.nat(40 * 24 * 60)), {
          minLength: 1,
          maxLength: 25,
        }),
        fc.nat(100),
        (steps, turn) => {
          const log = steps.map(([card, outcome, minute]) => answer(deck[card]!, outcome, START + minute * MINUTE));
          const mixed = [...log, ...log.slice(0, 3)]
            .map((event, i) => ({ event, key: ((i + 1) * 7919 * (turn + 1)) % 101 }))
            .sort((a, b) => a.key - b.key)
            .map(({ event }) => event);
          const state = learnerState(readLearnerEvents(mixed));
          expect(state).toEqual(learnerState(readLearnerEvents(log)));
          expect(state.answers).toBe(log.length);
          for (const { memory, asked: times, right } of state.cards.values()) {
            expect(memory.due).toBeGreaterThan(memory.last);
            expect(memory.answers).toBe(times);
            expect(right).toBeLessThanOrEqual(times);
          }
        },
      ),
      { numRuns: 60, seed: 7 },
    );
  });

  it('[DRI-10] a line of a learner is no event of a visit, nor the other way round', () => {
    const line = answer(deck[0]!, 'right', START);
    const opened = { id: 'e0', v: 1, at: line.at, by: '', kind: 'learner.opened', name: 'Invented apprentice' };
    for (const record of [line, opened]) {
      expect(readLearnerEvents([record])).toHaveLength(1);
      expect(() => readEvent({ ...record })).toThrow(EventError);
    }
    const visit = { id: 'e1', v: 1, at: line.at, by: '', kind: 'visit.opened', coach: 'Invented coach', demo: false };
    expect(readEvent(visit).kind).toBe('visit.opened');
    expect(readLearnerEvents([visit, null, 'text', { ...line, v: 2 }])).toEqual([]);
  });
});

describe('[DRI-12] progress', () => {
  it('three answers at least; right ones that hold are solid, wrong ones shaky, the shakiest first', () => {
    const apart = deck.filter(({ drill }) => drill === 'apart');
    const used = new Set<string>();
    const [good, bad, once] = apart.filter(({ causes }) => {
      const fresh = causes.every((id) => !used.has(id));
      if (fresh) causes.forEach((id) => used.add(id));
      return fresh;
    });
    const log: LearnerEvent[] = [answer(once!, 'right', START)];
    for (const [card, outcome] of [
      [good!, 'right'],
      [bad!, 'wrong'],
    ] as const)
      for (const day of [0, 1, 4, 12]) log.push(answer(card, outcome, START + day * DAY));
    const rows = progressOf(learnerState(readLearnerEvents(log)), START + 13 * DAY).filter(
      ({ subject }) => subject === 'cause',
    );
    const of = (id: string) => rows.find((row) => row.id === id);
    expect(of(good!.causes[0]!)).toMatchObject({ standing: 'solid', rightShare: 1, asked: 4, cards: 1, due: 0 });
    expect(of(bad!.causes[0]!)).toMatchObject({ standing: 'shaky', rightShare: 0, due: 1 });
    expect(of(once!.causes[0]!)).toMatchObject({ standing: 'new', asked: 1 });
    expect(rows[0]!.standing).toBe('shaky');
    expect(rows.at(-1)!.standing).toBe('new');
    for (const { recall } of rows) expect(recall).toBeGreaterThan(0);
  });

  it('nothing asked gives nothing', () => {
    expect(progressOf(learnerState([]), START)).toEqual([]);
  });
});
