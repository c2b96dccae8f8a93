import { nearest, parseNumber } from '../units/index.ts';
import { isAnswerTo } from '../knowledge/index.ts';
import { refuse, type Refusal } from '../measuring/outcome.ts';
import type { CoachValue } from './events.ts';
import type { CoachField } from './field.ts';
import { inFirstUnit, MEASURES } from './measures.ts';

export type ValueRefusal =
  | 'empty'
  | 'not-a-number'
  | 'not-whole'
  | 'unknown-unit'
  | 'out-of-range'
  | 'not-a-choice'
  | 'not-a-day'
  | 'not-a-tyre-week'
  | 'too-long';

export type CheckedValue =
  { readonly ok: true; readonly value: CoachValue; readonly unit?: string } | Refusal<ValueRefusal>;

/**
 * What was typed or chosen for a field, as the log takes it.
 *
 * @param text  as typed; of a choice its value, or several with commas.
 * @param unit  of a figure; its first unit when left out.
 * @returns the value, or what was found, what is allowed and what to do.
 */
export function typedValue(field: CoachField, text: string, unit?: string): CheckedValue {
  const typed = text.trim();
  if (typed === '' && field.kind === 'choice')
    return refuse('empty', `${field.words}: nothing is chosen. Choose what it has, or leave it when it is not known.`);
  if (typed === '')
    return refuse('empty', `${field.words}: nothing is typed. Type it, or clear the field when it is not known.`);
  if (field.kind !== 'figure') {
    if (field.kind !== 'choice') return checkedValue(field, typed);
    const named = typed.split(',');
    const chosen = field.values.flatMap(({ value }) => (named.includes(String(value)) ? [value] : []));
    return checkedValue(field, chosen.length < named.length ? typed : chosen.length > 1 ? chosen : chosen[0]!);
  }
  const value = parseNumber(typed);
  return value === null
    ? refuse('not-a-number', `${field.words}: “${typed}” is not a number. Type it like 3.4 or 2 1/4.`)
    : checkedValue(field, value, unit);
}

/** A value held against its field: what a log brings is held as what is typed is. */
export function checkedValue(field: CoachField, value: CoachValue, unit?: string): CheckedValue {
  switch (field.kind) {
    case 'figure':
      return checkedFigure(field, value, unit);
    case 'choice': {
      if (typeof value !== 'number' && isAnswerTo(field, value)) return { ok: true, value };
      const near = nearest(
        String(value),
        field.values.map((each) => String(each.value)),
      );
      return refuse(
        'not-a-choice',
        `${field.words}: “${String(value)}” is not one of the answers${near === null ? '' : `; nearest is “${near}”`}. Choose one of the list.`,
      );
    }
    case 'text': {
      const text = typeof value === 'object' ? '' : String(value).trim();
      if (text === '') return refuse('empty', `${field.words}: nothing is typed. Type it, or clear the field.`);
      if (text.length > field.most)
        return refuse(
          'too-long',
          `${field.words}: ${text.length} letters; at most ${field.most} are kept. Put the rest into a note.`,
        );
      return { ok: true, value: text };
    }
    case 'day':
      return typeof value === 'string' && isDay(value)
        ? { ok: true, value }
        : refuse(
            'not-a-day',
            `${field.words}: “${String(value)}” is not a day of the calendar. Give year, month and day, like 2019-04-30.`,
          );
    case 'tyre-week':
      return typeof value === 'string' && tyreWeek(value) !== null
        ? { ok: true, value }
        : refuse(
            'not-a-tyre-week',
            `${field.words}: “${String(value)}” is not week and year. Four digits, week 01 to 53 first, like 1419; three digits mean a tyre of before 2000, which is far too old.`,
          );
  }
}

function checkedFigure(
  field: Extract<CoachField, { kind: 'figure' }>,
  value: CoachValue,
  unit: string | undefined,
): CheckedValue {
  if (typeof value !== 'number' || !Number.isFinite(value))
    return refuse('not-a-number', `${field.words}: “${String(value)}” is not a number. Type it like 3.4.`);
  const units = MEASURES[field.measure];
  const base = inFirstUnit(field.measure, value, unit);
  if (base === null)
    return refuse(
      'unknown-unit',
      `${field.words}: “${unit ?? ''}” is not a unit for it. Allowed: ${units.map(({ label }) => label).join(', ')}.`,
    );
  const [least, most] = field.range;
  if (base < least || base > most) {
    const chosen = units.find(({ id }) => id === unit) ?? units[0]!;
    const end = (bound: number): string => String(Number((bound / chosen.factor).toPrecision(3)));
    const label = chosen.label === '' ? '' : ` ${chosen.label}`;
    return refuse(
      'out-of-range',
      `${field.words}: ${value}${label} is outside what a coach has (${end(least)} to ${end(most)}${label}). Look at the figure and its unit.`,
    );
  }
  if (field.whole === true && !Number.isInteger(value))
    return refuse('not-whole', `${field.words}: ${value} is not a whole number. Type it without a fraction.`);
  return { ok: true, value, unit: unit ?? units[0]!.id };
}

/** Whether a text is a day that the calendar has. */
export function isDay(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return false;
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
  return year >= 1900 && days !== undefined && day >= 1 && day <= days;
}

/** Week and year of making of a tyre; null when the four digits are none. Tyres of before 2000 carry three. */
export function tyreWeek(text: string): { readonly week: number; readonly year: number } | null {
  if (!/^\d{4}$/.test(text)) return null;
  const week = Number(text.slice(0, 2));
  return week >= 1 && week <= 53 ? { week, year: 2000 + Number(text.slice(2)) } : null;
}
