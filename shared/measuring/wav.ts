import { refuse, type Outcome, type Refusal } from './outcome.ts';

export interface WavHeader {
  readonly sampleRateHz: number;
  readonly channels: 1 | 2;
  readonly bitsPerSample: 8 | 16 | 24 | 32;
  readonly encoding: 'integer' | 'float';
  /** Samples of one channel. */
  readonly frames: number;
  readonly durationS: number;
  /** First byte of the samples. */
  readonly dataOffset: number;
}

export type WavRefusal =
  | 'not-a-wav'
  | 'cut-short'
  | 'header-contradicts'
  | 'unsupported-encoding'
  | 'unsupported-channels'
  | 'unsupported-rate'
  | 'too-long'
  | 'empty';

const LEAST_RATE = 8000;
const MOST_RATE = 96_000;
const MOST_SECONDS = 300;
/** A recorder writes three to ten; more means that somebody wants the reader to run long. */
const MOST_CHUNKS = 64;

/**
 * The header of a WAVE recording, every field held against the others and against the bytes that are really there.
 *
 * @param bytes  the whole file. Mono or stereo, 8–96 kHz, five minutes at most; 8, 16, 24 or 32 bit integer, 32 bit float.
 * @returns refused with what was found and what is allowed; nothing is read beyond the end of `bytes`.
 * @source Multimedia Programming Interface and Data Specifications 1.0, 1991, WAVE form (memory); files written by
 *   Python's wave module and SciPy in the tests.
 */
export function readWavHeader(bytes: Uint8Array): Outcome<WavHeader, WavRefusal> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 12 || tag(bytes, 0) !== 'RIFF' || tag(bytes, 8) !== 'WAVE') {
    return refuse(
      'not-a-wav',
      'This is no WAVE recording: it does not begin with RIFF … WAVE. Save the sound as .wav.',
    );
  }
  const riffEnd = view.getUint32(4, true) + 8;
  if (riffEnd > bytes.length) return cutShort(riffEnd, bytes.length);
  const chunks = chunksOf(view, bytes, riffEnd);
  if (!chunks.ok) return chunks;
  const { format, data } = chunks;
  return headerFrom(view, format, data);
}

interface Chunk {
  readonly offset: number;
  readonly size: number;
}

function chunksOf(
  view: DataView,
  bytes: Uint8Array,
  end: number,
): Outcome<{ readonly format: Chunk; readonly data: Chunk }, WavRefusal> {
  let format: Chunk | null = null;
  let data: Chunk | null = null;
  let at = 12;
  for (let count = 0; at + 8 <= end && !(format && data); count++) {
    if (count >= MOST_CHUNKS) {
      return refuse('header-contradicts', `The file holds more than ${MOST_CHUNKS} parts before the sound.`);
    }
    const name = tag(bytes, at);
    const chunk = { offset: at + 8, size: view.getUint32(at + 4, true) };
    if (chunk.offset + chunk.size > end) return cutShort(chunk.offset + chunk.size, end);
    if (name === 'fmt ') format = chunk;
    else if (name === 'data') data = chunk;
    // Parts begin at even places; one of odd size has a filling byte behind it.
    at = chunk.offset + chunk.size + (chunk.size % 2);
    if (data && !format) return refuse('header-contradicts', 'The sound stands before the description of its format.');
  }
  if (!format) return refuse('not-a-wav', 'The file has no description of its format ("fmt ").');
  if (!data) return refuse('empty', 'The file has no sound in it ("data").');
  return { ok: true, format, data };
}

const INTEGER = 1;
const FLOAT = 3;
const EXTENSIBLE = 0xfffe;

