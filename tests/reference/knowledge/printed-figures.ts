import { isUnit, parseNumber } from '../../../shared/units/index.ts';

/** A figure as it stands in a printed limit, with the unit behind it. */
export interface Figure {
  readonly value: number;
  readonly unit: string;
}

// "2 1/4", "3/16", "2½", "1,120", "0.5", ".75".
const NUMBER = String.raw`(?:\d+ \d+\/\d+|\d+\/\d+|\d*[¼½¾⅛⅜⅝⅞⅓⅔]|\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?|\.\d+)`;
/** Units as limits print them; a longer name stands before the shorter one that it begins with. */
const PRINTED = [
  'psi',
  'in of water',
  'in of mercury',
  'kPa',
  'in',
  'mm',
  '°F difference',
  '°F',
  '°C',
  'K',
  'lb-ft',
  'lbf',
  'rpm',
  '%',
  'Ω',
  'V',
  'beats per second',
  'Hz',
  'gal/min',
  'gallons? per minute',
  'minutes?',
  'min',
  's',
  'h',
  'degrees?',
  'quarts? per 1,000 miles',
  'per minute',
];
/** What the program calls a unit that limits print in words of their own. */
const OTHER_NAME: Readonly<Record<string, string>> = {
  'per minute': 'drops/min',
  'gallon per minute': 'gal/min',
  'quart per 1,000 miles': 'qt/1000mi',
  'quarts per 1,000 miles': 'qt/1000mi',
};
const BETWEEN = String.raw` and |–| to | \/ |, `;
// One figure, or several that share the unit behind the last: "45 and 20 psi", "0.001–0.005 in", "105, 135 and 150 psi".
const SERIES = new RegExp(String.raw`(${NUMBER}(?:(?:${BETWEEN})${NUMBER})*)\s?(${PRINTED.join('|')})(?![a-z/])`, 'g');
/** A bracket that holds nothing but figures of one unit: the same figure once more. */
const BARE = new RegExp(String.raw`^${NUMBER}(?:(?:${BETWEEN})${NUMBER})*\s?(?:${PRINTED.join('|')})$`);

function numbersIn(series: string): number[] {
  return series.split(new RegExp(BETWEEN)).map((text) => {
    const value = parseNumber(text);
    if (value === null) throw new Error(`"${text}" of "${series}" is no number.`);
    return value;
  });
}

/** Every figure with a unit in a printed text; a figure without unit is none. Drops are read from "per minute". */
export function figuresIn(text: string): Figure[] {
  return [...text.matchAll(SERIES)].flatMap(([, series, name]) => {
    const unit = OTHER_NAME[name!] ?? name!;
    if (!isUnit(unit)) throw new Error(`"${unit}" is no unit of this program.`);
    return numbersIn(series!).map((value) => ({ value, unit }));
  });
}

/** Whether a text is a figure, or several of one unit, and nothing else. */
export function isBareFigure(text: string): boolean {
  return BARE.test(text);
}

/** Every number of a printed text, with or without unit. */
export function numbersOf(text: string): number[] {
  return [...text.matchAll(new RegExp(NUMBER, 'g'))].flatMap(([number]) => parseNumber(number) ?? []);
}
