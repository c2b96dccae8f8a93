import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { complaintIndex, searchComplaints, twoComplaints } from '../../shared/knowledge/index.ts';
import { shippedTrees } from '../shipped-trees.ts';

const { trees } = await shippedTrees();
const shipped = [...trees.values()].flatMap(({ value }) => value ?? []);
const index = complaintIndex(shipped);
const linesOf = (name: string): string[] =>
  readFileSync(new URL(`words/${name}`, import.meta.url), 'utf8')
    .trim()
    .split('\n');

/** Weights and families of the search are tuned on every second phrase; the others are only counted. */
const HALVES = ['tuned', 'held out'] as const;

interface Tried {
  readonly words: string;
  readonly complaint: string;
  /** Place of the right complaint among the hits; negative = not among them. */
  readonly place: number;
  readonly half: (typeof HALVES)[number];
}
function tried(words: string, complaint: string, i: number): Tried {
  const place = searchComplaints(index, words).findIndex((hit) => hit.complaint === complaint);
  return { words, complaint, place, half: HALVES[i % 2 === 0 ? 0 : 1] };
}
const isFirst = ({ place }: Tried): boolean => place === 0;
const isAmongThree = ({ place }: Tried): boolean => place >= 0 && place < 3;
const share = (of: readonly Tried[], good: (each: Tried) => boolean): number => of.filter(good).length / of.length;
const inWords = (of: readonly Tried[]): string =>
  `first ${(100 * share(of, isFirst)).toFixed(1)} %, first three ${(100 * share(of, isAmongThree)).toFixed(1)} % of ${of.length}`;

const byTree = new Map(
  shipped.map(({ id }) => [id, linesOf(`${id}.txt`).map((words, i) => tried(words, id, i))] as const),
);

describe.each([...byTree])('[KNO-10] %s is found by what people say', (_, phrases) => {
  it('has at least 30 phrases, none of them out of a tree', () => {
    const own = new Set(shipped.flatMap((tree) => tree.phrases.map((phrase) => phrase.toLowerCase())));
    expect(phrases.length).toBeGreaterThanOrEqual(30);
    expect(new Set(phrases.map(({ words }) => words)).size).toBe(phrases.length);
    expect(phrases.filter(({ words }) => own.has(words.toLowerCase()))).toEqual([]);
  });
  it('is the first hit for at least 85 % of them, and among the first three for at least 97 %', ({ annotate }) => {
    const missed = JSON.stringify(
      phrases.filter((each) => !isFirst(each)),
      null,
      1,
    );
    expect(share(phrases, isFirst), missed).toBeGreaterThanOrEqual(0.85);
    expect(share(phrases, isAmongThree), missed).toBeGreaterThanOrEqual(0.97);
    return annotate(
      HALVES.map((half) => `${half}: ${inWords(phrases.filter((each) => each.half === half))}`).join('; '),
    );
  });
});

describe('[KNO-10] over all complaints', () => {
  // Measured: 94 to 95 % first and all among the first three, in either half.
  it.each(HALVES)('%s half: first hit for at least 91 %, first three for at least 99 %', (half) => {
    const phrases = [...byTree.values()].flat().filter((each) => each.half === half);
    expect(phrases.length).toBeGreaterThanOrEqual(16 * 15);
    expect(share(phrases, isFirst), inWords(phrases)).toBeGreaterThanOrEqual(0.91);
    expect(share(phrases, isAmongThree), inWords(phrases)).toBeGreaterThanOrEqual(0.99);
  });
  it.each(HALVES)('%s half: wrong names for parts still bring the right complaint', (half) => {
    const wrong = linesOf('wrong-names.txt').map((line, i) => {
      const [words, complaint] = line.split(' | ');
      return tried(words!, complaint!, i);
    });
    expect(new Set(wrong.map(({ complaint }) => complaint))).toEqual(new Set(byTree.keys()));
    const phrases = wrong.filter((each) => each.half === half);
    expect(share(phrases, isFirst), JSON.stringify(phrases.filter((each) => !isFirst(each)))).toBeGreaterThanOrEqual(
      0.85,
    );
    expect(share(phrases, isAmongThree), inWords(phrases)).toBeGreaterThanOrEqual(0.97);
  });
});

