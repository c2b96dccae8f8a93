import { isUnit, parseNumber, unitOf } from '../../units/index.ts';
import type { Limit } from '../../knowledge/index.ts';

/** A limit that is one figure, or one range, with a unit. */
export interface LimitFigure {
  /** Words in front of the figure, such as "not more than"; may be empty. */
  readonly lead: string;
  readonly low: number;
  /** Upper end of a range; null = one figure. */
  readonly high: number | null;
  /** Unit id of `shared/units`. */
  readonly unit: string;
  /** Half of the last place of the figure as printed, in its unit; 0 for a fraction, which is exact. */
  readonly rounding: number;
  /** Under what condition it holds, as printed; may be empty. */
  readonly condition: string;
}

const NUMBER = String.raw`\d{1,3}(?:,\d{3})+|\d+ \d+\/\d+|\d+\/\d+|\d*[¼½¾⅛⅜⅝⅞]|\d*\.\d+|\d+`;
const LEAD =
  'not (?:more|less) than|not (?:above|below|over|under)|(?:less|more) than|above|below|over|about|activates below';
const UNIT = [
  'in of water',
  'in of mercury',
  'gallons? per minute',
  'per cent',
  'degrees?',
  'lb-ft',
  'seconds?',
  'minutes?',
  'hours?',
  'rpm',
  'psi',
  '°F',
  'in',
  'mm',
  'lbf',
  'V',
  '%',
  's',
  'h',
].join('|');
const FIGURE = new RegExp(`^(?:(${LEAD}) )?(${NUMBER})(?:(?:–| to )(${NUMBER}))? (${UNIT})\\b(?! per | a )(.*)$`, 's');
/** "85 to 100 psi within 45 s": the time is what is asked for. */
const TIMED = new RegExp(`^((?:${NUMBER}) to (?:${NUMBER}) psi) within (${NUMBER}) (s|min)\\b(.*)$`, 's');
const PER_CENT = new RegExp(`^(?:(${LEAD}) )?(${NUMBER})(?:(?:–| to )(${NUMBER}))? ?(%)(.*)$`, 's');

/**
 * The figure of a limit, where there is exactly one that can be asked for; null for everything else: words, lists,
 * several figures, differences of temperature (a figure of degrees would be converted as a reading).
 */
export function limitFigure({ value, quantity }: Pick<Limit, 'value' | 'quantity'>): LimitFigure | null {
  const timed = TIMED.exec(value);
  if (timed) {
    const [, between = '', text = '', unit = '', rest = ''] = timed;
    const low = parseNumber(text);
    if (low === null) return null;
    return { lead: 'within', low, high: null, unit, rounding: halfPlace(text), condition: `from ${between}${rest}` };
  }
  const found = FIGURE.exec(value) ?? PER_CENT.exec(value);
  if (!found) return null;
  const [, lead = '', lowText = '', highText, unitText = '', rest = ''] = found;
  const [low, high] = [parseNumber(lowText), highText === undefined ? null : parseNumber(highText)];
  const unit = unitText.startsWith('second') ? 's' : unitText === 'degree' ? 'degrees' : unitText;
  if (low === null || (highText !== undefined && high === null) || !isUnit(unit)) return null;
  // The same figure in another unit stands in brackets: it belongs to the answer.
  const condition = rest
    .replace(/^ ?\([^)]*\d[^)]*\)/, '')
    .replace(/^[\s,;:]+/, '')
    .trim();
  // A second figure after a semicolon or comma is another limit; one that says where the first is read is a condition.
  if (/[;,]/.test(rest) && /[;,][^;,]*[\d¼½¾⅛⅜⅝⅞]/.test(rest.replace(/\([^)]*\)/g, '')) && !/, at \d/.test(rest))
    return null;
  if (/\bor\b.*\d|\band\b.*\d|one half/.test(condition) && !/, at \d/.test(rest)) return null;
  if (
    unitOf(unit).quantity === 'temperature' &&
    /differ|alike|drop|rise|stamp|above the/i.test(`${quantity} ${condition}`)
  )
    return null;
  const ends = [lowText, ...(highText === undefined ? [] : [highText])];
  if (ends.some((text) => appears(text, `${quantity} ${condition}`))) return null;
  return { lead, low, high, unit: unitOf(unit).id, rounding: Math.max(...ends.map(halfPlace)), condition };
}

/**
 * The figures of a limit, one card each: the only one of its value, or those that the vocabulary tells apart in it, each with
 * what it is the figure of as its condition. Empty where there is none that can be asked for.
 */
export function limitFigures({
  value,
  quantity,
  figures,
}: Pick<Limit, 'value' | 'quantity' | 'figures'>): LimitFigure[] {
  if (!figures) return [limitFigure({ value, quantity })].filter((figure) => figure !== null);
  return figures.flatMap(({ of, value: one }): LimitFigure[] => {
    const figure = limitFigure({ value: one, quantity: `${quantity} ${of}` });
    return figure ? [{ ...figure, condition: of }] : [];
  });
}

/** Whether a figure stands by itself in a text. */
function appears(figure: string, text: string): boolean {
  const plain = figure.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
  return new RegExp(`(^|[^\\d./])${plain}([^\\d./]|$)`).test(text);
}

function halfPlace(text: string): number {
  if (/[/¼½¾⅛⅜⅝⅞]/.test(text)) return 0;
  const digits = /\.(\d+)$/.exec(text)?.[1]?.length ?? 0;
  return 0.5 * 10 ** -digits;
}
