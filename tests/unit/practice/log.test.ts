import { describe, expect, it } from 'vitest';
import { EventError, readEvent } from '../../../shared/visit/index.ts';
import {
  foldSession,
  logFile,
  openLogFile,
  readPracticeRecord,
  reckon,
  summaryOf,
  workedExercises,
  type Choice,
  type PracticeRecord,
} from '../../../shared/practice/index.ts';
import { anyExercise, practiceTree } from './exercises.ts';

const pinned = await practiceTree('air-leaks-when-brake-held');
const exercise = anyExercise(pinned, 9);
const choices: readonly Choice[] = [
  ...pinned.tree.stopRules.map(({ id }): Choice => ({ kind: 'question.asked', rule: id })),
  { kind: 'check.made', check: pinned.tree.checks[0]!.id, way: 'properly' },
  { kind: 'suspicion.stated', cause: 'foot-valve', share: 0.6 },
  { kind: 'given-up' },
];
const session = foldSession(exercise, choices);
const head = (n: number) => ({ id: `r${String(n).padStart(3, '0')}`, v: 1, at: '2026-05-01T08:00:00Z', by: 'Mina' });
const records: readonly PracticeRecord[] = [
  {
    ...head(0),
    kind: 'practice.begun',
    exercise: 'x1',
    tree: pinned.tree.id,
    treeHash: pinned.hash,
    source: { from: 'code', code: exercise.name },
  },
  ...choices.map((choice, i): PracticeRecord => ({ ...head(i + 1), kind: 'practice.chosen', exercise: 'x1', choice })),
  { ...head(choices.length + 1), kind: 'practice.ended', exercise: 'x1', summary: summaryOf(reckon(session))! },
];

describe('the log of practice', () => {
  it('[PRA-18] goes out as a file, comes in again and replays to the same session', () => {
    const opened = openLogFile(logFile('Mina', [...records].reverse()));
    if ('problem' in opened) throw new Error(opened.problem);
    const { learner, exercises, leftOut } = opened.log;
    expect({ learner, leftOut, count: exercises.length }).toEqual({ learner: 'Mina', leftOut: [], count: 1 });
    expect(exercises[0]!.choices).toEqual(choices);
    expect(foldSession(exercise, exercises[0]!.choices)).toEqual(session);
    expect(exercises[0]!.summary).toMatchObject({ how: 'given-up', right: false, score: expect.any(Number) as number });
  });

  it('[PRA-18] what cannot be read is left out and named; what is no log is refused', () => {
    const damaged = logFile('Mina', records).replace('"practice.chosen"', '"practice.dreamt"');
    const opened = openLogFile(`${damaged}{"half`);
    expect(opened).toMatchObject({ log: { leftOut: [3, records.length + 2] } });
    for (const text of ['', 'hello', '{"format":"droplight-visit/1"}', logFile('Mina', [])])
      expect(openLogFile(text)).toHaveProperty('problem');
  });

  it('[PRA-19] no record is an event of a visit, nor the other way about', () => {
    for (const record of records) {
      expect(readPracticeRecord(record)).toEqual(record);
      expect(() => readEvent(record)).toThrow(EventError);
    }
    const event = { id: 'e1', v: 1, at: '2026-05-01T08:00:00Z', by: '', kind: 'visit.opened', coach: 'A', demo: false };
    expect(readEvent(event)).toEqual(event);
    expect(readPracticeRecord(event)).toBeNull();
    expect(readPracticeRecord({ ...records[0], kind: 'complaint.opened' })).toBeNull();
    expect(readPracticeRecord({ ...records[0], v: 2 })).toBeNull();
  });

  it('an exercise that was never begun is left out', () => {
    expect(workedExercises(records.slice(1))).toEqual([]);
  });
});
