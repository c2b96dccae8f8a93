import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

/** What the filter leaves of anything that would fold into the kept span, dB below: beyond what a 16-bit recording holds. */
const ATTENUATION_DB = 80;

export interface Decimated {
  readonly samples: Float64Array;
  readonly sampleRateHz: number;
}

/**
 * A record at a lower rate, true up to `keepHz`: a linear-phase low-pass, then every so-manyth sample. The record loses half
 * the filter's length at each end. Comes back as it is where its rate is not at least twice as high as it need be.
 *
 * @param samples  finite.
 * @param keepHz   up to here the level stays within 0.01 dB; the new rate is four times this or more.
 * @returns refused `too-short` when the filter is longer than the record, `out-of-range`.
 * @source Window design after Kaiser: β = 0.1102·(A − 8.7), (A − 7.95)/(2.285·Δω) + 1 taps, as SciPy's `kaiserord`; the tests
 *   hold taps and output against SciPy.
 */
export function decimate(
  samples: Float64Array,
  sampleRateHz: number,
  keepHz: number,
): Outcome<Decimated, OutOfRange | 'too-short'> {
  const bad = outOfRange(
    ['sample rate', sampleRateHz, 1, 200_000, 'Hz'],
    ['frequencies kept', keepHz, 0.1, 100_000, 'Hz'],
  );
  if (bad) return bad;
  const factor = Math.floor(sampleRateHz / (4 * keepHz));
  if (factor < 2) return { ok: true, samples, sampleRateHz };
  const taps = lowPass(sampleRateHz, keepHz, sampleRateHz / factor - keepHz);
  if (samples.length < taps.length)
    return refuse(
      'too-short',
      `The record has ${samples.length} samples; ${taps.length} are the least. Record a few seconds.`,
    );
  const kept = new Float64Array(Math.floor((samples.length - taps.length) / factor) + 1);
  for (let i = 0; i < kept.length; i++) {
    const from = i * factor;
    let sum = 0;
    for (let k = 0; k < taps.length; k++) sum += taps[k]! * samples[from + k]!;
    kept[i] = sum;
  }
  return { ok: true, samples: kept, sampleRateHz: sampleRateHz / factor };
}

/**
 * Taps of a low-pass of gain 1 at zero, odd in number.
 *
 * @param passHz  end of what passes. @param stopHz  from here 80 dB are taken off.
 */
export function lowPass(sampleRateHz: number, passHz: number, stopHz: number): Float64Array {
  const width = (2 * Math.PI * (stopHz - passHz)) / sampleRateHz;
  const least = Math.ceil((ATTENUATION_DB - 7.95) / (2.285 * width) + 1);
  const count = least + 1 - (least % 2);
  const beta = 0.1102 * (ATTENUATION_DB - 8.7);
  const cutoff = (passHz + stopHz) / sampleRateHz;
  const middle = (count - 1) / 2;
  const taps = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    const at = k - middle;
    const sinc = at === 0 ? 1 : Math.sin(Math.PI * cutoff * at) / (Math.PI * cutoff * at);
    taps[k] = sinc * besselI0(beta * Math.sqrt(1 - (at / middle) ** 2));
  }
  const sum = taps.reduce((total, each) => total + each, 0);
  return taps.map((each) => each / sum);
}

/** Modified Bessel function of order 0 by its power series, which ends quickly for the arguments of a window. */
function besselI0(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > sum * 1e-17; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}