function headerFrom(view: DataView, format: Chunk, data: Chunk): Outcome<WavHeader, WavRefusal> {
  if (format.size < 16) {
    return refuse('header-contradicts', `The description of the format has ${format.size} bytes; it needs 16 or more.`);
  }
  const field = (place: number): number => view.getUint16(format.offset + place, true);
  const code = field(0) === EXTENSIBLE ? (format.size >= 40 ? field(24) : -1) : field(0);
  const channels = field(2);
  const sampleRateHz = view.getUint32(format.offset + 4, true);
  const bytesPerSecond = view.getUint32(format.offset + 8, true);
  const blockBytes = field(12);
  const bits = field(14);
  const encoding = encodingOf(code, bits);
  if (!encoding) {
    return refuse(
      'unsupported-encoding',
      `Format ${field(0)} with ${bits} bits cannot be read. Save the sound as 16-bit PCM, without compression.`,
    );
  }
  if (channels !== 1 && channels !== 2) {
    return refuse('unsupported-channels', `The recording has ${channels} channels; 1 or 2 can be read.`);
  }
  if (sampleRateHz < LEAST_RATE || sampleRateHz > MOST_RATE) {
    return refuse(
      'unsupported-rate',
      `The sample rate is ${sampleRateHz} Hz; ${LEAST_RATE} to ${MOST_RATE} Hz can be read.`,
    );
  }
  if (blockBytes !== (channels * bits) / 8 || bytesPerSecond !== sampleRateHz * blockBytes) {
    return refuse(
      'header-contradicts',
      `The header contradicts itself: ${channels} channels of ${bits} bits make ${(channels * bits) / 8} bytes, it says ${blockBytes}; ${sampleRateHz} times that is not ${bytesPerSecond} bytes a second. Save the sound again.`,
    );
  }
  if (data.size % blockBytes !== 0) {
    return refuse('cut-short', `The sound ends inside a sample: ${data.size} bytes are no multiple of ${blockBytes}.`);
  }
  const frames = data.size / blockBytes;
  if (frames === 0) return refuse('empty', 'The recording is empty. Record again.');
  const durationS = frames / sampleRateHz;
  if (durationS > MOST_SECONDS) {
    return refuse(
      'too-long',
      `The recording lasts ${Math.round(durationS)} s; ${MOST_SECONDS} s is the most. Cut out a steady piece.`,
    );
  }
  return { ok: true, sampleRateHz, channels, ...encoding, frames, durationS, dataOffset: data.offset };
}

function encodingOf(code: number, bits: number): Pick<WavHeader, 'encoding' | 'bitsPerSample'> | null {
  if (code === FLOAT && bits === 32) return { encoding: 'float', bitsPerSample: 32 };
  if (code === INTEGER && (bits === 8 || bits === 16 || bits === 24 || bits === 32)) {
    return { encoding: 'integer', bitsPerSample: bits };
  }
  return null;
}

function tag(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}

function cutShort(due: number, there: number): Refusal<'cut-short'> {
  return refuse('cut-short', `The file should go on to byte ${due}, but ends at ${there}. Copy it again.`);
}

export interface WavSound {
  readonly header: WavHeader;
  /** One channel, or the mean of two; full scale is ±1. */
  readonly samples: Float64Array;
  /** Share of samples at full scale; above 0.001 the recording is clipped and its spectrum wrong. */
  readonly clippedShare: number;
}

/**
 * A recording as numbers.
 *
 * @param channel  `mean` of both for a stereo file; a mono file is the same whichever is asked.
 * @returns as `readWavHeader`; `not-a-number` when a float sample is none.
 */
export function readWav(
  bytes: Uint8Array,
  channel: 'left' | 'right' | 'mean' = 'mean',
): Outcome<WavSound, WavRefusal | 'not-a-number'> {
  const header = readWavHeader(bytes);
  if (!header.ok) return header;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const width = header.bitsPerSample / 8;
  const last = header.channels - 1;
  const at = (frame: number, which: number): number =>
    sampleAt(view, header.dataOffset + (frame * header.channels + which) * width, header);
  const samples = new Float64Array(header.frames);
  let clipped = 0;
  for (let frame = 0; frame < header.frames; frame++) {
    const left = at(frame, 0);
    const right = at(frame, last);
    if (Math.abs(left) >= FULL || Math.abs(right) >= FULL) clipped++;
    samples[frame] = channel === 'left' ? left : channel === 'right' ? right : (left + right) / 2;
  }
  if (!samples.every(Number.isFinite)) {
    return refuse('not-a-number', 'The recording holds a sample that is no finite number. Record again.');
  }
  return { ok: true, header, samples, clippedShare: clipped / header.frames };
}

/** The highest positive figure of 16 bits is a little below 1. */
const FULL = 0.99996;

function sampleAt(view: DataView, offset: number, header: WavHeader): number {
  if (header.encoding === 'float') return view.getFloat32(offset, true);
  switch (header.bitsPerSample) {
    case 8:
      // Eight-bit samples have no sign; their silence is 128.
      return (view.getUint8(offset) - 128) / 128;
    case 16:
      return view.getInt16(offset, true) / 32_768;
    case 24:
      return (view.getUint16(offset, true) + view.getInt8(offset + 2) * 65_536) / 8_388_608;
    case 32:
      return view.getInt32(offset, true) / 2_147_483_648;
  }
}
