import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadTrees } from '../../electron/cli/load-trees.ts';
import { complaintIndex, searchComplaints } from '../../shared/knowledge/index.ts';

const { trees } = await loadTrees();
const shipped = [...trees.values()].flatMap(({ value }) => value ?? []);
const index = complaintIndex(shipped);
const placeOf = (complaint: string, words: string): number =>
  searchComplaints(index, words).findIndex((hit) => hit.complaint === complaint);

describe.each(shipped.map(({ id }) => id))('[KNO-10] %s is found by what people say', (complaint) => {
  const phrases = readFileSync(new URL(`words/${complaint}.txt`, import.meta.url), 'utf8')
    .trim()
    .split('\n');
  const places = phrases.map((words) => ({ words, place: placeOf(complaint, words) }));

  it('has at least 30 phrases, none of them out of the tree', () => {
    const own = new Set(shipped.flatMap((tree) => tree.phrases.map((phrase) => phrase.toLowerCase())));
    expect(phrases.length).toBeGreaterThanOrEqual(30);
    expect(new Set(phrases).size).toBe(phrases.length);
    expect(phrases.filter((phrase) => own.has(phrase.toLowerCase()))).toEqual([]);
  });
  it('is the first hit for at least 85 % of them', () => {
    const missed = places.filter(({ place }) => place !== 0);
    expect(1 - missed.length / phrases.length, JSON.stringify(missed, null, 1)).toBeGreaterThanOrEqual(0.85);
  });
  it('is among the first three for at least 97 % of them', () => {
    const missed = places.filter(({ place }) => place < 0 || place > 2);
    expect(1 - missed.length / phrases.length, JSON.stringify(missed, null, 1)).toBeGreaterThanOrEqual(0.97);
  });
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
