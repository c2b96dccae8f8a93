import { convert } from '../units/index.ts';
import { ATMOSPHERE_PSI } from './atmosphere.ts';
import { outOfRange, type Outcome, type OutOfRange } from './outcome.ts';

const IN3_PER_FT3 = 1728;
/** Litres in a cubic foot, exact by the definition of the inch. */
const L_PER_FT3 = 28.316846592;
const PSI_PA = convert(1, 'psi', 'kPa') * 1000;
const GAS_CONSTANT = 287.05;
/** √(γ/R)·(2/(γ+1))^((γ+1)/(2(γ−1))) for air, γ 1.4. */
const CHOKED = Math.sqrt(1.4 / GAS_CONSTANT) * (2 / 2.4) ** 3;

export interface FreeAirFlow {
  readonly litresPerMin: number;
  readonly cubicFeetPerMin: number;
  /** One standard uncertainty, as a share of the flow; null when the uncertainties were not given. */
  readonly relativeUncertainty: number | null;
}

/**
 * Leak as a flow of free air, which does not depend on the size of the tanks.
 *
 * @param volumeIn3  air volume that loses pressure, 100…50 000 in³.
 * @param ratePsiPerMin  0.01…200.
 * @param uncertainty  one standard uncertainty each, in³ and psi/min, if known.
 * @param atmosphere   psi absolute; sea level unless given (`atmospherePsi`).
 * @source Q = V·(Δp/Δt)/p_atm, isothermal ideal gas.
 */
export function freeAirFlow(
  volumeIn3: number,
  ratePsiPerMin: number,
  uncertainty?: { readonly volumeIn3: number; readonly ratePsiPerMin: number },
  atmosphere: number = ATMOSPHERE_PSI,
): Outcome<FreeAirFlow, OutOfRange> {
  const bad = outOfRange(
    ['volume', volumeIn3, 100, 50_000, 'in³'],
    ['leak rate', ratePsiPerMin, 0.01, 200, 'psi/min'],
    ['uncertainty of the volume', uncertainty?.volumeIn3 ?? 0, 0, 50_000, 'in³'],
    ['uncertainty of the rate', uncertainty?.ratePsiPerMin ?? 0, 0, 200, 'psi/min'],
    ['atmospheric pressure', atmosphere, 7, 16, 'psi'],
  );
  if (bad) return bad;
  const cubicFeetPerMin = (volumeIn3 * ratePsiPerMin) / (atmosphere * IN3_PER_FT3);
  return {
    ok: true,
    cubicFeetPerMin,
    litresPerMin: cubicFeetPerMin * L_PER_FT3,
    relativeUncertainty: uncertainty
      ? Math.hypot(uncertainty.volumeIn3 / volumeIn3, uncertainty.ratePsiPerMin / ratePsiPerMin)
      : null,
  };
}

/** Sharp-edged crack or seat; 0.61–0.65 are printed, 0.97 for a rounded entry. */
const SHARP_EDGE = 0.65;

/**
 * Free air through a round hole at a gauge pressure high enough to choke it.
 *
 * @param diameterMm    0.01…20 mm.
 * @param pressurePsi   gauge, 13.1 psi (choked from there) … 150.
 * @param dischargeCoefficient  0.3…1; 0.65 for a sharp edge.
 * @param temperatureK  of the air in the tank.
 * @source Choked nozzle flow ṁ = C·A·K·p/√T (textbook), K = 0.0404149 s·√K/m; within 0.5 % of the published discharge
 *   table by S. A. Moss's formula in the tests.
 */
export function holeFlow(
  diameterMm: number,
  pressurePsi: number,
  dischargeCoefficient: number = SHARP_EDGE,
  temperatureK = 293.15,
): Outcome<{ readonly litresPerMin: number; readonly cubicFeetPerMin: number }, OutOfRange> {
  const bad = outOfRange(
    ['hole diameter', diameterMm, 0.01, 20, 'mm'],
    ['pressure', pressurePsi, 13.1, 150, 'psi'],
    ['discharge coefficient', dischargeCoefficient, 0.3, 1, ''],
    ['temperature', temperatureK, 200, 400, 'K'],
  );
  if (bad) return bad;
  const area = (Math.PI * (diameterMm / 1000) ** 2) / 4;
  const absolutePa = (pressurePsi + ATMOSPHERE_PSI) * PSI_PA;
  const kgPerS = (dischargeCoefficient * area * CHOKED * absolutePa) / Math.sqrt(temperatureK);
  const litresPerMin = (kgPerS / density(temperatureK)) * 60_000;
  return { ok: true, litresPerMin, cubicFeetPerMin: litresPerMin / L_PER_FT3 };
}

/**
 * The round hole that would lose this much: a picture for the person, not a measurement of the leak.
 *
 * @param pressurePsi  mean gauge pressure of the test, 13.1…150 psi.
 * @source As `holeFlow`, solved for the diameter.
 */
export function equivalentHole(
  litresPerMin: number,
  pressurePsi: number,
  dischargeCoefficient: number = SHARP_EDGE,
  temperatureK = 293.15,
): Outcome<{ readonly diameterMm: number }, OutOfRange> {
  const bad = outOfRange(
    ['flow', litresPerMin, 0.001, 20_000, 'L/min'],
    ['pressure', pressurePsi, 13.1, 150, 'psi'],
    ['discharge coefficient', dischargeCoefficient, 0.3, 1, ''],
    ['temperature', temperatureK, 200, 400, 'K'],
  );
  if (bad) return bad;
  const kgPerS = (litresPerMin / 60_000) * density(temperatureK);
  const absolutePa = (pressurePsi + ATMOSPHERE_PSI) * PSI_PA;
  const area = (kgPerS * Math.sqrt(temperatureK)) / (dischargeCoefficient * CHOKED * absolutePa);
  return { ok: true, diameterMm: 1000 * Math.sqrt((4 * area) / Math.PI) };
}

function density(temperatureK: number): number {
  return (ATMOSPHERE_PSI * PSI_PA) / (GAS_CONSTANT * temperatureK);
}
