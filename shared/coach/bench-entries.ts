import { CHAMBER_VOLUME_IN3 } from '../measuring/index.ts';
import { distanceAYear } from './ages.ts';
import { AXLES } from './axle-fields.ts';
import { LAYOUT_PREFIX, type FieldUse } from './field.ts';
import { COACH_FIELDS } from './fields.ts';
import { inFirstUnit, type CoachMeasure } from './measures.ts';
import type { CoachProfile } from './profile.ts';

/** What the bench starts from: figures with their unit, and choices, by the name of the bench's field. */
export interface BenchStart {
  readonly figures: Readonly<Record<string, { readonly value: number; readonly unit: string }>>;
  readonly choices: Readonly<Record<string, string>>;
}

/** Measures whose units the bench shows; it takes the others as bare figures. */
const WITH_UNIT: readonly CoachMeasure[] = ['length', 'volume', 'distance', 'pressure'];
/** Bench fields that are a sum of tanks, in cubic inches. */
const SUMS: readonly string[] = ['build.fitted', 'flow.volume'];

/**
 * The fields of the bench that the profile can fill. A field for which axles disagree (one drum size is asked) is left
 * open; so is a sum of tanks of which none is known.
 */
export function benchStart(profile: CoachProfile): BenchStart {
  const figures = new Map<string, { readonly value: number; readonly unit: string }>();
  const choices = new Map<string, string>();
  const sums = new Map<string, number>();
  const apart = new Set<string>();
  for (const field of COACH_FIELDS) {
    const known = profile.values[field.id];
    if (!known) continue;
    for (const { entry } of field.uses.filter(isBench)) {
      if (field.kind === 'choice') choices.set(entry, String(known.value));
      else if (field.kind === 'figure' && typeof known.value === 'number' && entry !== 'wear.yearly') {
        if (SUMS.includes(entry))
          sums.set(entry, (sums.get(entry) ?? 0) + (inFirstUnit(field.measure, known.value, known.unit) ?? 0));
        else {
          const start = { value: known.value, unit: WITH_UNIT.includes(field.measure) ? (known.unit ?? '') : '' };
          const before = figures.get(entry);
          if (before && (before.value !== start.value || before.unit !== start.unit)) apart.add(entry);
          figures.set(entry, start);
        }
      }
    }
  }
  for (const [entry, value] of sums) figures.set(entry, { value: Math.round(value), unit: 'in³' });
  for (const entry of apart) figures.delete(entry);
  const yearly = distanceAYear(profile.readings['odometer'] ?? []);
  if (yearly !== null) figures.set('wear.yearly', { value: Math.round(yearly), unit: 'mi' });
  tankTypes(choices);
  const engine = profile.values[`${LAYOUT_PREFIX}engine`]?.value;
  if (engine === 'two-stroke' || engine === 'four-stroke')
    choices.set('orders.strokes', engine === 'two-stroke' ? '2' : '4');
  return { figures: Object.fromEntries(figures), choices: Object.fromEntries(choices) };
}

/** The page of tanks knows chambers by their type number alone, those of the table of rated volumes. */
function tankTypes(choices: Map<string, string>): void {
  for (const axle of AXLES) {
    const name = `build.axle${axle}`;
    const chosen = choices.get(name);
    if (chosen === undefined) continue;
    const [kind, size = ''] = chosen.split(' ');
    if (kind === 'clamp' && size in CHAMBER_VOLUME_IN3) choices.set(name, size);
    else choices.delete(name);
  }
}

function isBench(use: FieldUse): use is Extract<FieldUse, { kind: 'bench' }> {
  return use.kind === 'bench';
}
