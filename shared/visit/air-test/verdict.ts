import { VERDICTS, type Verdict } from '../../knowledge/tree.ts';
import type { Hold } from '../../planning/situation.ts';
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

/** One thing of the test or the walk-round that holds the coach. */
export interface AirHold extends Hold {
  /** Step or item. */
  readonly of: string;
}

const DO_NOW: Readonly<Record<Verdict, string>> = {
  'stay-put':
    'Leave the coach where it stands: parking brake on, wheels chocked. Have it put right and do the step again before it moves.',
  'creep-to-safe-place': 'Go slowly to the nearest place off the road, no farther, and have it put right there.',
  'drive-and-book': '',
};

/** Everything that holds the coach, strictest first, in the order of the sheets. */
export function airTestHolds(state: AirTestState): AirHold[] {
  const steps = airTestStandings(state).flatMap(({ step, outcome }): AirHold[] => {
    if (outcome.kind !== 'judged' || outcome.decision === 'meets') return [];
    const { verdict, because } = step.fails;
    if (outcome.decision === 'fails') return [hold(step.id, verdict, `Air test: ${lower(because)}.`)];
    return [
      hold(
        step.id,
        'creep-to-safe-place',
        `Air test: “${lower(step.name)}” is too near its limit to tell with this gauge, and that counts against driving.`,
      ),
    ];
  });
  const walk = WALK_ROUND.flatMap((item): AirHold[] =>
    state.walk[item.id]?.state === 'wrong' ? [hold(item.id, item.verdict, `Walk-round: ${lower(item.wrong)}.`)] : [],
  );
  return [...steps, ...walk].sort((a, b) => VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict));
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

function hold(of: string, verdict: Verdict, because: string): AirHold {
  return { of, verdict, because, doNow: DO_NOW[verdict] };
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
