import { describe, expect, it } from 'vitest';
import { formatProblem, UNLISTED } from '../../../shared/knowledge/index.ts';
import {
  complaintOfFile,
  exerciseOfFile,
  foldSession,
  hasPassed,
  passLines,
  readExerciseFile,
  type Choice,
} from '../../../shared/practice/index.ts';
import { practiceTree } from './exercises.ts';

const pinned = await practiceTree('air-leaks-when-brake-held');
const { tree } = pinned;
const read = (text: string) =>
  readExerciseFile({ text, file: 'lesson.yaml', complaints: [tree.id, 'coolant-loss'], known: pinned });
const [first] = tree.checks;
const GOOD = `format: droplight-exercise/1
title: The hiss under the left front
complaint: air-leaks-when-brake-held
note: Take your time. Invented for the lesson.
words: It hisses when I stand on it
cause: service-diaphragm
results:
  ${first!.id}: ${first!.results[1]!.id}
answers:
  ${tree.stopRules[0]!.id}: "no"
passed:
  wrongParts: 0
  minutes: 400
`;

describe('an exercise file', () => {
  it('[PRA-17] lays down words, fault, results and answers', () => {
    const { value, problems } = read(GOOD);
    expect(problems).toEqual([]);
    const exercise = exerciseOfFile(value!, pinned, 'one');
    expect(exercise).toMatchObject({
      name: 'The hiss under the left front',
      words: 'It hisses when I stand on it',
      cause: 'service-diaphragm',
    });
    expect(exercise.look(first!.id, 0)).toBe(first!.results[1]!.id);
    expect(exercise.answer(tree.stopRules[0]!.id)).toBe('no');
    expect(complaintOfFile(GOOD)).toBe(tree.id);
    expect(complaintOfFile('title: nothing')).toBeNull();
  });

  it('[PRA-17] draws one of several causes, the same for the same handing-out', () => {
    const { value } = read(GOOD.replace('cause: service-diaphragm', 'causes: [service-diaphragm, foot-valve]'));
    const causes = Array.from({ length: 30 }, (_, i) => exerciseOfFile(value!, pinned, `seed ${i}`).cause);
    expect(new Set(causes)).toEqual(new Set(['service-diaphragm', 'foot-valve']));
    expect(exerciseOfFile(value!, pinned, 'seed 4').cause).toBe(causes[4]);
  });

  it('[PRA-17] says what counts as passed, line by line; an unsafe choice never passes', () => {
    const { value } = read(GOOD);
    const exercise = { ...exerciseOfFile(value!, pinned, 'one'), answer: () => 'no' as const };
    const questions = tree.stopRules.map(({ id }): Choice => ({ kind: 'question.asked', rule: id }));
    const fix: Choice = { kind: 'correction.made', cause: 'service-diaphragm', way: 'properly' };
    const proven = foldSession(exercise, [...questions, fix, { kind: 'proof.made' }]);
    expect(passLines(proven, value!.passed).map(({ asked, met }) => [asked, met])).toEqual([
      ['safe', true],
      ['found', true],
      ['proven', true],
      ['wrong-parts', true],
      ['minutes', true],
    ]);
    expect(hasPassed(proven, value!.passed)).toBe(true);
    expect(hasPassed(foldSession(exercise, [...questions, fix]), value!.passed)).toBe(false);
    expect(hasPassed(foldSession(exercise, [fix, { kind: 'proof.skipped' }]), value!.passed)).toBe(false);
    const unsafe = foldSession(exercise, [{ kind: 'access.changed', to: 'chocked', way: 'no-chocks' }]);
    expect(hasPassed(unsafe, { found: false, proven: false })).toBe(false);
  });

  it.each([
    ['', 'lesson.yaml:1:1 error empty-file'],
    [GOOD.replace('service-diaphragm', 'service-diafragm'), '6:8 error unknown-cause', 'Nearest: "service-diaphragm"'],
    [GOOD.replace('cause: service-diaphragm\n', ''), 'error one-of-two'],
    [
      GOOD.replace('complaint: air-leaks-when-brake-held', 'complaint: coolant-los'),
      '3:12 error unknown-complaint',
      'Nearest: "coolant-loss"',
    ],
    [
      GOOD.replace(`${first!.id}: ${first!.results[1]!.id}`, `${first!.id}: no-such-result`),
      '8:',
      'error unknown-result',
      `Allowed: ${first!.results[0]!.id}`,
    ],
    [GOOD.replace(first!.id, 'no-such-check'), '8:', 'error unknown-check'],
    [GOOD.replace(tree.stopRules[0]!.id, 'no-such-rule'), '10:', 'error unknown-rule'],
    [GOOD.replace('title:', 'tittle:'), '2:9 error unknown-key', 'error missing-key'],
    [GOOD.replace('words:', 'layout: { wheels: round }\nwords:'), 'error unknown-feature'],
    [GOOD.replace('words:', 'layout: { parking: round }\nwords:'), 'error unknown-feature-value', 'Allowed:'],
    [GOOD.replace('service-diaphragm', UNLISTED), 'error cannot-be-proven'],
    [GOOD.replace('wrongParts: 0', 'wrongParts: -1'), 'error out-of-range'],
    [`${GOOD}# ${'x'.repeat(100_001)}`, 'error too-long'],
  ])('[PRA-17] names each fault at its place (%#)', (text, ...told) => {
    const { value, problems } = read(text);
    expect(value).toBeNull();
    const said = problems.map(formatProblem).join('\n');
    for (const each of told) expect(said).toContain(each);
  });
});
