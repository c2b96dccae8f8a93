import { indexOfMax } from '../../inference/index.ts';
import { UNLISTED } from '../../knowledge/tree.ts';
import { clearResult } from '../clear-result.ts';
import { rankChecks } from '../next-check.ts';
import type { Situation } from '../situation.ts';
import { beliefNow } from '../standing.ts';
import { canDo, type Move, type WayOfWorking } from './session.ts';

/** The program's own advice, costs alone: checks while they pay, then the correction it would make, then the next. */
export function plannerWay(): WayOfWorking {
  const known = new Map<string, Move>();
  return {
    name: 'planner',
    next(situation) {
      const key = keyOf(situation);
      const before = known.get(key);
      if (before) return before;
      const { stop, actNow, problem } = rankChecks(situation, null);
      const move: Move =
        stop.kind === 'check'
          ? { kind: 'check', check: stop.option.check }
          : actNow.first.kind === 'correct'
            ? { kind: 'correct', cause: problem.causesOf[actNow.first.correction]!.id }
            : { kind: 'hand-over' };
      known.set(key, move);
      return move;
    },
  };
}

/** Belief from which the taught order stops looking. Judgement. */
const TAUGHT_ENOUGH = 0.9;

/**
 * The instructor's order: every check in turn that makes sense, until a settling check names its cause or one cause
 * stands out; then that correction, and if it was not it, on with the list.
 */
export function taughtWay(): WayOfWorking {
  return {
    name: 'taught order',
    next(situation) {
      const { tree } = situation;
      const { belief, model } = beliefIn(situation);
      const lead = indexOfMax(belief);
      const id = model.causeIds[lead]!;
      const settled = situation.findings.some((finding) => {
        const check = tree.checks.find((each) => each.id === finding.check)!;
        return check.settles.includes(id) && clearResult(check, finding) !== null;
      });
      if (id !== UNLISTED && (belief[lead]! >= TAUGHT_ENOUGH || (settled && belief[lead]! >= 0.5)))
        return { kind: 'correct', cause: id };
      const next = tree.teaching.find((step) =>
        canDo(
          tree.checks.find((each) => each.id === step.check)!,
          situation,
        ),
      );
      if (next) return { kind: 'check', check: next.check };
      return id === UNLISTED ? { kind: 'hand-over' } : { kind: 'correct', cause: id };
    },
  };
}

/** Parts by frequency: correct what is likeliest beforehand, then the next, without looking. */
export function swapperWay(): WayOfWorking {
  return {
    name: 'likeliest part first',
    next(situation) {
      const { belief, model } = beliefIn({ ...situation, findings: [] });
      const lead = indexOfMax(belief);
      return model.causeIds[lead] === UNLISTED
        ? { kind: 'hand-over' }
        : { kind: 'correct', cause: model.causeIds[lead]! };
    },
  };
}

/** Every check that can be done, then the likeliest cause: the most that the tables can tell. */
export function everyCheckWay(): WayOfWorking {
  return {
    name: 'every check',
    next(situation) {
      const next = situation.tree.teaching.find((step) =>
        canDo(
          situation.tree.checks.find((each) => each.id === step.check)!,
          situation,
        ),
      );
      if (next) return { kind: 'check', check: next.check };
      const { belief, model } = beliefIn(situation);
      const lead = indexOfMax(belief);
      return model.causeIds[lead] === UNLISTED
        ? { kind: 'hand-over' }
        : { kind: 'correct', cause: model.causeIds[lead]! };
    },
  };
}

function beliefIn(situation: Situation) {
  const { model, now } = beliefNow(situation);
  return { model, belief: now.probability };
}

/** Situations with the same key are treated alike: layout, findings, corrections, open access. */
function keyOf(situation: Situation): string {
  const findings = situation.findings
    .map((finding) => `${finding.check}=${finding.value.kind === 'result' ? finding.value.result : '?'}`)
    .sort();
  return [
    JSON.stringify(situation.layout),
    findings.join(),
    situation.corrections
      .map(({ cause }) => cause)
      .sort()
      .join(),
    situation.access.join(),
  ].join('|');
}
