/** Markup as data, of the few kinds that a report needs. Whatever draws it, nothing outside these lists can come out. */

/** Elements of a report; none of them runs, fetches, frames or posts anything. */
export const TAGS = [
  'article',
  'section',
  'header',
  'footer',
  'div',
  'h2',
  'h3',
  'p',
  'b',
  'span',
  'ul',
  'li',
  'table',
  'caption',
  'thead',
  'tbody',
  'tr',
  'th',
  'td',
  'figure',
  'figcaption',
  'img',
  'svg',
  'path',
  'rect',
  'circle',
  'text',
] as const;
export type Tag = (typeof TAGS)[number];

export const ATTRIBUTES = [
  'class',
  'scope',
  'alt',
  'src',
  'role',
  'aria-label',
  'aria-hidden',
  'data-head',
  'viewBox',
  'preserveAspectRatio',
  'd',
  'x',
  'y',
  'cx',
  'cy',
  'r',
  'width',
  'height',
  'text-anchor',
  'vector-effect',
] as const;
type Attribute = (typeof ATTRIBUTES)[number];

/** Those whose values HTML itself names. */
interface Named {
  readonly scope?: 'col' | 'row';
  readonly role?: 'img';
  readonly 'aria-hidden'?: 'true';
  readonly 'text-anchor'?: 'middle';
}

export interface Element {
  readonly tag: Tag;
  readonly attributes: Named & Readonly<Partial<Record<Exclude<Attribute, keyof Named>, string>>>;
  readonly children: readonly Markup[];
}
/** A text is shown as it is; what draws it escapes it. */
export type Markup = Element | string;

/** Builds an element. */
export function el(tag: Tag, attributes: Element['attributes'], ...children: readonly Markup[]): Element {
  return { tag, attributes, children };
}

/** Whether an element belongs to a drawing. */
export function isDrawn({ tag }: Element): boolean {
  return ['svg', 'path', 'rect', 'circle', 'text'].includes(tag);
}
