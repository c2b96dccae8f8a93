/** The in-cab air test as it is shown. */
import { parseNumber, type UnitSystem } from '../../shared/units/index.ts';
import {
  airTestComplete,
  airTestHolds,
  airTestStandings,
  WALK_ROUND,
  type AirStep,
  type AirTestState,
  type AirOutcome,
  type Reading,
  type WalkItem,
} from '../../shared/visit/index.ts';
import type { FigureKind } from './bench/figure-kinds.ts';
import type { BenchForm } from './bench/form.ts';
import { preferredOfKind } from './bench/figure-kinds.ts';
import { heldView, type HeldView } from './bench/held.ts';

/** How far an entry of the list is, with a sign and a word. */
export interface AirEntry {
  readonly id: string;
  readonly words: string;
  readonly icon: 'tick' | 'straddle' | 'cross' | 'cant' | 'next' | 'unsure';
  readonly standing: string;
  readonly open: boolean;
}

export interface AirTestView {
  readonly steps: readonly AirEntry[];
  readonly walk: readonly AirEntry[];
  /** The step or item in front. */
  readonly front:
    { readonly kind: 'step'; readonly step: AirStep } | { readonly kind: 'walk'; readonly item: WalkItem } | null;
  readonly complete: boolean;
  /** What holds the coach beside what is said in the head, strictest first. */
  readonly holds: readonly string[];
}

const STANDING: Readonly<Record<string, readonly [AirEntry['icon'], string]>> = {
  open: ['next', 'open'],
  'cant-do': ['cant', 'could not be done'],
  refused: ['unsure', 'no answer yet'],
  meets: ['tick', 'within its limit'],
  'too-close': ['straddle', 'too close to call'],
  fails: ['cross', 'beyond its limit'],
};

/** @param at  chosen step or item; null = the first that is open. */
export function airTestView(air: AirTestState, at: string | null): AirTestView {
  const standings = airTestStandings(air);
  const steps = standings.map(({ step, outcome }): AirEntry => {
    const [icon, words] = STANDING[outcome.kind === 'judged' ? outcome.decision : outcome.kind]!;
    const standing =
      outcome.kind === 'judged' && step.figures.length === 0
        ? ((outcome.decision === 'meets' ? step.right : step.wrong) ?? words)
        : words;
    return {
      id: step.id,
      words: step.name,
      icon,
      standing,
      open: outcome.kind === 'open' || outcome.kind === 'refused',
    };
  });
  const walk = WALK_ROUND.map(({ id, place }): AirEntry => {
    const state = air.walk[id]?.state;
    const icon = state === 'right' ? 'tick' : state === 'wrong' ? 'cross' : state === 'not-looked' ? 'cant' : 'next';
    const standing =
      state === 'right' ? 'nothing seen' : state === 'wrong' ? 'something wrong' : state ? 'not looked at' : 'open';
    return { id, words: place, icon, standing, open: state === undefined };
  });
  const chosen = at ?? [...steps, ...walk].find(({ open }) => open)?.id ?? steps[0]?.id ?? walk[0]!.id;
  const step = standings.find(({ step: { id } }) => id === chosen)?.step;
  const item = WALK_ROUND.find(({ id }) => id === chosen);
  return {
    steps,
    walk,
    front: step ? { kind: 'step', step } : item ? { kind: 'walk', item } : null,
    complete: airTestComplete(air),
    holds: airTestHolds(air).map(({ because }) => because),
  };
}

/** The judgements of a step, as they are drawn. */
export function airHeld(
  outcome: AirOutcome,
  system: UnitSystem,
): readonly { readonly of: string; readonly view: HeldView }[] {
  if (outcome.kind !== 'judged') return [];
  return outcome.judged.map(({ words, value, uncertainty, judgement }) => ({
    of: words,
    view: heldView(value, uncertainty, judgement, system),
  }));
}

/** What a figure is, for its field. */
export function kindOfFigure(unit: 'psi' | 's'): FigureKind {
  return unit === 'psi' ? 'pressure' : 'seconds';
}

/** Name of the field of a figure. */
export function airField(step: string, figure: string): string {
  return `air.${step}.${figure}`;
}

/** The figures of a step as typed; or what is missing or cannot be read. */
export function airReadings(
  step: AirStep,
  form: BenchForm,
): { readonly readings: Readonly<Record<string, Reading>> } | { readonly trouble: string } {
  const readings: Record<string, Reading> = {};
  const missing: string[] = [];
  for (const { id, words, unit, otherwise } of step.figures) {
    const entry = form.entry(airField(step.id, id));
    if (entry.text.trim() === '') {
      if (otherwise === undefined) missing.push(words);
      continue;
    }
    const value = parseNumber(entry.text);
    if (value === null) return { trouble: `“${entry.text}” for “${words}” is not a number. Type it like 98 or 97.5.` };
    readings[id] = { value, unit: entry.unit ?? preferredOfKind(kindOfFigure(unit), form.system) };
  }
  return missing.length > 0 ? { trouble: `Still needed: ${missing.join(', ')}.` } : { readings };
}

/** How long a watch has run. */
export interface WatchFace {
  readonly figure: string;
  /** Of ten, still filled; none where the watch only counts up. */
  readonly squares: number;
  readonly words: string;
}

/** @param total  seconds it runs down; null = it counts up. @param elapsed seconds since it was started. */
export function watchFace(elapsed: number, total: number | null): WatchFace {
  const whole = Math.floor(elapsed);
  const figure = `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
  if (total === null) return { figure, squares: 0, words: 'Press when the needle is there.' };
  const left = total - elapsed;
  return {
    figure,
    squares: Math.max(0, Math.ceil((10 * left) / total)),
    words:
      left > 0
        ? `Read again at ${Math.floor(total / 60)}:${String(total % 60).padStart(2, '0')}.`
        : 'Time is up: read now. Longer tells more.',
  };
}
