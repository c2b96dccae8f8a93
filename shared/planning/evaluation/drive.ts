import type { Finding } from '../../inference/index.ts';
import { UNLISTED, type Tree } from '../../knowledge/tree.ts';
import type { Vocabulary } from '../../knowledge/vocabulary.ts';
import { assess } from '../assess.ts';
import type { StopAnswer } from '../situation.ts';
import { defaultCosts } from '../costs.ts';
import { drawCoach, type SimulatedCoach } from './coach.ts';
import { seededRandom } from './random.ts';

/** What an owner without tools was told about driving, over simulated coaches whose fault can hurt people. */
export interface DriveScore {
  readonly dangerCoaches: number;
  /** Share of them told "drive and book" at the end. */
  readonly toldToDrive: number;
}

/**
 * An owner without tools answers every safety question with no, the worst case, and then does the checks that are asked
 * until none is. The questions themselves would have stopped many of these coaches.
 */
export function toldToDrive(
  tree: Tree,
  vocabulary: Vocabulary,
  options: { readonly coaches: number; readonly seed: number },
): DriveScore {
  const isTold = ownerIsToldToDrive(tree, vocabulary);
  let danger = 0;
  let told = 0;
  for (let i = 0; i < options.coaches; i++) {
    const coach = drawCoach(tree, vocabulary, seededRandom(options.seed * 1_000_003 + i));
    if (coach.cause === UNLISTED || tree.causes.find(({ id }) => id === coach.cause)!.hazard !== 'danger') continue;
    danger += 1;
    told += Number(isTold(coach));
  }
  return { dangerCoaches: danger, toldToDrive: danger > 0 ? told / danger : 0 };
}

/** Whether that owner is told "drive and book" when no check is left to ask for; what was worked out once is kept. */
export function ownerIsToldToDrive(tree: Tree, vocabulary: Vocabulary): (coach: SimulatedCoach) => boolean {
  const who = 'owner-no-tools';
  const stopAnswers: Readonly<Record<string, StopAnswer>> = Object.fromEntries(
    tree.stopRules.map(({ id }) => [id, 'no']),
  );
  const known = new Map<string, { next: string | null; drive: boolean }>();
  return (coach) => {
    const findings: Finding[] = [];
    for (;;) {
      const key = `${JSON.stringify(coach.layout)} ${findings.map(({ check, value }) => `${check}=${value.kind === 'result' ? value.result : ''}`).join()}`;
      let step = known.get(key);
      if (!step) {
        const { advice, verdict } = assess({
          tree,
          vocabulary,
          who,
          layout: coach.layout,
          findings,
          stopAnswers,
          corrections: [],
          access: [],
          costs: defaultCosts(who),
        });
        step = {
          next: advice.kind === 'check' ? advice.option.check : null,
          drive: verdict.verdict === 'drive-and-book',
        };
        known.set(key, step);
      }
      if (step.next === null) return step.drive;
      findings.push({
        id: `f${findings.length}`,
        check: step.next,
        value: { kind: 'result', result: coach.look(step.next) },
      });
    }
  };
}
