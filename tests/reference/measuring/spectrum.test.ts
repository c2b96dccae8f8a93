import { describe, expect, it } from 'vitest';
import {
  amplitudeSpectrum,
  decimate,
  envelopeSpectrum,
  hannWindow,
  kurtosisOf,
  lowPass,
  orderProminence,
  pickPeaks,
  recordLengthS,
  refinedHz,
  welchDensity,
} from '../../../shared/measuring/index.ts';
import { directTransform } from '../../unit/measuring/direct-transform.ts';
import { reasonOf, told } from '../../unit/measuring/told.ts';

const RATE = 1024;
const tone = (hz: number, amplitude: number, phase: number, n: number, rate = RATE) =>
  Float64Array.from({ length: n }, (_, t) => amplitude * Math.sin((2 * Math.PI * hz * t) / rate + phase));
const sum = (...signals: Float64Array[]) =>
  signals[0]!.map((_, t) => signals.reduce((total, each) => total + each[t]!, 0));
const S1 = sum(tone(8.25, 1, 0, 8192), tone(34, 0.4, 0.7, 8192), tone(120, 0.1, 1.1, 8192));

/** Linear congruential noise, so that the same figures come out in every language. */
function noise(seed: number, n: number): Float64Array {
  let state = seed;
  return Float64Array.from({ length: n }, () => {
    state = (Math.imul(1664525, state) + 1013904223) >>> 0;
    return state / 2 ** 32 - 0.5;
  });
}
const S2 = sum(
  S1,
  noise(12345, 8192).map((each) => 0.5 * each),
);
const welch = (samples: Float64Array, segmentLength = 2048, overlap = 0.5, window: 'hann' | 'rectangular' = 'hann') =>
  told(welchDensity({ samples, sampleRateHz: RATE, segmentLength, overlap, window }, directTransform));

describe('the signals are the ones that were given to SciPy', () => {
  it('first samples of tones and noise', () => {
    [0.34680781, 0.46255826, 0.51450471, 0.52268657].forEach((each, i) => expect(S1[i]).toBeCloseTo(each, 8));
    [-0.26354447, -0.13072933, 0.00424203, 0.20488326].forEach((each, i) =>
      expect(noise(1, 4)[i]).toBeCloseTo(each, 8),
    );
  });
});

describe('[MEA-43] scipy.signal.welch 1.17.1 and 1.10.1, Hann, constant detrend, density', () => {
  it('three tones, segments of 2048 at half overlap', () => {
    const { density, binHz, segments } = welch(S1);
    expect([binHz, segments]).toEqual([0.5, 7]);
    expect(density[16]).toBeCloseTo(0.48033596, 8);
    expect(density[17]).toBeCloseTo(0.48033883, 8);
    expect(density[68]).toBeCloseTo(0.1066665, 7);
    expect(density[240]).toBeCloseTo(0.0066666663, 9);
    expect(density[120]).toBeLessThan(1e-12);
    expect(density.reduce((total, each) => total + each, 0) * binHz).toBeCloseTo(0.58521265, 8);
  });
  it('with noise', () => {
    const { density } = welch(S2);
    expect(density[16]).toBeCloseTo(0.48398596, 8);
    expect(density[17]).toBeCloseTo(0.4850053, 8);
    expect(density[68]).toBeCloseTo(0.10832464, 8);
    expect(density[240]).toBeCloseTo(0.0066845674, 10);
    expect(density[600]).toBeCloseTo(6.2106168e-5, 12);
    const above = density.slice(401);
    expect(above.reduce((total, each) => total + each, 0) / above.length).toBeCloseTo(4.0446776e-5, 7);
  });
  it('another segment length, overlap and window', () => {
    const quarter = welch(S2, 1024, 0.25).density;
    expect(quarter[34]).toBeCloseTo(0.0543505153506912, 12);
    expect(quarter[120]).toBeCloseTo(0.003301898610013948, 12);
    const plain = welch(S2, 512, 0, 'rectangular').density;
    expect(plain[17]).toBeCloseTo(0.04051557433822022, 12);
    expect(plain[60]).toBeCloseTo(0.002527628268966175, 12);
    expect(plain[256]).toBeCloseTo(3.6826296609025735e-5, 12);
  });
  it('Parseval: one rectangular segment holds the mean square exactly, 1/2 + 0.08 + 0.005', () => {
    const { density, binHz } = welch(S1, 8192, 0, 'rectangular');
    expect(density.reduce((total, each) => total + each, 0) * binHz).toBeCloseTo(0.585, 9);
  });
  it('amplitudes from one Hann transform; the window itself (Harris 1978)', () => {
    const { amplitude } = told(amplitudeSpectrum(S1, RATE, directTransform));
    [
      [66, 1],
      [65, 0.5],
      [67, 0.5],
      [272, 0.4],
      [960, 0.1],
    ].forEach(([bin, expected]) => expect(amplitude[bin!]).toBeCloseTo(expected!, 4));
    const window = hannWindow(1024);
    expect(window.reduce((total, each) => total + each, 0) / 1024).toBeCloseTo(0.5, 12);
    expect(window.reduce((total, each) => total + each * each, 0) / 1024).toBeCloseTo(0.375, 12);
    const between = told(amplitudeSpectrum(tone(100.5 * (RATE / 1024), 1, 0, 1024), RATE, directTransform)).amplitude;
    expect(between[100]).toBeCloseTo(0.84882632, 3);
  });
  it('what cannot be transformed is refused', () => {
    const settings = { sampleRateHz: RATE, segmentLength: 2048, overlap: 0.5, window: 'hann' as const };
    expect(reasonOf(welchDensity({ ...settings, samples: S1.slice(0, 1000) }, directTransform))).toBe('too-short');
    expect(reasonOf(welchDensity({ ...settings, samples: S1.map(() => NaN) }, directTransform))).toBe('not-a-number');
    expect(reasonOf(welchDensity({ ...settings, samples: S1 }, () => ({ re: [], im: [] })))).toBe('bad-transform');
    expect(reasonOf(welchDensity({ ...settings, samples: S1, segmentLength: 333 }, directTransform))).toBe(
      'out-of-range',
    );
  });
  it.each([
    [34.25, 33.3, 2.105, 5.263],
    [8.33, 8.6, 7.407, 18.52],
  ])('%s and %s Hz need %s s a segment, %s s in all', (a, b, segment, record) => {
    const needed = told(recordLengthS(a, b));
    expect(needed.segmentS).toBeCloseTo(segment, 2);
    expect(needed.recordS).toBeCloseTo(record, 2);
    expect(reasonOf(recordLengthS(a, a))).toBe('same');
  });
});