describe('[KNO-23] two complaints in one sentence are offered as two', () => {
  const named = linesOf('two/named.txt').map((line, i) => {
    const [words, ...both] = line.split(' | ');
    const found = twoComplaints(index, words!)?.map(({ hit }) => hit.complaint) ?? [];
    return { words: words!, both, found, half: HALVES[i % 2 === 0 ? 0 : 1] };
  });
  it('is tried on at least 40 sentences over all complaints', () => {
    expect(named.length).toBeGreaterThanOrEqual(40);
    expect(new Set(named.flatMap(({ both }) => both))).toEqual(new Set(byTree.keys()));
  });
  // Measured: 22 of 22 tuned, 19 of 22 held out; none parted wrongly.
  it.each(HALVES)('%s half: at least 85 % are parted rightly, none wrongly', (half) => {
    const mine = named.filter((each) => each.half === half);
    const right = mine.filter(({ both, found }) => both.join() === found.join());
    const wrong = mine.filter((each) => each.found.length > 0 && !right.includes(each));
    expect(
      right.length / mine.length,
      JSON.stringify(mine.filter((each) => !right.includes(each))),
    ).toBeGreaterThanOrEqual(0.85);
    expect(wrong).toEqual([]);
  });
  it.each(HALVES)('%s half: of the phrases that name one complaint at most 1 % are parted', (half) => {
    const phrases = [...byTree.values()].flat().filter((each) => each.half === half);
    const parted = phrases.filter(({ words }) => twoComplaints(index, words) !== null);
    expect(parted.length / phrases.length, JSON.stringify(parted)).toBeLessThanOrEqual(0.01);
  });
  // Sentences of two clauses about one complaint, where a wrong offer is likeliest. Measured: 1 of 24.
  it('of sentences whose clauses name one complaint at most one in twelve is parted', () => {
    const sentences = linesOf('two/one.txt');
    const parted = sentences.filter((words) => twoComplaints(index, words) !== null);
    expect(sentences.length).toBeGreaterThanOrEqual(20);
    expect(parted.length / sentences.length, parted.join('\n')).toBeLessThanOrEqual(1 / 12);
  });
  it('what more is said of one of them stays with it', () => {
    const words = 'leaks air when I brake and it growls above 50, swells when I lean right';
    expect(twoComplaints(index, words)?.map((part) => [part.hit.complaint, part.words])).toEqual([
      ['air-leaks-when-brake-held', 'leaks air when I brake'],
      ['growl-through-floor-at-speed', 'it growls above 50, swells when I lean right'],
    ]);
  });
  it('each piece is what was typed', () => {
    expect(twoComplaints(index, 'Leaks air when I brake, and it growls above 50.')?.map(({ words }) => words)).toEqual([
      'Leaks air when I brake',
      'it growls above 50.',
    ]);
  });
  it.each(['', 'and', 'it growls above 50', 'it growls above 50 and it growls above 50'])(
    '"%s" is not parted',
    (words) => {
      expect(twoComplaints(index, words)).toBeNull();
    },
  );
});

describe('[KNO-10] a sentence that names two complaints brings both first', () => {
  it.each([
    [
      'the engine brake is weak and there is oil dripping on the driveway',
      'weak-engine-brake',
      'oil-drip-under-engine',
    ],
    [
      'it hisses with my foot on the pedal and the parking brake will not let go',
      'air-leaks-when-brake-held',
      'coach-wont-roll-free',
    ],
    [
      'loud hum at highway speed, also an oil puddle under the engine',
      'growl-through-floor-at-speed',
      'oil-drip-under-engine',
    ],
    [
      'retarder does nothing downhill and a droning from the rear axle',
      'weak-engine-brake',
      'growl-through-floor-at-speed',
    ],
    [
      'it pulls to the left when braking and the steering wheel shakes at sixty',
      'brake-pulls-or-one-drum-hot',
      'vibration-at-speed',
    ],
    [
      'one corner is down every morning and the antifreeze level drops',
      'coach-leans-or-settles-overnight',
      'coolant-loss',
    ],
    ['the transmission bangs into second and it overheats on hills', 'harsh-or-late-shift', 'runs-hot-on-grade'],
    [
      'the steering pump whines and it wanders over the road and clunks',
      'steering-pump-whines-cold',
      'wanders-or-clunks-on-bumps',
    ],
  ])('%s', (words, ...both) => {
    const firstTwo = searchComplaints(index, words).slice(0, 2);
    expect(firstTwo.map(({ complaint }) => complaint).sort()).toEqual([...both].sort());
  });
});

describe('[KNO-10] words that name no complaint', () => {
  it.each(['', '   ', '?!...', 'xqzzt flurbelwock', 'the and of it'])('"%s" finds nothing', (words) => {
    expect(searchComplaints(index, words)).toEqual([]);
  });
});
