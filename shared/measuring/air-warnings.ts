import { judge, judgeBand, type BandJudgement, type Judgement, type Limit } from './limit.ts';
import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

/** Build date; the month matters only for 1975. */
export interface BuildDate {
  readonly year: number;
  /** 1…12; left out = not known, and the stricter rule is taken. */
  readonly month?: number;
}

/**
 * Whether the air-brake standard was in force for buses when the vehicle was built (about 1 March 1975, memory).
 * Without a month, 1975 counts as under the standard: the stricter rule.
 */
export function builtUnderAirBrakeStandard(built: BuildDate): boolean {
  return built.year > 1975 || (built.year === 1975 && (built.month ?? 12) >= 3);
}

/**
 * The pressure at which the low-pressure warning must be on.
 *
 * @param cutOutPsi  governor cut-out, 60…150 psi; decides only for vehicles before the standard.
 * @source Under FMVSS 121: before the pressure is under 60 psi (model licence manual 5.3, seen; 571.121 S5.1.5, memory).
 *   Before it: at and below 55 psi or half of cut-out, whichever is less (49 CFR 393.51(c), structure seen, wording memory).
 */
export function warningLimit(built: BuildDate, cutOutPsi: number): Outcome<{ readonly limit: Limit }, OutOfRange> {
  const bad = outOfRange(
    ['build year', built.year, 1930, 2100, ''],
    ['build month', built.month ?? 1, 1, 12, ''],
    ['governor cut-out', cutOutPsi, 60, 150, 'psi'],
  );
  if (bad) return bad;
  const common = { unit: 'psi', side: 'at-least', atLimit: 'passes' } as const;
  return {
    ok: true,
    limit: builtUnderAirBrakeStandard(built)
      ? {
          ...common,
          id: 'low-air-warning-from-1975',
          value: 60,
          source: 'model commercial driver’s licence manual, section 5.3; 49 CFR 571.121 S5.1.5 (from memory)',
          status: 'seen',
        }
      : {
          ...common,
          id: 'low-air-warning-before-1975',
          value: Math.min(55, cutOutPsi / 2),
          source: '49 CFR 393.51(c): 55 psi or half of governor cut-out, whichever is less',
          status: 'memory',
        },
  };
}

/**
 * A low-pressure warning, judged by the pressure of the lowest tank at which it came on.
 *
 * @param uncertaintyPsi  of the gauge, one standard uncertainty; about 3 psi for a dash gauge (judgement).
 */
export function judgeWarning(
  cameOnPsi: number,
  uncertaintyPsi: number,
  built: BuildDate,
  cutOutPsi: number,
): Outcome<{ readonly judgement: Judgement }, OutOfRange> {
  const bad = outOfRange(
    ['pressure at which the warning came on', cameOnPsi, 0, 150, 'psi'],
    ['gauge uncertainty', uncertaintyPsi, 0, 20, 'psi'],
  );
  if (bad) return bad;
  const found = warningLimit(built, cutOutPsi);
  return found.ok ? { ok: true, judgement: judge(cameOnPsi, uncertaintyPsi, found.limit) } : found;
}

const MANUAL = 'model commercial driver’s licence manual, section 5.3';
const BAND = { unit: 'psi', atLimit: 'passes', source: MANUAL, status: 'seen' } as const;
const KNOB_LOW: Limit = { ...BAND, id: 'parking-knob-pops-low', value: 20, side: 'at-least' };
const KNOB_HIGH: Limit = { ...BAND, id: 'parking-knob-pops-high', value: 45, side: 'at-most' };

/**
 * The pressure at which the parking-brake knob pops out while the pedal is pumped.
 *
 * @param springBrakes  false for older actuators, driveline bands and cable levers: this test does not exist for them.
 * @returns `note` is what the person should read beside a pass, or null. Refused `no-spring-brakes`, `out-of-range`.
 * @source 20–45 psi, model licence manual 5.3 (seen); several States print 20–40 (seen second-hand), hence the note above 40.
 */
export function judgeParkingKnob(
  poppedPsi: number,
  uncertaintyPsi: number,
  springBrakes: boolean,
): Outcome<BandJudgement & { readonly note: string | null }, OutOfRange | 'no-spring-brakes'> {
  if (!springBrakes) {
    return refuse(
      'no-spring-brakes',
      'Only spring parking brakes pop their knob out at low pressure. This coach has another kind: test it as its manual says.',
    );
  }
  const bad = outOfRange(
    ['pressure at which the knob popped', poppedPsi, 0, 150, 'psi'],
    ['gauge uncertainty', uncertaintyPsi, 0, 20, 'psi'],
  );
  if (bad) return bad;
  const note = poppedPsi > 40 && poppedPsi <= 45 ? 'Several States print 20 to 40 psi; this is above 40.' : null;
  return { ok: true, ...judgeBand(poppedPsi, uncertaintyPsi, KNOB_LOW, KNOB_HIGH), note };
}

/**
 * Governor cut-in and cut-out.
 *
 * @returns cut-in against 85 psi (a bus under the newer standard; the older inspection model has 80, hence the note between
 *   them), cut-out against 135 psi unless the maker says otherwise, and the span between them in psi. Refused
 *   `crossed` when cut-in is not below cut-out, `out-of-range`.
 * @source Cut-in: 49 CFR 571.121 S5.1.1.1 (second-hand); 570.57(a)(4), 80 and 135 psi (memory).
 */
export function judgeGovernor(
  cutInPsi: number,
  cutOutPsi: number,
  uncertaintyPsi: number,
): Outcome<
  { readonly cutIn: Judgement; readonly cutOut: Judgement; readonly spanPsi: number; readonly note: string | null },
  OutOfRange | 'crossed'
> {
  const bad = outOfRange(
    ['cut-in', cutInPsi, 0, 200, 'psi'],
    ['cut-out', cutOutPsi, 0, 200, 'psi'],
    ['gauge uncertainty', uncertaintyPsi, 0, 20, 'psi'],
  );
  if (bad) return bad;
  if (cutInPsi >= cutOutPsi) {
    return refuse(
      'crossed',
      `Cut-in is ${cutInPsi} psi and cut-out ${cutOutPsi} psi; cut-in is the lower of the two. Exchange them or read again.`,
    );
  }
  const cutIn: Limit = {
    id: 'governor-cut-in',
    value: 85,
    unit: 'psi',
    side: 'at-least',
    atLimit: 'passes',
    source: '49 CFR 571.121 S5.1.1.1, bus',
    status: 'second-hand',
  };
  const cutOut: Limit = {
    id: 'governor-cut-out',
    value: 135,
    unit: 'psi',
    side: 'at-most',
    atLimit: 'passes',
    source: '49 CFR 570.57(a)(4), unless the maker says otherwise',
    status: 'memory',
  };
  const notes = [
    cutInPsi >= 80 && cutInPsi < 85
      ? 'Cut-in is under the 85 psi of the newer bus rule, but not under the 80 psi of the older inspection model (49 CFR 570.57, from memory).'
      : '',
    cutOutPsi > 135 && cutOutPsi <= 140
      ? 'Cut-out is over 135 psi; the licence manual calls 120 to 140 psi usual. The maker’s figure decides.'
      : '',
  ].filter((text) => text !== '');
  return {
    ok: true,
    cutIn: judge(cutInPsi, uncertaintyPsi, cutIn),
    cutOut: judge(cutOutPsi, uncertaintyPsi, cutOut),
    spanPsi: cutOutPsi - cutInPsi,
    note: notes.length > 0 ? notes.join(' ') : null,
  };
}