describe('[MEA-44] peaks', () => {
  it('only the three tones stand out of the noise', () => {
    const { peaks } = told(pickPeaks(welch(S2).density, 0.5));
    const found = peaks.map((peak) => Math.round(peak.frequencyHz * 4) / 4).sort((a, b) => a - b);
    expect(found.slice(0, 3)).toEqual([8.25, 34, 120]);
    expect(peaks.slice(0, 3).map((peak) => Math.round(peak.frequencyHz))).toEqual([8, 34, 120]);
  });
  it('prominence over the running median, NumPy', () => {
    const { density } = welch(S2);
    expect(told(orderProminence(density, 0.5, 34, 1)).prominenceDb).toBeCloseTo(34.48580719288471, 6);
    expect(told(orderProminence(density, 0.5, 121, 2))).toMatchObject({ foundHz: 120 });
    expect(told(orderProminence(density, 0.5, 120, 1)).prominenceDb).toBeCloseTo(21.397793266207046, 6);
    expect(reasonOf(orderProminence(density, 0.5, 900, 1))).toBe('outside-spectrum');
  });
  it.each([
    [8.25, 8.250006],
    [8.3, 8.300003],
    [8.1, 8.100001],
    [33.87, 33.87],
    [120.2, 120.2],
  ])('refined: %s Hz comes out as %s', (hz, expected) => {
    const { density } = welch(tone(hz, 1, 0.3, 2048));
    const bin = density.indexOf(Math.max(...density));
    expect(refinedHz(density, bin, 0.5)).toBeCloseTo(expected, 5);
  });
  it('silence has no peaks, and says so', () => {
    expect(reasonOf(pickPeaks(new Float64Array(100), 0.5))).toBe('empty');
  });
});

