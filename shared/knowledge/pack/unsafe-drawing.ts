/**
 * Whether a drawing from somebody else is a drawing and nothing more. What is allowed is listed; the rest is refused.
 *
 * Ways in which an SVG can do more than show itself: scripts, event attributes, foreign content, links, references to
 * other files from attributes and style sheets, animation of such an attribute, entities and document types
 * (W3C, Scalable Vector Graphics 2, 2018, sections 2.6 "Processing modes" and 16 "Security considerations"; section
 * numbers from memory).
 */

const ELEMENTS = new Set(
  `svg g defs title desc path rect circle ellipse line polyline polygon text tspan style pattern clipPath
  mask marker linearGradient radialGradient stop`.split(/\s+/),
);
/** Attributes that name another thing; inside the drawing they may name a part of itself. */
const REFERENCES = new Set(['href', 'xlink:href']);
const NAMESPACES: Readonly<Record<string, string>> = {
  xmlns: 'http://www.w3.org/2000/svg',
  'xmlns:xlink': 'http://www.w3.org/1999/xlink',
};
/** Text, the XML declaration or a tag whose attributes are all quoted; anything else but a comment is no plain drawing. */
const PIECE =
  /[^<&]+|&(?:amp|lt|gt|quot|apos|#\d+|#x[0-9a-fA-F]+);|<\?xml [^?<>]*\?>|<\/([\w:-]+)\s*>|<([\w:-]+)((?:\s+[\w:-]+\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*\/?>/y;
const ATTRIBUTE = /([\w:-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

export interface UnsafePart {
  /** Counted from 1. */
  readonly line: number;
  /** What was found there and what to do, without the name of the file. */
  readonly message: string;
}

/** The first thing in an SVG text that a drawing of a pack may not hold, or null. */
export function unsafeDrawing(svg: string): UnsafePart | null {
  let at = svg.startsWith('\ufeff') ? 1 : 0;
  /** Text of the style sheet so far; it is one text however it is cut by comments and entities. */
  let style: string | null = null;
  let first = true;
  const found = (what: string, todo: string): UnsafePart => ({
    line: svg.slice(0, at).split('\n').length,
    message: `${what}. ${todo}`,
  });
  while (at < svg.length) {
    if (svg.startsWith('<!--', at)) {
      const end = svg.indexOf('--', at + 4);
      if (svg[end + 2] !== '>') return found('A comment does not end as a comment does', 'Take the comment out.');
      at = end + 3;
      continue;
    }
    PIECE.lastIndex = at;
    const piece = PIECE.exec(svg);
    if (!piece) {
      if (/^<!DOCTYPE/i.test(svg.slice(at, at + 9)))
        return found('The drawing has a DOCTYPE', 'Take the line out; a drawing needs none.');
      if (/^<!ENTITY|^<!\[CDATA\[/i.test(svg.slice(at, at + 9)))
        return found('The drawing has an ENTITY or CDATA part', 'Take it out, or save the drawing as plain SVG.');
      return found(
        `“${svg.slice(at, at + 20).replace(/\s+/g, ' ')}” is not plain SVG`,
        'Every tag needs its quotes and its end. Save the drawing as plain SVG.',
      );
    }
    const [text, closing, opening, attributes = ''] = piece;
    if (closing === 'style' && style !== null) {
      const wrong = wrongStyle(style);
      if (wrong !== null) return found(wrong, 'Take it out; a style sheet of a drawing may only name its own parts.');
      style = null;
    }
    if (opening !== undefined) {
      if (first && opening !== 'svg')
        return found(`The drawing begins with <${opening}>`, 'It has to begin with <svg>. Save it as plain SVG.');
      first = false;
      if (style !== null) return found('A style sheet holds a tag', 'Take the tag out of <style>.');
      if (!ELEMENTS.has(opening))
        return found(
          `<${opening}> is not allowed in a drawing`,
          `Take it out. Allowed: ${[...ELEMENTS].slice(0, 12).join(', ')} and the like; no script, no picture inside, no animation, no link.`,
        );
      for (const [, name = '', double, single] of attributes.matchAll(ATTRIBUTE)) {
        const value = decoded(double ?? single ?? '');
        const wrong = wrongAttribute(name, value);
        if (wrong !== null) return found(wrong, 'Take it out; a drawing of a pack shows itself and nothing more.');
      }
      if (opening === 'style' && !text.trimEnd().endsWith('/>')) style = '';
    } else if (style !== null && closing === undefined) style += decoded(text);
    at = PIECE.lastIndex;
  }
  return first ? found('There is no <svg> in the file', 'Put the drawing in, or take the file out.') : null;
}

function wrongAttribute(name: string, value: string): string | null {
  if (/^on/i.test(name)) return `The event attribute “${name}” is not allowed`;
  if (name === 'xmlns' || name.startsWith('xmlns:'))
    return NAMESPACES[name] === value ? null : `The namespace “${name}” is not one of plain SVG`;
  if (REFERENCES.has(name) || /(^|:)(href|src|base|data)$/i.test(name))
    return REFERENCES.has(name) && /^#[\w-]+$/.test(value) ? null : `“${name}” refers to something outside the drawing`;
  const wrong = wrongStyle(value);
  return wrong === null ? null : `${wrong} in “${name}”`;
}

/** Style text may use url(#part) and nothing that fetches or hides. A backslash could spell any of it. */
function wrongStyle(style: string): string | null {
  if (style.includes('\\')) return 'A backslash is not allowed in a style';
  if (/@(import|font-face|namespace)/i.test(style)) return '“@import” and “@font-face” are not allowed';
  if (/(image-set|image|src|cross-fade|element|expression)\s*\(/i.test(style)) return 'A style refers to a picture';
  if (/javascript\s*:|data\s*:/i.test(style)) return 'A style holds an address';
  for (const [whole] of style.matchAll(/url\([^)]*\)?/gi))
    if (!/^url\(\s*(["']?)#[\w-]+\1\s*\)$/i.test(whole)) return `“${whole.slice(0, 40)}” refers outside the drawing`;
  return null;
}

function decoded(text: string): string {
  const named: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };
  return text.replace(/&(#x[0-9a-fA-F]+|#\d+|\w+);/g, (whole, name: string) => {
    if (!name.startsWith('#')) return named[name] ?? whole;
    const code = name.startsWith('#x') ? parseInt(name.slice(2), 16) : Number(name.slice(1));
    return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });
}
