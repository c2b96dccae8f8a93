import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bearingRates,
  pickPeaks,
  readWav,
  readWavHeader,
  refinedHz,
  taperedRates,
  welchDensity,
} from '../../../shared/measuring/index.ts';
import { directTransform } from '../../unit/measuring/direct-transform.ts';
import { told } from '../../unit/measuring/told.ts';

const SEED = { seed: 20251201, numRuns: 60 };
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const signal = fc
  .array(fc.integer({ min: -1000, max: 1000 }), { minLength: 256, maxLength: 256 })
  .map((all) => Float64Array.from(all, (each) => each / 1000));
const welch = (samples: Float64Array, window: 'hann' | 'rectangular', sampleRateHz = 256, segmentLength = 128) =>
  told(welchDensity({ samples, sampleRateHz, segmentLength, overlap: 0.5, window }, directTransform));
const total = (density: Float64Array) => density.reduce((sum, each) => sum + each, 0);

describe('[MEA-43] density', () => {
  it('Parseval: the sum is the mean square about the mean of each segment', () => {
    fc.assert(
      fc.property(signal, (samples) => {
        const { density, binHz } = told(
          welchDensity(
            { samples, sampleRateHz: 256, segmentLength: 256, overlap: 0, window: 'rectangular' },
            directTransform,
          ),
        );
        const mean = samples.reduce((sum, each) => sum + each, 0) / 256;
        const square = samples.reduce((sum, each) => sum + (each - mean) ** 2, 0) / 256;
        expect(total(density) * binHz).toBeCloseTo(square, 9);
      }),
      SEED,
    );
  });
  it('goes with the square of the signal, not with its zero, and with the bin width inversely', () => {
    fc.assert(
      fc.property(signal, real(0.1, 9), real(-5, 5), (samples, k, shift) => {
        const one = welch(samples, 'hann').density;
        const other = welch(
          samples.map((each) => k * each + shift),
          'hann',
        ).density;
        one.forEach((each, i) => expect(other[i]).toBeCloseTo(k * k * each, 7));
        const faster = welch(samples, 'hann', 512).density;
        one.forEach((each, i) => expect(faster[i]).toBeCloseTo(each / 2, 9));
      }),
      SEED,
    );
  });
});

describe('[MEA-44] peaks', () => {
  it('a single tone is found to a fiftieth of a bin, whatever its phase', () => {
    fc.assert(
      fc.property(real(20, 100), real(0, 6.28), real(0.01, 10), (hz, phase, amplitude) => {
        const samples = Float64Array.from(
          { length: 512 },
          (_, t) => amplitude * Math.sin((2 * Math.PI * hz * t) / 256 + phase),
        );
        const { density, binHz } = welch(samples, 'hann', 256, 512);
        const bin = density.indexOf(Math.max(...density));
        expect(Math.abs(refinedHz(density, bin, binHz) - hz)).toBeLessThan(0.02 * binHz);
        const strongest = told(pickPeaks(density, binHz)).peaks[0]!;
        expect(strongest.bin).toBe(bin);
      }),
      SEED,
    );
  });
});

