import { fireEvent, screen } from '@testing-library/svelte';
import { describe, expect, test, vi } from 'vitest';
import { spectrumJob, type SpectrumAnswer, type SpectrumTask } from '../../renderer/workers/spectrum-job.ts';
import { atBench, choose, prepareBench, reasons, region, textOf, type } from './bench-window.ts';
import { tonesInNoise, wavFile } from './sounds.ts';
import { press } from './window.ts';

prepareBench();

describe('what turns how fast', () => {
  async function fill(): Promise<void> {
    for (const [label, text] of [
      ['Road speed', '60'],
      ['Turns of a tyre over a mile', '500'],
      ['Axle ratio', '4.11'],
      ['Gear ratio (1 is direct)', '1'],
    ] as const)
      await type(label, text);
  }

  test('60 mph on 500 turns a mile and 4.11: 8.33, 34.25 and 68.5 Hz, 2,055 rpm', async () => {
    await atBench('9', 'What turns how fast');
    await fill();
    // Kinematics in two other languages (tests/reference/measuring/orders.test.ts).
    const table = textOf('Rates');
    expect(table).toMatch(/2,055 rpm/);
    expect(table).toMatch(/once a turnWheel and tyre ?1 ?8\.33/);
    expect(table).toMatch(/propeller shaft or pinionPropeller shaft ?1 ?34\.25/);
    await choose('Clutch or converter', 'no');
    expect(textOf('Rates')).toMatch(/The engine speed is not known: the converter slips/);
    await choose('Clutch or converter', 'yes');
    await type('Gear ratio (1 is direct)', '1.5');
    expect(reasons()).toEqual(['engine-speed-implausible']);
  });

  test('a beat of 34 Hz cannot be told apart in direct drive; what separates is named with its caution first', async () => {
    await atBench('9', 'What turns how fast');
    await fill();
    await type('Or typed', '34');
    await type('Ratio of another gear', '1.4');
    const beat = textOf('The beat that is felt');
    expect(beat).toMatch(/Cannot be told apart.*propeller shaft and engine beat alike/);
    expect(beat).toMatch(/Coast in neutral.*Only on a level road without traffic.*Propeller shaft: keeps its rate/);
    // The engine follows the ratio of the gears: 34 × 1.4.
    expect(beat).toMatch(/47\.6 Hz if it is the engine, still 34 Hz/);
    await choose('Speed while it was felt', 'more');
    expect(reasons()).toEqual(['speed-not-steady']);
  });

  test('a tapped beat is counted from its first tap', async () => {
    await atBench('9', 'What turns how fast');
    await fill();
    const clock = vi.spyOn(performance, 'now');
    for (let tap = 0; tap <= 10; tap++) {
      clock.mockReturnValue(tap * 120);
      await press(' ');
    }
    clock.mockRestore();
    // Ten beats in 1.2 s: 8.33 Hz, the wheel once a turn.
    expect(textOf('The beat that is felt')).toMatch(/10 beats in 1\.2 s: 8\.33 Hz.*wheel, tyre, hub or drum/);
  });
});

/** Runs the worker's own work at once, in place of a worker that this document lacks. */
class WorkerHere extends EventTarget {
  postMessage(task: SpectrumTask): void {
    const hear = (answer: SpectrumAnswer): void =>
      void this.dispatchEvent(new MessageEvent('message', { data: answer }));
    spectrumJob(task, hear);
  }
  terminate(): void {
    this.dispatchEvent(new Event('ended'));
  }
}

