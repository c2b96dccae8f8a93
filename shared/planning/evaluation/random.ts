/**
 * Pseudo-random numbers in [0, 1) from a seed: the 32-bit generator known as mulberry32 (public domain; from memory).
 * Good enough to draw simulated coaches; the same seed gives the same coaches everywhere.
 */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Index drawn with the given shares, which sum to 1. */
export function draw(shares: ArrayLike<number>, random: () => number): number {
  let left = random();
  for (let i = 0; i < shares.length - 1; i++) {
    left -= shares[i]!;
    if (left < 0) return i;
  }
  return shares.length - 1;
}
