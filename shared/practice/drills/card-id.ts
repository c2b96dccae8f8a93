import type { Drill } from './card.ts';

/**
 * Id of a card from its content: the same content gives the same id on every machine, other content another one.
 *
 * Two 32-bit hashes with different starts, 16 hex digits: among the few thousand cards of all trees two of one id are not
 * to be expected (about one chance in 10^12).
 *
 * @source FNV-1a, Fowler, Noll and Vo (from memory); the second start is our own.
 */
export function cardId(drill: Drill, content: unknown): string {
  const text = JSON.stringify(content);
  return `${drill}-${hex(hash(text, 0x811c9dc5))}${hex(hash(text, 0x9747b28c))}`;
}

/** A number from a text, for a seeded order. */
export function seedOf(text: string): number {
  return hash(text, 0x811c9dc5);
}

/** The values in an order that depends on the seed alone (Fisher and Yates). */
export function shuffled<T>(values: readonly T[], random: () => number): T[] {
  const out = [...values];
  for (let i = out.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [out[i], out[j]] = [out[j]!, out[i]!];
  }
  return out;
}

function hash(text: string, start: number): number {
  let value = start;
  for (let i = 0; i < text.length; i++) value = Math.imul(value ^ text.charCodeAt(i), 0x01000193);
  return value >>> 0;
}

function hex(value: number): string {
  return value.toString(16).padStart(8, '0');
}