describe('[MEA-45] bearings', () => {
  const geometry = fc.record({
    rollers: fc.integer({ min: 5, max: 12 }),
    rollerDiameter: real(5, 15),
    pitchDiameter: real(70, 120),
    contactAngleDeg: real(0, 30),
  });
  it('the races share the rollers: outer and inner add up to their number; both cages to one turn', () => {
    fc.assert(
      fc.property(geometry, (bearing) => {
        const rates = told(bearingRates(bearing));
        expect(rates.outerRace + rates.innerRace).toBeCloseTo(bearing.rollers, 9);
        expect(rates.cage + rates.cageOuterTurning).toBeCloseTo(1, 12);
        expect(rates.outerRace).toBeCloseTo(bearing.rollers * rates.cage, 9);
        expect(rates.outerRace).toBeLessThan(rates.innerRace);
        const inches = {
          ...bearing,
          rollerDiameter: bearing.rollerDiameter / 25.4,
          pitchDiameter: bearing.pitchDiameter / 25.4,
        };
        expect(told(bearingRates(inches)).rollerSpin).toBeCloseTo(rates.rollerSpin, 9);
      }),
      SEED,
    );
  });
  it('tapered by raceway angles is the same bearing by diameters and roller-axis angle', () => {
    fc.assert(
      fc.property(fc.integer({ min: 6, max: 11 }), real(10, 25), real(1, 2.5), (rollers, axis, half) => {
        const byAngles = told(taperedRates(rollers, axis - half, axis + half));
        const rad = Math.PI / 180;
        const byDiameters = told(
          bearingRates({
            rollers,
            rollerDiameter: 200 * Math.tan(half * rad),
            pitchDiameter: 200 * Math.sin(axis * rad),
            contactAngleDeg: axis,
          }),
        );
        expect(byAngles.outerRace).toBeCloseTo(byDiameters.outerRace, 9);
        expect(byAngles.innerRace).toBeCloseTo(byDiameters.innerRace, 9);
      }),
      SEED,
    );
  });
});

describe('[MEA-47] recordings', () => {
  const header = fc.record({
    channels: fc.constantFrom(1, 2),
    rate: fc.integer({ min: 8000, max: 96_000 }),
    values: fc.array(fc.integer({ min: -32_768, max: 32_767 }), { minLength: 2, maxLength: 40 }),
  });
  /** A 16-bit recording, written here by the layout of the format. */
  const written = ({ channels, rate, values }: { channels: number; rate: number; values: number[] }) => {
    const count = values.length - (values.length % channels);
    const file = new Uint8Array(44 + 2 * count);
    const view = new DataView(file.buffer);
    const text = (at: number, tag: string) => file.set(new TextEncoder().encode(tag), at);
    text(0, 'RIFF');
    view.setUint32(4, 36 + 2 * count, true);
    text(8, 'WAVEfmt ');
    view.setUint32(16, 16, true);
    view.setUint16(20, 1, true);
    view.setUint16(22, channels, true);
    view.setUint32(24, rate, true);
    view.setUint32(28, rate * channels * 2, true);
    view.setUint16(32, channels * 2, true);
    view.setUint16(34, 16, true);
    text(36, 'data');
    view.setUint32(40, 2 * count, true);
    for (let i = 0; i < count; i++) view.setInt16(44 + 2 * i, values[i]!, true);
    return file;
  };
  it('what is written is read again', () => {
    fc.assert(
      fc.property(header, (each) => {
        const sound = told(readWav(written(each), 'left'));
        expect(sound.header).toMatchObject({ sampleRateHz: each.rate, channels: each.channels });
        sound.samples.forEach((value, i) => expect(value * 32_768).toBe(each.values[i * each.channels]));
      }),
      SEED,
    );
  });
  it('any bytes, and any damage to good ones, give a recording that fits the file or a refusal, and never throw', () => {
    const damage = fc.array(fc.tuple(fc.nat(43), fc.nat(255)), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(header, damage, fc.uint8Array({ maxLength: 80 }), fc.nat(90), (each, changes, any, cut) => {
        expect(readWavHeader(any).ok).toBe(false);
        const file = written(each);
        for (const [at, value] of changes) file[at] = value;
        for (const bytes of [file, file.subarray(0, cut)]) {
          const found = readWavHeader(bytes);
          if (!found.ok) continue;
          const width = (found.channels * found.bitsPerSample) / 8;
          expect(found.dataOffset + found.frames * width).toBeLessThanOrEqual(bytes.length);
          expect(found.durationS).toBeLessThanOrEqual(300);
          readWav(bytes);
        }
      }),
      { ...SEED, numRuns: 2000 },
    );
  });
});
