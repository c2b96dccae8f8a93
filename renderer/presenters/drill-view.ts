import { inHundred, wordsForDecibans } from '../../shared/inference/index.ts';
import type { Tree } from '../../shared/knowledge/index.ts';
import type { ApartCard, Card, Drill, LimitCard, Outcome, SeenOption } from '../../shared/practice/drills/index.ts';
import { preferredUnit, unitsLike, type UnitSystem } from '../../shared/units/index.ts';
import { rangeWords, sentence } from './presenters.ts';

/** The drills as they are called, with what they ask. */
export const DRILL_WORDS: Readonly<Record<Drill, { readonly words: string; readonly about: string }>> = {
  apart: {
    words: 'Tell these two apart',
    about: 'two causes that are easily confused: which check separates them best?',
  },
  outcome: { words: 'What would you see?', about: 'a cause is named: what does the check show?' },
  picture: { words: 'Read the picture', about: 'a drawing without its words: what does it explain?' },
  limit: { words: 'Know the limit', about: 'a published figure with its unit' },
};

/** How an answer came out, with the sign that says the same. */
export const OUTCOME_WORDS: Readonly<Record<Outcome, { readonly words: string; readonly icon: string }>> = {
  right: { words: 'Right', icon: 'tick' },
  nearly: { words: 'Half right', icon: 'straddle' },
  wrong: { words: 'Not this time', icon: 'cross' },
};

/** The question of a card, with nothing of its answer in it. */
export function questionOf(card: Card): {
  readonly question: string;
  /** The second of two causes; empty elsewhere. */
  readonly or: string;
  readonly then: string;
} {
  switch (card.drill) {
    case 'apart':
      return {
        question: card.first.name,
        or: card.second.name,
        then: 'Which of these checks tells the two apart best?',
      };
    case 'outcome':
      return {
        question: `It is this: ${inside(card.cause.name)}`,
        or: '',
        then: `What does the check show most likely: “${card.check.name}”?`,
      };
    case 'picture':
      return card.check
        ? {
            question: 'What does this drawing explain?',
            or: '',
            then: `One of the results of the check “${card.check.name}”.`,
          }
        : {
            question: 'Which check does this drawing belong to?',
            or: '',
            then: 'It explains what that check can show.',
          };
    case 'limit': {
      const { lead, condition, high } = card.figure;
      const blank = `${lead === '' ? '' : `${lead} `}${high === null ? 'how much' : 'from how much to how much'}`;
      return {
        question: sentence(card.limit.quantity),
        or: '',
        then: `${sentence(blank)}${condition === '' ? '' : `, ${condition}`}?`,
      };
    }
  }
}

/** A name in the middle of a sentence: small, unless it begins with an abbreviation. */
function inside(name: string): string {
  return /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}

/** A result to choose, with its band in the reader's unit. */
export function resultChoices(
  tree: Tree,
  check: string,
  options: readonly SeenOption[],
  units: UnitSystem,
): readonly { readonly id: string; readonly label: string; readonly range: string }[] {
  const found = tree.checks.find(({ id }) => id === check);
  return options.map(({ result, label }, i) => ({
    id: result,
    label: sentence(label),
    range: found ? rangeWords(found, i, units) : '',
  }));
}

/** One line of an answer: what it is, whether it was right, whether it was chosen. */
export interface AnswerRow {
  readonly id: string;
  readonly label: string;
  /** Figure or words at the end of the row; empty = none. */
  readonly end: string;
  readonly right: boolean;
  readonly chosen: boolean;
}

/** How often each result is seen. */
export function seenRows(options: readonly SeenOption[], chosen: string | null): readonly AnswerRow[] {
  return options.map(({ result, label, share, accepted }) => ({
    id: result,
    label: sentence(label),
    end: `${inHundred(share)} in 100`,
    right: accepted,
    chosen: result === chosen,
  }));
}

/** How well each check separates the two, the best first. */
export function apartRows({ options }: ApartCard, chosen: string | null): readonly AnswerRow[] {
  return [...options]
    .sort((a, b) => b.decibans - a.decibans)
    .map(({ check, name, decibans, accepted }) => ({
      id: check,
      label: name,
      end: `${STRENGTH[wordsForDecibans(decibans)] ?? 'not at all'}, ${decibans.toFixed(1)} dB`,
      right: accepted,
      chosen: check === chosen,
    }));
}

/** The strength of evidence as how well two are told apart. */
const STRENGTH: Readonly<Record<string, string>> = {
  'hardly matters': 'hardly at all',
  'slightly for': 'slightly',
  'clearly for': 'clearly',
  'strongly for': 'strongly',
  'decisively for': 'decisively',
};

/** The check of a pair whose results are shown with the answer: the one chosen if it was right, else the best. */
export function shownOption({ options }: ApartCard, chosen: string | null): ApartCard['options'][number] {
  const best = [...options].sort((a, b) => b.decibans - a.decibans)[0]!;
  return options.find(({ check, accepted }) => accepted && check === chosen) ?? best;
}

/** Units that a limit can be given in, and the one that the reader reads. */
export function unitChoices(
  { figure }: LimitCard,
  units: UnitSystem,
): { readonly units: readonly { readonly id: string; readonly label: string }[]; readonly own: string } {
  return {
    units: unitsLike(figure.unit).map(({ id, symbol, spoken }) => ({ id, label: symbol === '' ? spoken : symbol })),
    own: preferredUnit(figure.unit, units),
  };
}

/** When a card comes back. @param due, now  milliseconds since 1970. */
export function comesBack(due: number, now: number): string {
  const minutes = Math.round((due - now) / 60_000);
  if (minutes < 60) return `in ${Math.max(1, minutes)} minute${minutes > 1 ? 's' : ''}`;
  const hours = Math.round(minutes / 60);
  if (hours < 36) return `in ${hours} hour${hours > 1 ? 's' : ''}`;
  return `in ${Math.round(hours / 24)} days`;
}