describe('sound and shake', () => {
  async function open(bytes: Uint8Array<ArrayBuffer>): Promise<void> {
    vi.stubGlobal('Worker', WorkerHere);
    const file = new File([bytes], 'invented.wav');
    file.arrayBuffer = () => Promise.resolve(bytes.slice().buffer);
    await fireEvent.change(screen.getByLabelText('Open a WAV file'), { target: { files: [file] } });
  }

  test('a tone in noise is found, drawn and held against the orders', async () => {
    await atBench('9', 'What turns how fast');
    await type('Road speed', '60');
    await type('Turns of a tyre over a mile', '500');
    await type('Axle ratio', '4.11');
    await press('0');
    await screen.findByRole('heading', { level: 1, name: 'Sound and shake' });
    await open(wavFile(tonesInNoise([[34.25, 0.1]], 20, 8000), 8000));
    const out = region('What it holds');
    expect(await out.findByRole('heading', { name: /^34\.[23] Hz stands out, by \d+ dB/ })).toBeTruthy();
    expect(textOf('What it holds')).toMatch(/Fits the propeller shaft: propeller shaft or pinion/);
    expect(out.getByRole('img', { name: /Peaks: 34\.[23] Hz/ })).toBeTruthy();
  });

  test('what a band swells with is found in its envelope, and not in the sound itself', async () => {
    await atBench('0', 'Sound and shake');
    // A tone of 1000 Hz that swells 37 times a second: its own line and one 37 Hz to each side (elementary trigonometry).
    const knocking = tonesInNoise(
      [
        [963, 0.1],
        [1000, 0.2],
        [1037, 0.1],
      ],
      20,
      8000,
    );
    await open(wavFile(knocking, 8000));
    const out = region('What it holds');
    expect(await out.findByRole('heading', { name: 'None stands out' })).toBeTruthy();
    await fireEvent.change(screen.getByLabelText('Look at'), { target: { value: '500-2000' } });
    await fireEvent.click(await out.findByRole('button', { name: 'Look at it this way' }));
    expect(await out.findByRole('heading', { name: /^37 Hz stands out, by \d+ dB/ })).toBeTruthy();
    expect(textOf('What it holds')).toMatch(/pieces averaged.*envelope of 500 to 2000 Hz; kurtosis/);
    expect(out.queryByRole('button', { name: 'Look at it this way' })).toBeNull();
    await fireEvent.change(screen.getByLabelText('Look at'), { target: { value: '2000-5000' } });
    await fireEvent.click(await out.findByRole('button', { name: 'Look at it this way' }));
    expect((await out.findByRole('status')).textContent).toMatch(
      /must rise and lie below 0\.4 of the sample rate, 3200 Hz/,
    );
  });

  test('noise alone: none stands out, in the sound and in the envelope of a band', async () => {
    await atBench('0', 'Sound and shake');
    await open(wavFile(tonesInNoise([], 20, 8000), 8000));
    const out = region('What it holds');
    expect(await out.findByRole('heading', { name: 'None stands out' })).toBeTruthy();
    await fireEvent.change(screen.getByLabelText('Look at'), { target: { value: '500-2000' } });
    await fireEvent.click(await out.findByRole('button', { name: 'Look at it this way' }));
    expect(await out.findByText(/envelope of 500 to 2000 Hz/)).toBeTruthy();
    expect(out.getByRole('heading', { name: 'None stands out' })).toBeTruthy();
  });

  test('a header that lies is refused with the reason', async () => {
    await atBench('0', 'Sound and shake');
    const bytes = wavFile(tonesInNoise([], 2, 8000), 8000);
    new DataView(bytes.buffer).setUint32(40, 4_000_000_000, true);
    await open(bytes);
    expect((await region('What it holds').findByRole('status')).textContent).toMatch(/should go on to byte 4000000044/);
  });

  test('a microphone that is refused is said in words, and the address says nothing any more', async () => {
    vi.stubGlobal('MediaRecorder', EventTarget);
    const asked: string[] = [];
    vi.stubGlobal('navigator', {
      mediaDevices: {
        getUserMedia: () => {
          asked.push(location.hash);
          return Promise.reject(new DOMException('no', 'NotAllowedError'));
        },
      },
    });
    await atBench('0', 'Sound and shake');
    expect(asked).toEqual([]);
    await fireEvent.click(screen.getByRole('button', { name: /Record by microphone/ }));
    expect(await screen.findByText(/The microphone was not allowed/)).toBeTruthy();
    expect(asked).toEqual(['#microphone']);
    expect(location.hash).toBe('');
  });

  test('without a microphone the page says so', async () => {
    await atBench('0', 'Sound and shake');
    expect(screen.getByText(/This window has no microphone/)).toBeTruthy();
    expect(screen.queryByRole('button', { name: /Record/ })).toBeNull();
  });
});