describe('[MEA-46] envelope of impacts under an imbalance, scipy.signal.hilbert', () => {
  const rate = 8192;
  const n = 16_384;
  const turn = 29.95;
  const strike = 3.5848 * turn;
  const impacts = Float64Array.from({ length: n }, (_, t) => {
    let value = 0;
    for (let i = 0; i / strike <= t / rate; i++) {
      const since = t / rate - i / strike;
      if (since < 0.05) value += Math.exp(-800 * since) * Math.sin(2 * Math.PI * 2500 * since);
    }
    return value;
  });
  const z = sum(impacts, tone(turn, 0.8, 0, n, rate), tone(2 * turn, 0.3, 0.5, n, rate));
  const found = told(envelopeSpectrum({ samples: z, sampleRateHz: rate, lowHz: 2000, highHz: 3000 }, directTransform));
  it('the signal is the one that was given to SciPy', () => {
    [0.14382766, 1.02714464, -0.32161016, -0.143915].forEach((each, i) => expect(z[i]).toBeCloseTo(each, 7));
    expect(kurtosisOf(z)).toBeCloseTo(2.06627731, 6);
  });
  it('band kurtosis and mean envelope', () => {
    expect(found.kurtosis).toBeCloseTo(7.27654723, 6);
    expect(found.meanEnvelope).toBeCloseTo(0.15078456, 7);
    expect(found.binHz).toBe(0.5);
  });
  it.each([
    [107.5, 0.19120602],
    [214.5, 0.1077412],
    [322, 0.08154611],
    [429.5, 0.06281345],
  ])('line at %s Hz', (hz, amplitude) => {
    expect(found.amplitude[hz * 2]).toBeCloseTo(amplitude, 7);
  });
  it('the imbalance is gone, and the plain spectrum would not have shown the impacts', () => {
    expect(found.amplitude[60]).toBeLessThan(2e-5);
    const plain = told(amplitudeSpectrum(z, rate, directTransform)).amplitude;
    expect(plain[60]! / plain[215]!).toBeGreaterThan(50);
  });
  it('a transform that uses one buffer again and again gives the same', () => {
    const buffer = { re: new Float64Array(1025), im: new Float64Array(1025) };
    const reusing = (signal: Float64Array) => {
      const fresh = directTransform(signal);
      buffer.re.set(fresh.re);
      buffer.im.set(fresh.im);
      return buffer;
    };
    const short = { samples: z.slice(0, 2048), sampleRateHz: rate, lowHz: 2000, highHz: 3000 };
    expect(told(envelopeSpectrum(short, reusing)).meanEnvelope).toBe(
      told(envelopeSpectrum(short, directTransform)).meanEnvelope,
    );
  });
  it('bands that cannot be are refused', () => {
    const settings = { samples: z.slice(0, 1024), sampleRateHz: rate };
    expect(reasonOf(envelopeSpectrum({ ...settings, lowHz: 3000, highHz: 2000 }, directTransform))).toBe(
      'band-outside',
    );
    expect(reasonOf(envelopeSpectrum({ ...settings, lowHz: 2000, highHz: 4000 }, directTransform))).toBe(
      'band-outside',
    );
    const silent = { ...settings, samples: new Float64Array(1024), lowHz: 1000, highHz: 2000 };
    expect(reasonOf(envelopeSpectrum(silent, directTransform))).toBe('silent-band');
  });
});

describe('a record at a lower rate, against SciPy 1.17.1', () => {
  // firwin(243, 1000, window=('kaiser', kaiser_beta(80)), fs=48000), 243 = kaiserord(80, 1000/24000) made odd; then
  // convolve(x, taps, 'valid')[::24]. Taps agree to 1e-12: the same formulas in another order.
  it('the taps are those of firwin', () => {
    const taps = lowPass(48_000, 500, 1500);
    expect(taps).toHaveLength(243);
    expect(taps[121]).toBeCloseTo(0.04166860583450352, 12);
    expect(taps[161]).toBeCloseTo(-0.004566034250400056, 12);
    expect(taps[0]).toBeCloseTo(-9.177406834055158e-7, 12);
  });
  it('a tone of 300 Hz stays, one of 5 kHz goes', () => {
    const record = sum(tone(300, 1, 0, 1000, 48_000), tone(5000, 0.5, 0, 1000, 48_000));
    const slower = told(decimate(record, 48_000, 500));
    expect(slower.sampleRateHz).toBe(2000);
    expect(slower.samples).toHaveLength(32);
    [-0.9992292419684129, -0.5555674511651946, 0.3461146222633319, 0.962455503111369].forEach((each, i) =>
      expect(slower.samples[i]).toBeCloseTo(each, 10),
    );
    expect(slower.samples[31]).toBeCloseTo(0.5555711738398015, 10);
  });
  it('a rate that is low enough stays as it is, and a record shorter than the filter is refused', () => {
    const record = tone(30, 1, 0, 100, 3000);
    expect(told(decimate(record, 3000, 500)).samples).toBe(record);
    expect(reasonOf(decimate(record, 48_000, 500))).toBe('too-short');
  });
});
