const VULGAR: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
};

/**
 * A number as people type it: "2.25", "2,25", "2 1/4", "2-1/4", "2¼", "9/16", "−3", "1,120". No unit.
 *
 * A comma with exactly three digits behind it and at most three before groups thousands ("1,120" is 1120); any other
 * comma is a decimal comma ("1,5" is 1.5).
 *
 * @returns null when it is not a number.
 * @example parseNumber('2 1/4') // 2.25
 */
export function parseNumber(text: string): number | null {
  let plain = text.trim().replace(/[−–]/g, '-').replace(/⁄/g, '/').replace(/^\+/, '');
  for (const [sign, fraction] of Object.entries(VULGAR)) plain = plain.replace(sign, ` ${fraction}`);
  plain = plain.trim().replace(/^-\s+/, '-');
  const mixed = /^(-?)(?:(\d+)(?:\s+|\s*-\s*))?(\d+)\s*\/\s*(\d+)$/.exec(plain);
  if (mixed) {
    const [, sign, whole, top, bottom] = mixed;
    if (Number(bottom) === 0) return null;
    const size = Number(whole ?? 0) + Number(top) / Number(bottom);
    return sign === '-' ? -size : size;
  }
  if (/^-?[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(plain)) plain = plain.replaceAll(',', '');
  else plain = plain.replace(',', '.');
  if (!/^-?(\d+\.?\d*|\.\d+)$/.test(plain)) return null;
  return Number(plain);
}
