import { medianOf } from './robust-spread.ts';
import { outOfRange, refuse, type Outcome, type OutOfRange, type Refusal, type Span } from './outcome.ts';

export interface SpectrumPeak {
  readonly bin: number;
  /** Refined between bins. */
  readonly frequencyHz: number;
  readonly density: number;
  /** Above the running median, dB. */
  readonly prominenceDb: number;
}

/** Bins on each side that make the floor of a peak, least prominence, and how many are kept: judgement. */
const AROUND = 20;
const LEAST_DB = 10;
const MOST = 8;

/**
 * Peaks of a Hann-windowed power density: local maxima of 10 dB or more over the median of 20 bins on each side, the
 * strongest eight, strongest first.
 *
 * @param density  `PowerDensity.density`, 8 bins or more.
 * @returns refused `empty` when the density is zero everywhere, `out-of-range`.
 */
export function pickPeaks(
  density: ArrayLike<number>,
  binHz: number,
): Outcome<{ readonly peaks: readonly SpectrumPeak[] }, OutOfRange | 'empty'> {
  const bad = outOfRange(...spectrumSpans(density, binHz));
  if (bad) return bad;
  const values = Array.from(density);
  if (!values.some((each) => each > 0)) return nothing();
  const peaks: SpectrumPeak[] = [];
  for (let bin = 1; bin < values.length - 1; bin++) {
    const here = values[bin]!;
    if (!(here > values[bin - 1]! && here >= values[bin + 1]!)) continue;
    const prominenceDb = overFloorDb(values, bin);
    if (prominenceDb >= LEAST_DB) {
      peaks.push({ bin, frequencyHz: refinedHz(values, bin, binHz), density: here, prominenceDb });
    }
  }
  peaks.sort((a, b) => b.density - a.density || a.bin - b.bin);
  return { ok: true, peaks: peaks.slice(0, MOST) };
}

/**
 * How far an order stands out of its surroundings.
 *
 * @param frequencyHz, toleranceHz  where it is expected and how far off it may lie; the strongest bin there counts.
 * @returns dB over the running median; refused `outside-spectrum`, `empty`, `out-of-range`.
 * @source 10·log10(P/median): a ratio of powers; the median of 20 bins on each side is judgement.
 */
export function orderProminence(
  density: ArrayLike<number>,
  binHz: number,
  frequencyHz: number,
  toleranceHz: number,
): Outcome<{ readonly prominenceDb: number; readonly foundHz: number }, OutOfRange | 'outside-spectrum' | 'empty'> {
  const bad = outOfRange(
    ...spectrumSpans(density, binHz),
    ['frequency', frequencyHz, 0, 1e5, 'Hz'],
    ['tolerance', toleranceHz, 0, 1e4, 'Hz'],
  );
  if (bad) return bad;
  const values = Array.from(density);
  if (!values.some((each) => each > 0)) return nothing();
  const low = Math.max(1, Math.round((frequencyHz - toleranceHz) / binHz));
  const high = Math.min(values.length - 2, Math.round((frequencyHz + toleranceHz) / binHz));
  if (low > high) {
    return refuse(
      'outside-spectrum',
      `${frequencyHz} Hz lies outside the spectrum, which goes from ${binHz} to ${((values.length - 2) * binHz).toFixed(1)} Hz.`,
    );
  }
  let best = low;
  for (let bin = low + 1; bin <= high; bin++) if (values[bin]! > values[best]!) best = bin;
  return { ok: true, prominenceDb: overFloorDb(values, best), foundHz: best * binHz };
}

function spectrumSpans(density: ArrayLike<number>, binHz: number): readonly Span[] {
  const faulty = Array.from(density).find((each) => !(each >= 0 && each <= 1e30));
  return [
    ['bin width', binHz, 1e-6, 1e5, 'Hz'],
    ['number of bins', density.length, 8, 1 << 24, ''],
    ['density', faulty ?? 0, 0, 1e30, ''],
  ];
}

function nothing(): Refusal<'empty'> {
  return refuse('empty', 'The spectrum is zero everywhere: the record holds no signal. Check the microphone.');
}

/** Capped at 300 dB, so that a tone over an exactly silent floor stays finite. */
function overFloorDb(values: readonly number[], bin: number): number {
  const around = values.slice(Math.max(0, bin - AROUND), bin + AROUND + 1);
  const floor = medianOf(around);
  const here = values[bin]!;
  if (here <= 0) return 0;
  return floor <= 0 ? 300 : Math.min(300, 10 * Math.log10(here / floor));
}

/**
 * A peak's frequency between bins from the ratio of the peak and its larger neighbour: exact for one tone in a Hann window.
 *
 * @source δ = (2r − 1)/(1 + r), r the ratio of amplitudes.
 */
export function refinedHz(density: ArrayLike<number>, bin: number, binHz: number): number {
  const here = density[bin] ?? 0;
  const before = density[bin - 1] ?? 0;
  const after = density[bin + 1] ?? 0;
  if (!(here > 0)) return bin * binHz;
  const ratio = Math.sqrt(Math.max(before, after) / here);
  const shift = Math.max(-0.5, Math.min(0.5, (2 * ratio - 1) / (1 + ratio)));
  return (bin + (after >= before ? shift : -shift)) * binHz;
}
