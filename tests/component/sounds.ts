/** Tones over seeded noise of ±0.2: each tone by its frequency, Hz, and its amplitude. */
export function tonesInNoise(
  tones: readonly (readonly [hz: number, amplitude: number])[],
  seconds: number,
  sampleRateHz: number,
): Float64Array {
  let seed = 7;
  const noise = (): number => {
    seed = (seed * 1_664_525 + 1_013_904_223) >>> 0;
    return 0.4 * (seed / 2 ** 32 - 0.5);
  };
  return Float64Array.from({ length: seconds * sampleRateHz }, (_, t) =>
    tones.reduce((sum, [hz, amplitude]) => sum + amplitude * Math.sin((2 * Math.PI * hz * t) / sampleRateHz), noise()),
  );
}

/** A mono 16-bit recording as the bytes of a WAV file. */
export function wavFile(samples: Float64Array, sampleRateHz: number): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(44 + 2 * samples.length);
  const view = new DataView(bytes.buffer);
  const write = (at: number, text: string): void => {
    for (let i = 0; i < text.length; i++) bytes[at + i] = text.charCodeAt(i);
  };
  write(0, 'RIFF');
  view.setUint32(4, bytes.length - 8, true);
  write(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, sampleRateHz, true);
  view.setUint32(28, 2 * sampleRateHz, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  write(36, 'data');
  view.setUint32(40, 2 * samples.length, true);
  samples.forEach((sample, i) => view.setInt16(44 + 2 * i, Math.round(32_767 * sample), true));
  return bytes;
}
