import { describe, expect, it } from 'vitest';
import { complaintIndex, searchComplaints } from '../../../shared/knowledge/index.ts';
import { cause, tree } from '../planning/small-tree.ts';

/** Invented trees that ship nowhere: the search must know them without code. */
const fridge = tree([cause('seal', 1, { name: 'Door seal', plain: 'The seal of the refrigerator is torn.' })], [], {
  id: 'fridge-warm',
  title: 'Refrigerator stays warm',
  phrases: ['The milk goes sour', 'My refrigerator never gets cold'],
});
const awning = tree([cause('arm', 1, { name: 'Awning arm', plain: 'An arm of the awning is bent.' })], [], {
  id: 'awning-jams',
  title: 'Awning jams half way',
  phrases: ['The awning will not come in', 'One arm of the awning hangs', 'It jams', 'The awning jams in wind'],
});
const index = complaintIndex([fridge, awning]);
const first = (words: string) => searchComplaints(index, words)[0];

describe('[KNO-10] word search', () => {
  it('knows a tree that was added later', () => {
    expect(first('refrigerator')?.complaint).toBe('fridge-warm');
    expect(first('awning')?.complaint).toBe('awning-jams');
  });
  it.each([
    ['a letter left out', 'refrigrator', 'fridge-warm'],
    ['a letter doubled', 'refrigeratorr', 'fridge-warm'],
    ['neighbouring letters exchanged', 'awnign', 'awning-jams'],
    ['another word form', 'jammed', 'awning-jams'],
    ['a plural', 'awnings', 'awning-jams'],
    ['capitals', 'AWNING', 'awning-jams'],
  ])('forgives %s', (_, words, complaint) => {
    expect(first(words)?.complaint).toBe(complaint);
  });
  it('says where the matched words stand in the phrase', () => {
    const phrase = first('the milk is sour')?.phrases[0];
    expect(phrase?.text).toBe('The milk goes sour');
    expect(phrase?.spans.map(([from, to]) => phrase.text.slice(from, to))).toEqual(['milk', 'sour']);
  });
  it('shows the phrase with more matched words first, and three at most', () => {
    const hit = first('awning arm jams');
    expect(hit?.phrases[0]?.spans.length).toBeGreaterThanOrEqual(2);
    expect(hit?.phrases).toHaveLength(3);
  });
  it('counts the typed words that were found', () => {
    expect(first('sour milk zzyzxq')?.words).toBe(2);
  });
  it('ranks by score, and leaves out what has no word in common', () => {
    const hits = searchComplaints(index, 'awning awning milk');
    expect(hits.map(({ complaint }) => complaint)).toEqual(['awning-jams', 'fridge-warm']);
    expect(hits[0]!.score).toBeGreaterThan(hits[1]!.score);
    expect(searchComplaints(index, 'sour').map(({ complaint }) => complaint)).toEqual(['fridge-warm']);
  });
  it('finds nothing in an empty text, and nothing without trees', () => {
    expect(searchComplaints(index, '')).toEqual([]);
    expect(searchComplaints(complaintIndex([]), 'awning')).toEqual([]);
  });
});
