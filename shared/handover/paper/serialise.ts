import { ATTRIBUTES, TAGS, type Element, type Markup } from './element.ts';

const EMPTY: ReadonlySet<string> = new Set(['img']);
/** A picture that is in the text itself, of a kind that cannot hold a script. */
const PICTURE = /^data:image\/(?:jpeg|png|webp);base64,[A-Za-z0-9+/]+={0,2}$/;

/**
 * Markup → HTML text. Texts and attribute values are escaped; an element or attribute outside of the lists is left out,
 * and so is the address of a picture that is not in the text itself.
 */
export function serialised(markup: Markup): string {
  const out: string[] = [];
  write(markup, out);
  return out.join('');
}

function write(markup: Markup, out: string[]): void {
  if (typeof markup === 'string') {
    out.push(escaped(markup));
    return;
  }
  const { tag, children } = markup;
  if (!TAGS.includes(tag)) return;
  out.push('<', tag, ...attributesOf(markup), '>');
  if (EMPTY.has(tag)) return;
  for (const child of children) write(child, out);
  out.push('</', tag, '>');
}

function attributesOf({ attributes }: Element): string[] {
  return ATTRIBUTES.flatMap((name) => {
    const value = attributes[name];
    if (value === undefined || (name === 'src' && !PICTURE.test(value))) return [];
    return [' ', name, '="', name === 'src' ? value : escaped(value), '"'];
  });
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
  '`': '&#96;',
};

/** A text as HTML shows it; control characters that HTML does not take become a space. */
export function escaped(text: string): string {
  return text
    .replace(/[&<>"'`]/g, (sign) => ENTITIES[sign] ?? '')
    .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, ' ')
    .replace(/\p{Surrogate}/gu, '\ufffd');
}
