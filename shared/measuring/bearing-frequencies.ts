import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

export interface BearingGeometry {
  readonly rollers: number;
  /** Mean of both ends for a tapered roller; any unit, the same as the pitch diameter. */
  readonly rollerDiameter: number;
  readonly pitchDiameter: number;
  /** Between roller axis and bearing axis; not the cup angle. */
  readonly contactAngleDeg: number;
}

/** Rates as multiples of the relative speed of the rings. */
export interface BearingRates {
  /** Cage with a standing outer ring. */
  readonly cage: number;
  /** Cage with a turning outer ring and a standing inner one, as in most wheel hubs. */
  readonly cageOuterTurning: number;
  readonly outerRace: number;
  readonly innerRace: number;
  /** Spin of a roller. */
  readonly rollerSpin: number;
  /** A spot on a roller strikes both races: twice the spin. Some tables print this, others the spin. */
  readonly rollerDefect: number;
}

/**
 * Defect frequencies of a rolling bearing, in multiples of the relative speed of its rings; pure rolling. Real bearings
 * slip: look within 1–2 %, search ± 3 % and the speed uncertainty (judgement).
 *
 * The defect on the ring that turns has sidebands at its speed: in a hub with a turning cup, the cup.
 *
 * @returns refused `impossible-geometry` when the rollers do not fit on the pitch circle, `out-of-range`.
 * @source Kinematics of pure rolling, γ = d/D·cos α (textbook); four published tables in the tests.
 */
export function bearingRates(geometry: BearingGeometry): Outcome<BearingRates, OutOfRange | 'impossible-geometry'> {
  const { rollers: n, rollerDiameter: d, pitchDiameter: big, contactAngleDeg } = geometry;
  const bad = outOfRange(
    ['number of rollers', n, 3, 200, ''],
    ['roller diameter', d, 1e-3, 1e4, ''],
    ['pitch diameter', big, 1e-3, 1e5, ''],
    ['contact angle', contactAngleDeg, 0, 60, '°'],
  );
  if (bad) return bad;
  if (!Number.isInteger(n) || Math.sin(Math.PI / n) * big < d) {
    return refuse(
      'impossible-geometry',
      `${n} rollers of ${d} do not fit on a pitch circle of ${big}. Count and measure again, both in the same unit.`,
    );
  }
  const gamma = (d / big) * Math.cos((contactAngleDeg * Math.PI) / 180);
  const rollerSpin = (big / (2 * d)) * (1 - gamma ** 2);
  return {
    ok: true,
    cage: (1 - gamma) / 2,
    cageOuterTurning: (1 + gamma) / 2,
    outerRace: (n * (1 - gamma)) / 2,
    innerRace: (n * (1 + gamma)) / 2,
    rollerSpin,
    rollerDefect: 2 * rollerSpin,
  };
}

/**
 * Cage and race rates of a tapered bearing from the half-angles of its raceways, which meet in one apex.
 *
 * @source Pure rolling about the common apex: cage = sin α_i/(sin α_i + sin α_o). Own derivation, equal to `bearingRates`
 *   with the roller-axis angle (property test).
 */
export function taperedRates(
  rollers: number,
  coneHalfAngleDeg: number,
  cupHalfAngleDeg: number,
): Outcome<
  { readonly cage: number; readonly outerRace: number; readonly innerRace: number },
  OutOfRange | 'angles-crossed'
> {
  const bad = outOfRange(
    ['number of rollers', rollers, 3, 200, ''],
    ['cone half-angle', coneHalfAngleDeg, 1, 60, '°'],
    ['cup half-angle', cupHalfAngleDeg, 1, 60, '°'],
  );
  if (bad) return bad;
  if (coneHalfAngleDeg >= cupHalfAngleDeg) {
    return refuse(
      'angles-crossed',
      `The cone's ${coneHalfAngleDeg}° must be less than the cup's ${cupHalfAngleDeg}°. Exchange them.`,
    );
  }
  const inner = Math.sin((coneHalfAngleDeg * Math.PI) / 180);
  const outer = Math.sin((cupHalfAngleDeg * Math.PI) / 180);
  const cage = inner / (inner + outer);
  return { ok: true, cage, outerRace: rollers * cage, innerRace: rollers * (1 - cage) };
}
