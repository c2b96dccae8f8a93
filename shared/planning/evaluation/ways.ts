import { indexOfMax } from '../../inference/index.ts';
import { UNLISTED } from '../../knowledge/tree.ts';
import { clearResult } from '../clear-result.ts';
import { lookAhead, type Memory } from '../ahead/index.ts';
import type { CheckOption } from '../assessment.ts';
import { rankChecks, type Ranking } from '../next-check.ts';
import type { Situation } from '../situation.ts';
import { beliefNow } from '../standing.ts';
import { canDo, type Move, type WayOfWorking } from './session.ts';
import { TELLS, TOLD_ENOUGH } from './told-enough.ts';

/** What looking many steps ahead says, costs alone; slow. */
export function plannerWay(): WayOfWorking {
  const memory: Memory = new Map();
  return rankedWay('many steps', (situation) => rankChecks(situation, null, lookAhead(situation, null, { memory })));
}

/** The program's advice, costs alone. */
export function adviceWay(): WayOfWorking {
  return rankedWay('this program', (situation) => rankChecks(situation, null));
}

/** What looks best one step ahead, as if no check were made after it. */
export function oneStepWay(): WayOfWorking {
  return rankedWay('one step', (situation) => {
    const ranking = rankChecks(situation, null);
    const best = ranking.options
      .filter(({ blocked }) => !blocked)
      .reduce<CheckOption | null>((a, b) => (a && a.savesAlone >= b.savesAlone ? a : b), null);
    if (ranking.stop.kind === 'check' && ranking.stop.why === 'settles') return ranking;
    return {
      ...ranking,
      stop:
        best && best.savesAlone > 0 ? { kind: 'check', option: best, why: 'saves' } : { kind: 'act', proven: false },
    };
  });
}

/** Checks while they pay, then the correction that comes next, then the next; what was worked out once is kept. */
function rankedWay(name: string, rank: (situation: Situation) => Ranking): WayOfWorking {
  const known = new Map<string, Move>();
  return {
    name,
    next(situation) {
      const key = keyOf(situation);
      const before = known.get(key);
      if (before) return before;
      const { stop, actNow, problem } = rank(situation);
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

/**
 * The check that tells most about the cause for its time, until one cause stands out; then corrections as they pay.
 *
 * @source Information gain per cost until P ≥ .8; common practice in decision support, and a poor rule for repairs.
 */
export function informationWay(): WayOfWorking {
  return rankedWay('information per minute', (situation) => {
    const ranking = rankChecks(situation, null);
    const belief = ranking.problem.belief(ranking.problem.start);
    const open = ranking.options.filter(({ blocked, bits }) => !blocked && bits > TELLS);
    const rate = ({ bits, minutes, accessMinutes }: CheckOption): number => bits / Math.max(1, minutes + accessMinutes);
    const best = [...open].sort((a, b) => rate(b) - rate(a))[0];
    const stop: Ranking['stop'] =
      best && belief[indexOfMax(belief)]! < TOLD_ENOUGH
        ? { kind: 'check', option: best, why: 'saves' }
        : { kind: 'act', proven: false };
    return { ...ranking, stop };
  });
}

/** Anything that can be done, by lot; checks as often as corrections. What nobody would do. */
export function randomWay(random: () => number): WayOfWorking {
  return {
    name: 'by lot',
    next(situation) {
      const { tree } = situation;
      const { model, excluded } = beliefNow(situation);
      const moves: Move[] = [
        ...tree.checks.filter((check) => canDo(check, situation)).map(({ id }): Move => ({ kind: 'check', check: id })),
        ...model.causeIds
          .filter((id) => id !== UNLISTED && !excluded.has(id))
          .map((cause): Move => ({ kind: 'correct', cause })),
      ];
      return moves[Math.floor(random() * moves.length)] ?? { kind: 'hand-over' };
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
  // After a fault that was real, old findings are set aside: then each of them counts by when it was made.
  const real = situation.corrections.filter(({ partSeen }) => partSeen === 'bad');
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
    real.map(({ cause, findingsBefore }) => `${cause}${findingsBefore.length}`).join(),
    real.length > 0 ? situation.findings.map(({ id, check }) => `${id}${check}`).join() : '',
  ].join('|');
}
