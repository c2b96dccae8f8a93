/**
 * What in a text could run or load something if anybody ever showed it as HTML or followed it as a link. The window does
 * neither (`knowledge/markdown.ts` shows HTML as the text that it is); such a text in a file from elsewhere is refused all
 * the same, since nobody in a workshop writes one.
 *
 * @returns the part that was found, at most 40 letters, or null.
 */
export function activePart(text: string): string | null {
  for (const way of [text, decoded(text)]) {
    const found = TAG.exec(way) ?? HANDLER.exec(way) ?? ADDRESS.exec(way);
    if (found) return found[0].replace(/\s+/g, ' ').slice(0, 40);
  }
  return null;
}

const TAG = /<\s*\/?\s*(?:script|iframe|frame|object|embed|applet|svg|math|style|link|meta|base|form|template)\b/i;
const HANDLER = /<[a-z][^>]*[\s/"']on[a-z]{3,}\s*=/i;
const ADDRESS = /(?:javascript|vbscript)\s*:|data\s*:\s*(?:text\/html|image\/svg)/i;

/** As a reader of HTML would see it: entities resolved, letters that are skipped taken out. */
function decoded(text: string): string {
  return (
    text
      .replace(/&(?:#x([0-9a-f]{1,6})|#(\d{1,7})|(colon|lt|gt|tab|newline|sol));?/gi, (whole, hex, decimal, name) => {
        if (typeof name === 'string') return NAMED[name.toLowerCase()] ?? whole;
        const code = typeof hex === 'string' ? parseInt(hex, 16) : Number(decimal);
        return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : whole;
      })
      // Tabs, line ends and control letters inside a scheme are skipped by browsers.
      .replace(/[\u0000-\u001f\u007f-\u009f\u00ad\u200b-\u200f\u2028\u2029\ufeff]/g, '')
  );
}

const NAMED: Readonly<Record<string, string>> = { colon: ':', lt: '<', gt: '>', tab: '\t', newline: '\n', sol: '/' };
