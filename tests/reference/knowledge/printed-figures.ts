import { isUnit, parseNumber } from '../../../shared/units/index.ts';

/** A figure as it stands in a printed limit, with the unit behind it. */
export interface Figure {
  readonly value: number;
  readonly unit: string;
}

const NUMBER = String.raw`(?:\d+ \d+\/\d+|\d+\/\d+|\d[\d,]*(?:\.\d+)?|\.\d+)`;
const UNIT = String.raw`psi|in of water|kPa|in|mm|°F|°C|lb-ft|rpm|%|Ω|V|s|minutes?|degrees?|per minute`;
// One figure, or several that share the unit behind the last: "45 and 20 psi", "0.001–0.005 in", "16, 20 and 24".
const SERIES = new RegExp(String.raw`(${NUMBER}(?:(?: and |–| to |, )${NUMBER})*)\s?(${UNIT})(?![a-z])`, 'g');

function numbersIn(series: string): number[] {
  return series.split(/ and |–| to |, (?!\d{3}\b)/).map((text) => {
    const value = parseNumber(text);
    if (value === null) throw new Error(`"${text}" of "${series}" is no number.`);
    return value;
  });
}

/** Every figure with a unit in a printed text; a figure without unit is none. Drops are read from "per minute". */
export function figuresIn(text: string): Figure[] {
  return [...text.matchAll(SERIES)].flatMap(([, series, name]) => {
    const unit = name === 'per minute' ? 'drops/min' : name!;
    if (!isUnit(unit)) throw new Error(`"${unit}" is no unit of this program.`);
    return numbersIn(series!).map((value) => ({ value, unit }));
  });
}

/** Every number of a printed text, with or without unit. */
export function numbersOf(text: string): number[] {
  return [...text.matchAll(new RegExp(NUMBER, 'g'))].flatMap(([number]) => parseNumber(number) ?? []);
}
