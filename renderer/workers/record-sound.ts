import { MICROPHONE_MARK } from '../../shared/host/microphone.ts';

/** A recording from the microphone, or why there is none. */
export type Recording =
  | { readonly ok: true; readonly samples: Float64Array; readonly sampleRateHz: number }
  | { readonly ok: false; readonly words: string };

export interface RunningRecording {
  /** Ends it; the sound follows. */
  finish(): void;
  /** Ends it and throws the sound away. */
  drop(): void;
  readonly result: Promise<Recording>;
}

/**
 * Records one channel without the clean-up that telephones want: it would take the hum away.
 *
 * The browser packs the sound while it records; below 500 Hz that does not move a line of the spectrum, but its level
 * is not to be compared with that of a file (judgement).
 */
export async function recordSound(): Promise<RunningRecording | { readonly ok: false; readonly words: string }> {
  let stream: MediaStream;
  // The desktop window lets nothing hear unless the address says that this page asks.
  markAddress(MICROPHONE_MARK);
  try {
    stream = await navigator.mediaDevices.getUserMedia({
      audio: { channelCount: 1, echoCancellation: false, noiseSuppression: false, autoGainControl: false },
    });
  } catch (problem) {
    markAddress('');
    return { ok: false, words: refusalWords(problem) };
  }
  const parts: Blob[] = [];
  const recorder = new MediaRecorder(stream);
  recorder.addEventListener('dataavailable', ({ data }) => parts.push(data));
  const ended = new Promise<void>((resolve) => {
    recorder.addEventListener('stop', () => resolve(), { once: true });
  });
  recorder.start();
  let dropped = false;
  const finish = (): void => {
    if (recorder.state !== 'inactive') recorder.stop();
  };
  return {
    finish,
    drop: () => {
      dropped = true;
      finish();
    },
    result: ended.then(async () => {
      for (const track of stream.getTracks()) track.stop();
      markAddress('');
      if (dropped) return { ok: false, words: 'Thrown away; nothing was kept.' };
      return decoded(new Blob(parts, { type: recorder.mimeType }));
    }),
  };
}

function markAddress(mark: string): void {
  history.replaceState(history.state, '', `${location.pathname}${location.search}${mark}`);
}

async function decoded(blob: Blob): Promise<Recording> {
  const context = new AudioContext();
  try {
    const sound = await context.decodeAudioData(await blob.arrayBuffer());
    return { ok: true, samples: Float64Array.from(sound.getChannelData(0)), sampleRateHz: sound.sampleRate };
  } catch (problem) {
    if (!(problem instanceof DOMException)) throw problem;
    return {
      ok: false,
      words: 'The browser could not read its own recording. Record with another device and open the file.',
    };
  } finally {
    await context.close();
  }
}

function refusalWords(problem: unknown): string {
  if (!(problem instanceof DOMException)) throw problem;
  if (problem.name === 'NotAllowedError')
    return 'The microphone was not allowed. Allow it for this page in the browser, or open a WAV file from another recorder.';
  if (problem.name === 'NotFoundError')
    return 'No microphone was found. Plug one in, or open a WAV file from another recorder.';
  return `The microphone did not start (${problem.message}). Open a WAV file from another recorder.`;
}
