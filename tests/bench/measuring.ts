/** The measuring bench: a minute of sound in a worker of its own, and what is worked out at every key that is pressed. */
import { Worker } from 'node:worker_threads';
import { judge, matchBeat, rotatingLines, strokeLimit, type RoadState } from '../../shared/measuring/index.ts';

type Line = (name: string, value: number, limit: number, unit: string) => void;

/** 60 s at 48 kHz, one tone in noise. */
function minuteOfSound(): Float64Array<ArrayBuffer> {
  let seed = 7;
  const samples = new Float64Array(60 * 48_000);
  for (let i = 0; i < samples.length; i++) {
    seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
    samples[i] = 0.2 * Math.sin((2 * Math.PI * 34.25 * i) / 48_000) + 0.1 * (seed / 1_073_741_824 - 1);
  }
  return samples;
}

/** From the message to the worker to its answer, as the window waits for it: the median of five after one that warms it up. */
async function spectrumMs(): Promise<number> {
  const worker = new Worker(new URL('./spectrum-thread.mjs', import.meta.url));
  try {
    const taken: number[] = [];
    for (let i = 0; i < 6; i++) {
      const samples = minuteOfSound();
      const from = performance.now();
      const answered = new Promise<string>((resolve, reject) => {
        worker.once('message', resolve);
        worker.once('error', reject);
      });
      worker.postMessage({ kind: 'samples', samples, sampleRateHz: 48_000 }, [samples.buffer]);
      const kind = await answered;
      if (kind !== 'done') throw new Error(`The spectrum of the bench was ${kind}.`);
      if (i > 0) taken.push(performance.now() - from);
    }
    return taken.sort((a, b) => a - b)[2]!;
  } finally {
    await worker.terminate();
  }
}

const ROAD: RoadState = {
  speedMph: 60,
  speedUncertaintyMph: 0.29,
  tyreRevsPerMile: 500,
  tyreUncertaintyRevsPerMile: 5.8,
  axleRatio: 4.11,
  gearRatio: 1,
  lockedUp: true,
  engineRpm: null,
  engineUncertaintyRpm: 14,
  engine: { cylinders: 8, strokes: 2 },
  accessories: [{ name: 'belt-driven part', ratio: 2 }],
};

/** Everything that turns, a beat matched with it, and six strokes against their limits with conformity. */
function atEveryKey(): void {
  const found = rotatingLines(ROAD);
  if (!found.ok) throw new Error(found.message);
  const beat = { frequencyHz: 34, binHz: 0.5, interpolated: false, speedDrift: 0.01 };
  const match = matchBeat(beat, found.lines, { lowHz: 3, highHz: 500 });
  const limit = strokeLimit({ kind: 'clamp', size: 30, strokeClass: 'standard' });
  if (!match.ok || !limit.ok) throw new Error('The bench refused what it should work out.');
  for (let end = 0; end < 6; end++) judge(1.8 + end / 10, 0.03, limit.limit);
}

function medianMs(run: () => void): number {
  for (let i = 0; i < 200; i++) run();
  const taken = Array.from({ length: 201 }, () => {
    const from = performance.now();
    run();
    return performance.now() - from;
  });
  return taken.sort((a, b) => a - b)[100]!;
}

export async function benchFigures(line: Line): Promise<void> {
  line('orders, a beat matched, six limits with conformity', medianMs(atEveryKey), 1, 'ms');
  line('spectrum of 60 s at 48 kHz, in a worker', await spectrumMs(), 300, 'ms');
}
