import { describe, expect, it } from 'vitest';
import { readWav, readWavHeader, recordingFits, type Recording } from '../../../shared/measuring/index.ts';
import { reasonOf, told } from '../../unit/measuring/told.ts';

const hex = (text: string) => Uint8Array.from(text.match(/../g)!, (pair) => parseInt(pair, 16));

/** Written by the wave module of Python 3.11 and by scipy.io.wavfile 1.17.1. */
const MONO16 =
  '524946462c00000057415645666d74201000000001000100401f0000803e0000020010006461746108000000000000400080ff7f';
const STEREO16 =
  '524946462c00000057415645666d7420100000000100020044ac000010b10200040010006461746108000000002000e000400000';
const MONO24 =
  '524946462d00000057415645666d7420100000000100010080bb000080320200030018006461746109000000000040000080ffff7f';
const MONO8 = '524946462700000057415645666d74201000000001000100112b0000112b000001000800646174610300000080c000';
const FLOAT32 =
  '524946463a00000057415645666d742012000000030001000077010000dc050004002000000066616374040000000200000064617461080000000000803e000000bf';
const INT32 =
  '524946462c00000057415645666d7420100000000100010022560000885801000400200064617461080000000000004000000080';

describe('[MEA-47] recordings written by Python', () => {
  it.each([
    ['16 bit mono', MONO16, 8000, 1, 16, [0, 0.5, -1, 32767 / 32768]],
    ['24 bit mono', MONO24, 48_000, 1, 24, [0.5, -1, 8388607 / 8388608]],
    ['8 bit mono', MONO8, 11_025, 1, 8, [0, 0.5, -1]],
    ['32 bit float', FLOAT32, 96_000, 1, 32, [0.25, -0.5]],
    ['32 bit integer', INT32, 22_050, 1, 32, [0.5, -1]],
    ['16 bit stereo, mean', STEREO16, 44_100, 2, 16, [0, 0.25]],
  ])('%s', (_, text, sampleRateHz, channels, bitsPerSample, samples) => {
    const sound = told(readWav(hex(text)));
    expect(sound.header).toMatchObject({ sampleRateHz, channels, bitsPerSample, frames: samples.length });
    expect([...sound.samples]).toEqual(samples);
    expect(sound.header.durationS).toBeCloseTo(samples.length / sampleRateHz, 12);
  });
  it('the channels of a stereo file', () => {
    expect([...told(readWav(hex(STEREO16), 'left')).samples]).toEqual([0.25, 0.5]);
    expect([...told(readWav(hex(STEREO16), 'right')).samples]).toEqual([-0.25, 0]);
  });
  it('clipping shows', () => {
    expect(told(readWav(hex(MONO16))).clippedShare).toBe(0.5);
    expect(told(readWav(hex(FLOAT32))).clippedShare).toBe(0);
  });
  it('a view into a larger buffer is read from its own beginning', () => {
    const padded = new Uint8Array(200);
    padded.set(hex(MONO16), 77);
    expect(told(readWav(padded.subarray(77, 77 + MONO16.length / 2))).header.frames).toBe(4);
  });
});

/** The mono file with bytes put over it at a place. */
const spoiled = (at: number, ...bytes: number[]) => {
  const file = hex(MONO16);
  file.set(bytes, at);
  return file;
};
/** A header of so many bytes of sound, without the sound being there but for zeros. */
const sized = (rate: number, bytes: number) => {
  const file = new Uint8Array(44 + bytes);
  file.set(hex(MONO16).subarray(0, 44));
  const view = new DataView(file.buffer);
  view.setUint32(4, 36 + bytes, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, 2 * rate, true);
  view.setUint32(40, bytes, true);
  return file;
};

