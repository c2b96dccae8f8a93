/**
 * Numbers as short codes that people read to each other: 31 characters, without I, L, O, S and U, which are heard or read
 * as others. The last character is a check: the sum of all values, each times its place, leaves no rest modulo 31. As 31
 * is prime, no single wrong character and no two characters changed about go unnoticed (the idea of ISBN-10, ISO 2108;
 * from memory).
 */
const ALPHABET = '0123456789ABCDEFGHJKMNPQRTVWXYZ';
export const BASE = ALPHABET.length;
const GROUP = 4;
/** Places are numbered below the base, or a change there would go unnoticed. */
const LONGEST = BASE - 1;

/** What people write for a character that is not in the alphabet. */
const READ_AS: Readonly<Record<string, string>> = { O: '0', I: '1', L: '1', S: '5', U: 'V' };

/**
 * A number in the alphabet, most significant character first.
 *
 * @param width  characters; the number must fit.
 */
export function digits(value: number, width: number): string {
  let text = '';
  let left = value;
  for (let i = 0; i < width; i++) {
    text = ALPHABET[left % BASE]! + text;
    left = Math.floor(left / BASE);
  }
  return text;
}

/** The number that characters of the alphabet stand for. */
export function valueOf(text: string): number {
  return Array.from(text).reduce((sum, character) => sum * BASE + ALPHABET.indexOf(character), 0);
}

/** Characters with their check behind them, in groups of four. */
export function withCheck(payload: string): string {
  const sum = Array.from(payload).reduce((total, character, i) => total + (i + 1) * ALPHABET.indexOf(character), 0);
  const place = payload.length + 1;
  const check = Array.from(ALPHABET).find((_, value) => (sum + place * value) % BASE === 0)!;
  return (payload + check).replace(new RegExp(`.{${GROUP}}(?=.)`, 'g'), '$&-');
}

/** The payload of a code as typed; a sentence when it cannot be one. */
export function payloadOf(
  typed: string,
): { readonly payload: string; readonly problem?: undefined } | { readonly payload: null; readonly problem: string } {
  const text = Array.from(typed.toUpperCase().replace(/[\s-]/g, ''))
    .map((each) => READ_AS[each] ?? each)
    .join('');
  if (text.length < 2) return { payload: null, problem: 'A code has letters and digits, as 7KQ2-9A1B-44TX.' };
  if (text.length > LONGEST)
    return { payload: null, problem: `This is too long for a code: ${text.length} characters, at most ${LONGEST}.` };
  const strange = Array.from(text).find((each) => !ALPHABET.includes(each));
  if (strange !== undefined)
    return { payload: null, problem: `“${strange}” is in no code. Letters and digits alone, without signs.` };
  const sum = Array.from(text).reduce((total, character, i) => total + (i + 1) * ALPHABET.indexOf(character), 0);
  return sum % BASE === 0
    ? { payload: text.slice(0, -1) }
    : { payload: null, problem: 'The check character does not fit: one character is wrong, or two changed places.' };
}
