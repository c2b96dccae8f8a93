import { describe, expect, it } from 'vitest';
import { UNLISTED, type Tree } from '../../../shared/knowledge/index.ts';
import {
  canChoose,
  choose,
  CLOSED,
  COME_BACK_COST,
  DANGERS,
  foldSession,
  HINT_COST,
  practiceVerdict,
  QUESTION_MINUTES,
  reckon,
  waysFor,
  type Choice,
  type Exercise,
  type Session,
} from '../../../shared/practice/index.ts';
import { allQuiet, anyExercise, practiceTree, withHidden } from './exercises.ts';

const growl = await practiceTree('growl-through-floor-at-speed');
const held = await practiceTree('air-leaks-when-brake-held');
const quiet = allQuiet(anyExercise(growl, 3));
const moves = (tree: Tree): readonly string[] =>
  tree.checks.filter(({ access }) => access === 'road-test').map(({ id }) => id);
const asked = (exercise: Exercise): Choice[] => {
  let session = foldSession(exercise, []);
  const choices: Choice[] = [];
  for (let open = practiceVerdict(session).openQuestions[0]; open; open = practiceVerdict(session).openQuestions[0]) {
    choices.push({ kind: 'question.asked', rule: open });
    session = choose(session, choices.at(-1)!);
    if (practiceVerdict(session).fired.length > 0) break;
  }
  return choices;
};
const checkOf = (exercise: Exercise, wanted: (check: Tree['checks'][number]) => boolean): Choice => {
  const session = foldSession(exercise, []);
  const check = exercise.tree.checks.find(
    (each) => wanted(each) && canChoose(session, { kind: 'check.made', check: each.id, way: 'properly' }),
  );
  if (!check) throw new Error('The tree has no such check.');
  return { kind: 'check.made', check: check.id, way: 'properly' };
};
const parked = checkOf(quiet, ({ access }) => access === 'parked');

describe('a session', () => {
  it('[PRA-3] a check made again costs again and shows the same', () => {
    const once = foldSession(quiet, [parked]);
    const twice = choose(once, parked);
    expect(twice.steps[1]?.told).toMatchObject({ kind: 'result', result: resultOf(once, 0) });
    expect(twice.clock).toBe(2 * once.clock);
    expect(twice.situation.findings).toHaveLength(1);
  });

  it('[PRA-3] unless the tree says that it varies', () => {
    const id = parked.kind === 'check.made' ? parked.check : '';
    const checks = growl.tree.checks.map((check) =>
      check.id === id
        ? {
            ...check,
            varies: 'read by feel',
            likelihood: growl.tree.causes.map(() => check.results.map(() => 1 / check.results.length)),
          }
        : check,
    );
    const varying = { ...growl, tree: { ...growl.tree, checks } };
    const results = new Set(Array.from({ length: 20 }, (_, nth) => anyExercise(varying, 3).look(id, nth)));
    expect(results.size).toBeGreaterThan(1);
    const steady = new Set(Array.from({ length: 20 }, (_, nth) => anyExercise(growl, 3).look(id, nth)));
    expect(steady.size).toBe(1);
  });

  it('[PRA-6] what cannot be chosen changes nothing, and nothing follows the end', () => {
    const session = foldSession(quiet, [parked]);
    const nonsense: Choice[] = [
      { kind: 'check.made', check: 'no-such-check', way: 'properly' },
      { kind: 'check.made', check: growl.tree.checks[0]!.id, way: 'chamber-open' },
      { kind: 'question.asked', rule: 'no-such-rule' },
      { kind: 'access.changed', to: 'the-moon', way: 'properly' },
      { kind: 'suspicion.stated', cause: 'front-bearing', share: 1.5 },
      { kind: 'correction.made', cause: UNLISTED, way: 'properly' },
      { kind: 'proof.made' },
      { kind: 'proof.skipped' },
    ];
    for (const choice of nonsense) expect(choose(session, choice)).toBe(session);
    const ended = choose(session, { kind: 'given-up' });
    expect(ended.end?.how).toBe('given-up');
    expect(choose(ended, parked)).toBe(ended);
  });

  it('[PRA-7] questions, hints, opening and closing are charged', () => {
    const rule = growl.tree.stopRules[0]!.id;
    const under = growl.vocabulary.access.find(({ id }) => id === 'under-coach')!;
    const chocked = growl.vocabulary.access.find(({ id }) => id === 'chocked')!;
    const session = foldSession(quiet, [
      { kind: 'question.asked', rule },
      { kind: 'hint.taken' },
      { kind: 'access.changed', to: 'under-coach', way: 'properly' },
      { kind: 'access.changed', to: CLOSED, way: 'properly' },
    ]);
    const there = under.openMinutes + chocked.openMinutes;
    expect(session.steps.map(({ bill }) => bill)).toEqual([
      QUESTION_MINUTES,
      HINT_COST,
      there,
      under.closeMinutes + chocked.closeMinutes,
    ]);
    expect(session.bill - session.clock).toBe(HINT_COST);
    expect(session.situation.access).toEqual([]);
  });

  it('[PRA-7] a wrong part is charged when its proof fails, and the fault can still be found', () => {
    const [wrong, right] = growl.tree.causes;
    const exercise = withHidden(quiet, right!.id);
    const session = foldSession(exercise, [
      ...asked(exercise),
      { kind: 'correction.made', cause: wrong!.id, way: 'properly' },
      { kind: 'proof.made' },
      { kind: 'correction.made', cause: right!.id, way: 'properly' },
      { kind: 'proof.made' },
    ]);
    expect(session.end).toEqual({ how: 'proven', right: true });
    expect(session.wrongParts).toBe(1);
    expect(session.bill - session.clock).toBe(session.situation.costs.wrongPart);
  });

  it('[PRA-7] a job called done without its proof costs more than its proof, right or wrong', () => {
    const [cause, other] = growl.tree.causes;
    const fix = (proof: Choice, hidden: string): Session =>
      foldSession(withHidden(quiet, hidden), [
        ...asked(quiet),
        { kind: 'correction.made', cause: cause!.id, way: 'properly' },
        proof,
      ]);
    const proven = fix({ kind: 'proof.made' }, cause!.id);
    const skipped = fix({ kind: 'proof.skipped' }, cause!.id);
    expect(proven.end).toEqual({ how: 'proven', right: true });
    expect(skipped.end).toEqual({ how: 'unproven', right: true });
    expect(skipped.bill - skipped.clock).toBe(COME_BACK_COST);
    expect(skipped.bill).toBeGreaterThan(proven.bill);
    expect(fix({ kind: 'proof.skipped' }, other!.id).bill).toBeGreaterThan(skipped.bill);
  });

  it('[PRA-7] handing over is right only when the fault is not in the list', () => {
    const over = (hidden: string): boolean | undefined =>
      foldSession(withHidden(quiet, hidden), [{ kind: 'handed-over' }]).end?.right;
    expect(over(UNLISTED)).toBe(true);
    expect(over('front-bearing')).toBe(false);
  });
});

