import { cornerLoadLb, LIFT_FACTOR } from '../measuring/index.ts';
import { distanceAYear, monthsBetween, monthsWords, tyreDay } from './ages.ts';
import type { CoachField } from './field.ts';
import { inFirstUnit } from './measures.ts';
import type { CoachProfile } from './profile.ts';

/**
 * What follows from a field at once, in a sentence; null when nothing does.
 *
 * @param today  calendar day.
 */
export function derivedWords(field: CoachField, profile: CoachProfile, today: string): string | null {
  const known = profile.values[field.id];
  if (!known) return null;
  if (field.kind === 'day' && typeof known.value === 'string') return since(known.value, today, 'That was', 'ago');
  if (field.kind === 'tyre-week' && typeof known.value === 'string') {
    const day = tyreDay(known.value);
    return day === null ? null : since(day, today, 'The tyre is', 'old');
  }
  if (field.kind !== 'figure' || typeof known.value !== 'number') return null;
  if (field.measure === 'weight') {
    const load = cornerLoadLb(inFirstUnit('weight', known.value, known.unit) ?? NaN);
    return load.ok
      ? `One corner carries about ${rounded(load.loadLb)} lb; a jack and a stand under it need a rating of at least ${rounded(load.loadLb * LIFT_FACTOR)} lb (a quarter on top: judgement).`
      : null;
  }
  if (field.id === 'odometer') {
    const yearly = distanceAYear(profile.readings['odometer'] ?? []);
    return yearly === null ? null : `About ${rounded(yearly)} miles a year, from its readings.`;
  }
  return null;
}

function since(day: string, today: string, before: string, after: string): string {
  const months = monthsBetween(day, today);
  return months < 0 ? 'That day is still ahead: look at the date.' : `${before} ${monthsWords(months)} ${after}.`;
}

/** To the hundred, upward: a rating must not be rounded down. */
function rounded(value: number): string {
  return (Math.ceil(value / 100) * 100).toLocaleString('en-US');
}
