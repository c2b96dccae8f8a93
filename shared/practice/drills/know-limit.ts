import type { Limit, Vocabulary } from '../../knowledge/index.ts';
import { convert, parseNumber, unitOf } from '../../units/index.ts';
import type { LimitCard, Outcome } from './card.ts';
import { cardId } from './card-id.ts';
import { limitFigure, limitFigures, type LimitFigure } from './limit-figure.ts';

/** Statuses that are worth knowing by heart: what is judged here or not verified is looked up, not drilled. */
const PUBLISHED: readonly Limit['status'][] = ['seen', 'second-hand', 'practice'];
/** What is off by more than this share of the limit is not the limit any more, however coarsely it is printed. Judgement. */
const COARSEST = 0.03;

/**
 * The limits of the vocabulary that are figures with a unit, and whose source can be named; a card for each figure.
 *
 * @param ids  only these, such as the limits that a tree's checks rest on; left out = all.
 */
export function limitCards({ limits }: Vocabulary, ids?: ReadonlySet<string>): LimitCard[] {
  return [...limits.values()].flatMap((limit) => {
    if (ids && !ids.has(limit.id)) return [];
    const figures = PUBLISHED.includes(limit.status) ? limitFigures(limit) : [];
    const several = limit.figures !== undefined;
    return figures.map((figure): LimitCard => {
      const content = { quantity: limit.quantity, value: limit.value, source: limit.source };
      return {
        id: cardId('limit', several ? { ...content, of: figure.condition } : content),
        drill: 'limit',
        tree: null,
        causes: [],
        checks: [],
        subject: several ? `${limit.quantity}: ${figure.condition}` : limit.quantity,
        limit,
        figure,
      };
    });
  });
}

/** A figure as somebody typed it. */
export interface TypedFigure {
  readonly low: string;
  /** Upper end; left out where one figure is asked for. */
  readonly high?: string;
  /** Unit id of the same quantity as the limit. */
  readonly unit: string;
}

export type LimitJudgement =
  | { readonly ok: false; readonly problem: string }
  /** `by` names the other source whose figure was given. */
  | { readonly ok: true; readonly outcome: Outcome; readonly by?: string };

/**
 * Holds a typed figure against the limit, in whatever unit it is typed: right within the rounding of the printed or
 * of the typed figure, and never off by more than a few parts in a hundred. A figure that another source prints, where they disagree, is nearly right.
 */
export function judgeLimit({ limit, figure }: LimitCard, typed: TypedFigure): LimitJudgement {
  const ends = [typed.low, ...(figure.high === null ? [] : [typed.high ?? ''])];
  const values = ends.map(parseNumber);
  const missing = values.indexOf(null);
  if (missing >= 0)
    return {
      ok: false,
      problem: `“${ends[missing]!}” is not a figure. Type one such as 2.5, 2 1/2 or 5/16; the unit is chosen beside it.`,
    };
  const unit = unitOf(typed.unit);
  if (unit.quantity !== unitOf(figure.unit).quantity)
    return {
      ok: false,
      problem: `${unit.spoken} measure ${unit.quantity}; ${unitOf(figure.unit).quantity} is asked for. Choose another unit.`,
    };
  if (fits(figure, ends, unit.id)) return { ok: true, outcome: 'right' };
  const other = limit.disagreement?.others.find(({ value }) => {
    // Another source that prints one figure cannot be meant where there are several.
    const printed = limit.figures ? null : limitFigure({ value, quantity: limit.quantity });
    return (
      printed !== null &&
      (printed.high === null) === (figure.high === null) &&
      unitOf(printed.unit).quantity === unit.quantity &&
      fits(printed, ends, unit.id)
    );
  });
  return other ? { ok: true, outcome: 'nearly', by: other.source } : { ok: true, outcome: 'wrong' };
}

function fits(figure: LimitFigure, ends: readonly string[], unit: string): boolean {
  const wanted = figure.high === null ? [figure.low] : [figure.low, figure.high];
  return wanted.every((value, i) => {
    const target = convert(value, figure.unit, unit);
    const printed = Math.abs(convert(value + figure.rounding, figure.unit, unit) - target);
    const room = Math.min(Math.max(printed, typedPlace(ends[i]!)), Math.abs(target) * COARSEST);
    // A hair for the binary fractions of the conversion.
    return Math.abs(parseNumber(ends[i]!)! - target) <= room + Math.abs(target) * 1e-9;
  });
}

/** Half of the last place typed; a fraction is exact. */
function typedPlace(text: string): number {
  if (/[/⁄¼½¾⅛⅜⅝⅞⅓⅔]/.test(text)) return 0;
  return 0.5 * 10 ** -(/[.,](\d+)\s*$/.exec(text)?.[1]?.length ?? 0);
}