describe('danger', () => {
  const road: Choice = { kind: 'check.made', check: moves(growl.tree)[0]!, way: 'properly' };

  it('[PRA-9] on the road with a safety question open', () => {
    const questions = asked(quiet);
    expect(foldSession(quiet, [road]).end).toEqual({ how: 'stopped', right: false, danger: 'road-unasked' });
    expect(foldSession(quiet, [...questions.slice(0, -1), road]).end?.danger).toBe('road-unasked');
    expect(foldSession(quiet, [{ kind: 'access.changed', to: 'road-test', way: 'properly' }]).end?.danger).toBe(
      'road-unasked',
    );
    expect(foldSession(quiet, [...questions, road]).end).toBeNull();
  });

  it('[PRA-9] on the road with a rule in force', () => {
    const strict = growl.tree.stopRules.find(({ verdict }) => verdict === 'stay-put')!;
    const loud: Exercise = { ...quiet, answer: (rule) => (rule === strict.id ? 'yes' : 'no') };
    const all = growl.tree.stopRules.map(({ id }): Choice => ({ kind: 'question.asked', rule: id }));
    expect(foldSession(loud, [...all, road]).end?.danger).toBe('road-ruled');
  });

  it('[PRA-9] the proof drive of something else than the rule guards over', () => {
    const strict = growl.tree.stopRules.find(({ verdict, covers }) => verdict === 'stay-put' && covers.length > 0)!;
    const loud: Exercise = { ...quiet, answer: (rule) => (rule === strict.id ? 'yes' : 'no') };
    const other = growl.tree.causes.find(({ id }) => !strict.covers.includes(id))!.id;
    const prove = (cause: string): Session =>
      foldSession(loud, [
        ...growl.tree.stopRules.map(({ id }): Choice => ({ kind: 'question.asked', rule: id })),
        { kind: 'correction.made', cause, way: 'properly' },
        { kind: 'proof.made' },
      ]);
    expect(prove(other).end?.danger).toBe('road-ruled');
    expect(prove(strict.covers[0]!).end?.danger).toBeUndefined();
  });

  it.each([
    ['no-chocks', 'chocked'],
    ['no-stands', 'under-coach'],
    ['jack-alone', 'chocked-raised'],
  ] as const)('[PRA-9] %s: offered where it has to be set up first, and it ends the exercise', (danger, access) => {
    const open: Choice = { kind: 'access.changed', to: access, way: 'properly' };
    expect(waysFor(foldSession(quiet, []), open)).toContain(danger);
    expect(waysFor(foldSession(quiet, [open]), open)).not.toContain(danger);
    const { end } = foldSession(quiet, [{ ...open, way: danger }, parked]);
    expect(end).toEqual({ how: 'stopped', right: false, danger });
  });

  it('[PRA-9] a spring chamber opened', () => {
    const exercise = allQuiet(anyExercise(held, 1));
    const spring = checkOf(exercise, ({ hazards }) => hazards.includes('spring'));
    expect(waysFor(foldSession(exercise, []), spring)).toContain('chamber-open');
    expect(foldSession(exercise, [{ ...spring, way: 'chamber-open' } as Choice]).end?.danger).toBe('chamber-open');
  });

  it('[PRA-10] nothing makes up for it', () => {
    const stopped = foldSession(quiet, [road]);
    expect(reckon(stopped).score).toBe(0);
  });

  it('says what could have happened and what is asked instead, and never how it would be done', () => {
    for (const { couldHave, instead, label } of Object.values(DANGERS)) {
      expect(couldHave.length).toBeGreaterThan(60);
      expect(instead.length).toBeGreaterThan(20);
      expect(label).not.toMatch(/\b(undo|loosen|turn|pull|hammer|press|remove|bolt|spanner|pry)\b/i);
    }
  });
});

