import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';
import { recordLengthS } from './welch.ts';

export interface Recording {
  readonly by: 'microphone' | 'accelerometer';
  readonly sampleRateHz: number;
  readonly durationS: number;
  /** `WavSound.clippedShare`. */
  readonly clippedShare: number;
  /** Change of road speed during it, as a share. */
  readonly speedDrift: number;
  /** Frequencies that are looked for. */
  readonly lowestHz: number;
  readonly highestHz: number;
  /** The two that must be told apart are this far from each other. */
  readonly apartHz: number;
}

export type RecordingRefusal =
  OutOfRange | 'clipped' | 'speed-not-steady' | 'too-low-for-microphone' | 'too-high-for-rate' | 'too-short';

/** Many telephones cut what lies below: general experience, no source. */
const MICROPHONE_LOWEST_HZ = 60;

/**
 * Whether a recording can show what is looked for, before it is analysed.
 *
 * @returns seconds that it needs; refused with the first thing that spoils it.
 * @source Length: `recordLengthS`. 0.1 % clipped, 2 % of drift, 0.4 of the sample rate and 60 Hz for a microphone: judgement.
 */
export function recordingFits(recording: Recording): Outcome<{ readonly neededS: number }, RecordingRefusal> {
  const { sampleRateHz, durationS, lowestHz, highestHz, apartHz } = recording;
  const bad = outOfRange(
    ['sample rate', sampleRateHz, 20, 96_000, 'Hz'],
    ['length', durationS, 0.1, 300, 's'],
    ['clipped share', recording.clippedShare, 0, 1, ''],
    ['drift of the speed', recording.speedDrift, 0, 1, ''],
    ['lowest frequency', lowestHz, 0.5, 40_000, 'Hz'],
    ['highest frequency', highestHz, lowestHz, 40_000, 'Hz'],
    ['difference to be told', apartHz, 0.01, 40_000, 'Hz'],
  );
  if (bad) return bad;
  if (recording.clippedShare > 0.001) {
    return refuse(
      'clipped',
      `${(100 * recording.clippedShare).toFixed(1)} % of the samples are at full scale; 0.1 % is the most. Record again, further away or less loud.`,
    );
  }
  if (recording.speedDrift > 0.02) {
    return refuse(
      'speed-not-steady',
      `The speed changed by ${(100 * recording.speedDrift).toFixed(1)} %; 2 % is the most. Hold it and record again.`,
    );
  }
  if (recording.by === 'microphone' && lowestHz < MICROPHONE_LOWEST_HZ) {
    return refuse(
      'too-low-for-microphone',
      `A telephone microphone does not hear ${lowestHz} Hz; it begins near ${MICROPHONE_LOWEST_HZ}. Use the accelerometer, or feel for it.`,
    );
  }
  if (highestHz > 0.4 * sampleRateHz) {
    return refuse(
      'too-high-for-rate',
      `At ${sampleRateHz} samples a second nothing above ${(0.4 * sampleRateHz).toFixed(0)} Hz can be trusted; ${highestHz} Hz is looked for.`,
    );
  }
  const needed = recordLengthS(0, apartHz);
  if (!needed.ok) return refuse('out-of-range', needed.message);
  if (durationS < needed.recordS) {
    return refuse(
      'too-short',
      `The recording lasts ${durationS} s; ${needed.recordS.toFixed(1)} s are needed to tell frequencies ${apartHz} Hz apart. Record longer at the same speed.`,
    );
  }
  return { ok: true, neededS: needed.recordS };
}
