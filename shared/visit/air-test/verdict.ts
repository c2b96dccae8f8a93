import type { Hold } from '../../planning/situation.ts';
import { sheetHold, strictestFirst, type SheetHold } from '../sheet-hold.ts';
import { cutOutRead, judgeAirStep, type AirOutcome } from './judge-step.ts';
import type { AirTestState } from './state.ts';
import { AIR_STEPS, type AirStep } from './steps.ts';
import { WALK_ROUND } from './walk-round.ts';

/** A step of this coach's test with what came of it. */
export interface AirStepStanding {
  readonly step: AirStep;
  readonly outcome: AirOutcome;
}

/** Every step that this coach has, in order; empty before the test was begun. */
export function airTestStandings({ setup, records }: AirTestState): AirStepStanding[] {
  if (!setup) return [];
  return AIR_STEPS.filter((step) => step.applies(setup)).map((step) => ({
    step,
    outcome: judgeAirStep(step, records[step.id], setup, cutOutRead(records)),
  }));
}

/** What lifts a hold of these sheets. */
const AGAIN = 'do the step again';

/** Everything that holds the coach, strictest first, in the order of the sheets. */
export function airTestHolds(state: AirTestState): SheetHold[] {
  const steps = airTestStandings(state).flatMap(({ step, outcome }): SheetHold[] => {
    if (outcome.kind !== 'judged' || outcome.decision === 'meets') return [];
    const { verdict, because } = step.fails;
    if (outcome.decision === 'fails') return [sheetHold(step.id, verdict, `Air test: ${lower(because)}.`, AGAIN)];
    return [
      sheetHold(
        step.id,
        'creep-to-safe-place',
        `Air test: “${lower(step.name)}” is too near its limit to tell with this gauge, and that counts against driving.`,
        AGAIN,
      ),
    ];
  });
  const walk = WALK_ROUND.flatMap((item): SheetHold[] =>
    state.walk[item.id]?.state === 'wrong'
      ? [sheetHold(item.id, item.verdict, `Walk-round: ${lower(item.wrong)}.`, AGAIN)]
      : [],
  );
  return strictestFirst([...steps, ...walk]);
}

/**
 * What the air test and the walk-round hold the coach to; null when nothing in them does. That is no permission: what was
 * not looked at is not known. "Too close to call" holds as "creep".
 */
export function airTestVerdict(state: AirTestState): Hold | null {
  return airTestHolds(state)[0] ?? null;
}

/** Whether every step that this coach has was done and every item of the walk-round was looked at. */
export function airTestComplete(state: AirTestState): boolean {
  const standings = airTestStandings(state);
  return (
    standings.length > 0 &&
    standings.every(({ outcome }) => outcome.kind === 'judged') &&
    WALK_ROUND.every(({ id }) => (state.walk[id]?.state ?? 'not-looked') !== 'not-looked')
  );
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