describe('the reckoning', () => {
  it('[PRA-14] each decision beside the best one; the best gives nothing away', () => {
    const first = reckon(foldSession(quiet, [...asked(quiet), { kind: 'given-up' }])).planner.steps.filter(
      ({ choice }) => choice.kind !== 'question.asked',
    );
    expect(first.length).toBeGreaterThan(0);
    const same = reckon(foldSession(quiet, [...asked(quiet), ...first.map(({ choice }) => choice)]));
    expect(same.score).toBe(100);
    expect(same.steps.map(({ lost }) => lost)).toEqual(same.steps.map(() => 0));
    expect(same.dearest).toBeNull();
  });

  it('[PRA-14] a part fitted on a guess gives away what looking would have saved', () => {
    const rare = [...growl.tree.causes].sort((a, b) => a.weight - b.weight)[0]!.id;
    const { steps, dearest } = reckon(
      foldSession(withHidden(quiet, 'front-bearing'), [
        { kind: 'correction.made', cause: rare, way: 'properly' },
        { kind: 'given-up' },
      ]),
    );
    expect(steps[0]!.best).not.toEqual({ kind: 'correct', cause: rare });
    expect(steps[0]!.own!).toBeLessThan(0);
    expect(steps[0]!.lost).toBeGreaterThan(60);
    expect(dearest?.step.choice.kind).toBe('correction.made');
  });

  it('[PRA-15] a check that shows the two causes left alike is named', () => {
    const blind = {
      ...growl,
      tree: {
        ...growl.tree,
        checks: growl.tree.checks.map((check, k) =>
          k === 0
            ? { ...check, likelihood: growl.tree.causes.map(() => check.results.map(() => 1 / check.results.length)) }
            : check,
        ),
      },
    };
    const exercise = allQuiet(anyExercise(blind, 3));
    const made: Choice = { kind: 'check.made', check: growl.tree.checks[0]!.id, way: 'properly' };
    const { steps } = reckon(foldSession(exercise, [...asked(exercise), made, { kind: 'given-up' }]));
    const step = steps.find(({ step: { choice } }) => choice.kind === 'check.made')!;
    expect(step.remarks).toContainEqual(expect.objectContaining({ kind: 'could-not-tell' }));
    expect(step.own!).toBeLessThan(0);
  });

  it('[PRA-16] what was suspected is held against what it was', () => {
    const { forecasts, brier } = reckon(
      foldSession(withHidden(quiet, 'front-bearing'), [
        { kind: 'suspicion.stated', cause: 'front-bearing', share: 0.7 },
        { kind: 'suspicion.stated', cause: 'hub-dry', share: 0.3 },
        { kind: 'given-up' },
      ]),
    );
    expect(forecasts).toEqual([
      { share: 0.7, right: true },
      { share: 0.3, right: false },
    ]);
    expect(brier).toBeCloseTo(0.09, 12);
  });
});

function resultOf({ steps }: Session, i: number): string {
  const told = steps[i]?.told;
  return told?.kind === 'result' ? told.result : '';
}
