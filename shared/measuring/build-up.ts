import { ATMOSPHERE_PSI } from './atmosphere.ts';
import { judge, type Judgement, type Limit } from './limit.ts';
import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

/** Which published build-up test was done. They have different spans and engine speeds and must not be mixed. */
export type BuildUpTest =
  /** 85 → 100 psi at operating engine speed, dual air system. */
  | 'dual-operating-speed'
  /** 85 → 100 psi at the maker's maximum recommended engine speed, vehicle under FMVSS 121, tank volumes known. */
  | 'dual-maximum-speed'
  /** 85 → 100 psi at idle, 600–900 rpm. */
  | 'dual-idle'
  /** 50 → 90 psi at idle, 600–900 rpm, single air system built before 1975. */
  | 'single-idle';

const MANUAL = 'model commercial driver’s licence manual, section 5.3, build-up of air pressure';

function fixed(test: Exclude<BuildUpTest, 'dual-maximum-speed'>): Limit {
  const common = { unit: 's', side: 'at-most', atLimit: 'passes', status: 'seen' } as const;
  switch (test) {
    case 'dual-operating-speed':
      return { ...common, id: 'build-up-dual-operating-speed', value: 45, source: MANUAL };
    case 'dual-idle':
      return { ...common, id: 'build-up-dual-idle', value: 120, source: 'Ontario air brake handbook, build-up test' };
    case 'single-idle':
      return { ...common, id: 'build-up-single-idle', value: 180, source: MANUAL };
  }
}

/**
 * The time a vehicle under FMVSS 121 may take from 85 to 100 psi at its maximum recommended engine speed.
 *
 * @param actualIn3, requiredIn3  tank volume fitted and required (`requiredReservoir`), 500…50 000 in³.
 * @source 25 s × actual/required, 49 CFR 571.121 S5.1.1 (seen in an agency letter).
 */
export function allowedBuildUpS(
  actualIn3: number,
  requiredIn3: number,
): Outcome<{ readonly seconds: number }, OutOfRange> {
  const bad = outOfRange(
    ['tank volume fitted', actualIn3, 500, 50_000, 'in³'],
    ['tank volume required', requiredIn3, 500, 50_000, 'in³'],
  );
  return bad ?? { ok: true, seconds: (25 * actualIn3) / requiredIn3 };
}

export interface BuildUp {
  readonly test: BuildUpTest;
  readonly seconds: number;
  /** One standard uncertainty; by hand with a stop-watch and a dash gauge about 2 s (judgement). */
  readonly uncertaintyS: number;
  /** Needed for `dual-maximum-speed`. */
  readonly volumes?: { readonly actualIn3: number; readonly requiredIn3: number };
}

/**
 * A build-up time held against the limit of its own test.
 *
 * @returns refused `volumes-needed` for a test at maximum speed without tank volumes; `out-of-range`.
 * @source The limit in the answer names it.
 */
export function judgeBuildUp(run: BuildUp): Outcome<{ readonly judgement: Judgement }, OutOfRange | 'volumes-needed'> {
  const bad = outOfRange(
    ['build-up time', run.seconds, 1, 3600, 's'],
    ['uncertainty of the time', run.uncertaintyS, 0, 600, 's'],
  );
  if (bad) return bad;
  if (run.test !== 'dual-maximum-speed') {
    return { ok: true, judgement: judge(run.seconds, run.uncertaintyS, fixed(run.test)) };
  }
  if (!run.volumes) {
    return refuse(
      'volumes-needed',
      'At maximum engine speed the limit depends on the tanks: give the volume fitted and the volume required, or use the test at operating speed.',
    );
  }
  const allowed = allowedBuildUpS(run.volumes.actualIn3, run.volumes.requiredIn3);
  if (!allowed.ok) return allowed;
  const limit: Limit = {
    id: 'build-up-dual-maximum-speed',
    value: allowed.seconds,
    unit: 's',
    side: 'at-most',
    atLimit: 'passes',
    source: '49 CFR 571.121 S5.1.1, 25 s × actual/required volume',
    status: 'seen',
  };
  return { ok: true, judgement: judge(run.seconds, run.uncertaintyS, limit) };
}

/**
 * The same compressor filling other tanks over the same span: time goes with volume.
 *
 * @source Isothermal ideal gas, t ∝ V.
 */
export function scaledBuildUpS(
  seconds: number,
  fromIn3: number,
  toIn3: number,
): Outcome<{ readonly seconds: number }, OutOfRange> {
  const bad = outOfRange(
    ['build-up time', seconds, 1, 3600, 's'],
    ['tank volume measured', fromIn3, 100, 50_000, 'in³'],
    ['tank volume wanted', toIn3, 100, 50_000, 'in³'],
  );
  return bad ?? { ok: true, seconds: (seconds * toIn3) / fromIn3 };
}

export interface FillRun {
  readonly volumeIn3: number;
  readonly fromPsi: number;
  readonly toPsi: number;
  /** Swept free-air displacement at `ratedRpm`. */
  readonly displacementCfm: number;
  readonly ratedRpm: number;
  readonly rpm: number;
  /** Share of the displacement that is delivered; 0.65 ± 0.10 for a sound compressor (common practice). */
  readonly volumetricEfficiency: number;
  readonly leakCfm: number;
}

/**
 * How long a compressor takes to fill the tanks. Expect 10–20 % error (judgement): efficiency falls with pressure and the
 * air heats up. For comparing with the coach's own earlier time or with a scaled limit.
 *
 * @returns refused `leak-too-big` when the leak takes all that is delivered; `out-of-range`.
 * @source t = V·Δp/(p_atm·(η·D·n/n_rated − leak)), isothermal ideal gas.
 */
export function fillTimeS(run: FillRun): Outcome<{ readonly seconds: number }, OutOfRange | 'leak-too-big'> {
  const bad = outOfRange(
    ['tank volume', run.volumeIn3, 100, 50_000, 'in³'],
    ['start pressure', run.fromPsi, 0, 149, 'psi'],
    ['end pressure', run.toPsi, run.fromPsi + 0.1, 150, 'psi'],
    ['displacement', run.displacementCfm, 1, 100, 'cfm'],
    ['rated speed', run.ratedRpm, 300, 4000, 'rpm'],
    ['speed', run.rpm, 300, 4000, 'rpm'],
    ['volumetric efficiency', run.volumetricEfficiency, 0.05, 1, ''],
    ['leak', run.leakCfm, 0, 100, 'cfm'],
  );
  if (bad) return bad;
  const delivered = (run.volumetricEfficiency * run.displacementCfm * run.rpm) / run.ratedRpm;
  if (delivered - run.leakCfm < 1e-3 * delivered) {
    return refuse(
      'leak-too-big',
      `The leak of ${run.leakCfm} cfm takes all of the ${delivered.toFixed(2)} cfm delivered: the pressure never rises. Find the leak first.`,
    );
  }
  const cubicFeet = run.volumeIn3 / 1728;
  const minutes = (cubicFeet * (run.toPsi - run.fromPsi)) / (ATMOSPHERE_PSI * (delivered - run.leakCfm));
  return { ok: true, seconds: 60 * minutes };
}