describe('[MEA-47] hostile and broken headers are refused', () => {
  it.each([
    ['nothing', new Uint8Array(0), 'not-a-wav'],
    ['text', new TextEncoder().encode('RIFF is not enough here'), 'not-a-wav'],
    ['cut off', hex(MONO16).subarray(0, 50), 'cut-short'],
    ['a size beyond the file', spoiled(4, 255, 255, 255, 255), 'cut-short'],
    ['sound said to be longer than it is', spoiled(40, 255, 255, 255, 127), 'cut-short'],
    ['no channels', spoiled(22, 0, 0), 'unsupported-channels'],
    ['six channels', spoiled(22, 6, 0), 'unsupported-channels'],
    ['no bits', spoiled(34, 0, 0), 'unsupported-encoding'],
    ['12 bits', spoiled(34, 12, 0), 'unsupported-encoding'],
    ['compressed', spoiled(20, 85, 0), 'unsupported-encoding'],
    ['extensible without its part', spoiled(20, 254, 255), 'unsupported-encoding'],
    ['block of another size', spoiled(32, 4, 0), 'header-contradicts'],
    ['bytes a second that do not fit', spoiled(28, 1, 0, 0, 0), 'header-contradicts'],
    ['rate 0', spoiled(24, 0, 0, 0, 0), 'unsupported-rate'],
    ['rate 4 GHz', spoiled(24, 255, 255, 255, 255), 'unsupported-rate'],
    [
      'a short description of the format',
      hex('524946461a00000057415645666d742004000000010001006461746102000000' + '0000'),
      'header-contradicts',
    ],
    ['a description that runs into the sound', spoiled(16, 4, 0, 0, 0), 'cut-short'],
    ['half a sample', spoiled(40, 7, 0, 0, 0), 'cut-short'],
    ['no samples', sized(8000, 0), 'empty'],
    ['six minutes', sized(8000, 2 * 8000 * 360), 'too-long'],
    ['7 kHz', sized(7000, 100), 'unsupported-rate'],
  ])('%s', (_, file, reason) => {
    expect(reasonOf(readWavHeader(file))).toBe(reason);
  });
  it('five minutes to the second are read', () => {
    expect(told(readWavHeader(sized(8000, 2 * 8000 * 300))).durationS).toBe(300);
  });
  it('thousands of empty parts do not make the reader run long', () => {
    const file = new Uint8Array(12 + 8 * 5000);
    file.set(hex(MONO16).subarray(0, 12));
    new DataView(file.buffer).setUint32(4, file.length - 8, true);
    for (let i = 0; i < 5000; i++) file.set([74, 85, 78, 75], 12 + 8 * i);
    expect(reasonOf(readWavHeader(file))).toBe('header-contradicts');
  });
  it('a float that is no number is found', () => {
    const file = hex(FLOAT32);
    file.set([0, 0, 192, 127], file.length - 4);
    expect(reasonOf(readWav(file))).toBe('not-a-number');
  });
  it('the message says what was found and what is allowed', () => {
    const found = readWavHeader(spoiled(22, 6, 0));
    expect(found.ok ? '' : found.message).toBe('The recording has 6 channels; 1 or 2 can be read.');
  });
});

describe('[MEA-48] recordings that cannot show what is looked for', () => {
  const good: Recording = {
    by: 'accelerometer',
    sampleRateHz: 400,
    durationS: 20,
    clippedShare: 0,
    speedDrift: 0.01,
    lowestHz: 8,
    highestHz: 150,
    apartHz: 0.95,
  };
  it('34.25 and 33.3 Hz take 5.3 s in four Hann segments', () => {
    expect(told(recordingFits(good)).neededS).toBeCloseTo(5.263, 3);
    // At each figure itself a recording still does.
    const edge = { clippedShare: 0.001, speedDrift: 0.02, highestHz: 160, durationS: 5 / 0.95 };
    expect(reasonOf(recordingFits({ ...good, ...edge }))).toBe('answered');
    expect(reasonOf(recordingFits({ ...good, by: 'microphone', sampleRateHz: 8000, lowestHz: 60 }))).toBe('answered');
  });
  it.each<[string, Partial<Recording>, string]>([
    ['clipped', { clippedShare: 0.00101 }, 'clipped'],
    ['the speed wandered', { speedDrift: 0.0201 }, 'speed-not-steady'],
    ['a microphone does not hear 8 Hz', { by: 'microphone', sampleRateHz: 48_000 }, 'too-low-for-microphone'],
    ['160.5 Hz is above 0.4 of 400', { highestHz: 160.5 }, 'too-high-for-rate'],
    ['5 s for a difference of 0.95 Hz', { durationS: 5 }, 'too-short'],
  ])('%s', (_, more, reason) => {
    expect(reasonOf(recordingFits({ ...good, ...more }))).toBe(reason);
  });
});
