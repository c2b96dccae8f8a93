import { draw, seededRandom } from '../planning/evaluation/index.ts';

/** 32-bit FNV-1a hash of a text, over its UTF-16 units (public domain; from memory). Not for secrets. */
export function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return hash;
}

/**
 * Index drawn with the given shares. Every draw of an exercise has a purpose of its own, so that none hangs on what was
 * asked before: the same seed and purpose give the same index on every machine.
 */
export function drawFor(seed: string, purpose: string, shares: ArrayLike<number>): number {
  const random = seededRandom(hashOf(`${seed} ${purpose}`));
  // The first number after neighbouring seeds is the least well mixed.
  random();
  return draw(shares, random);
}

/** Equal shares. */
export function evenly(count: number): number[] {
  return Array.from({ length: count }, () => 1 / count);
}
