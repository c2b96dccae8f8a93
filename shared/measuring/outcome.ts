/** A calculation that gives no number. `reason` is for code, `message` for the person: what was found, what is allowed, what to do. */
export interface Refusal<R extends string> {
  readonly ok: false;
  readonly reason: R;
  readonly message: string;
}

/** What a calculation hands back: the figures, or the reason why there are none. Never NaN, never an infinite figure. */
export type Outcome<T, R extends string> = ({ readonly ok: true } & T) | Refusal<R>;

/** An input that is no finite number or lies outside what the formula is good for. */
export type OutOfRange = 'out-of-range';

/** A refusal in the common form. */
export function refuse<R extends string>(reason: R, message: string): Refusal<R> {
  return { ok: false, reason, message };
}

/** One input with its allowed span, ends included. */
export type Span = readonly [name: string, value: number, least: number, most: number, unit: string];

/**
 * Holds inputs to their spans.
 *
 * @returns null when every value is a finite number inside its span; else one refusal that names every fault.
 * @example outOfRange(['time', -1, 0, 60, 's'])?.message // 'The time is −1 s; allowed is 0 to 60 s. Look at the figure and its unit.'
 */
export function outOfRange(...spans: readonly Span[]): Refusal<OutOfRange> | null {
  const faults = spans
    .filter(([, value, least, most]) => !(Number.isFinite(value) && value >= least && value <= most))
    .map(([name, value, least, most, unit]) => {
      const found = Number.isNaN(value) ? 'not a number' : withUnit(plain(value), unit);
      return `The ${name} is ${found}; allowed is ${plain(least)} to ${withUnit(plain(most), unit)}.`;
    });
  return faults.length === 0 ? null : refuse('out-of-range', `${faults.join(' ')} Look at the figure and its unit.`);
}

function plain(value: number): string {
  return String(value).replace('-', '−');
}

function withUnit(figure: string, unit: string): string {
  return unit === '' ? figure : `${figure} ${unit}`;
}
