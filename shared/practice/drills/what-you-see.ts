import { UNLISTED, type Tree } from '../../knowledge/index.ts';
import { askable, canMeet } from './askable.ts';
import type { CardOptions, OutcomeCard, Outcome } from './card.ts';
import { cardId } from './card-id.ts';
import { givesAway } from './gives-away.ts';
import { decidable, seenUnder } from './seen.ts';

/** Checks asked of one cause. */
const EACH = 2;
/** A result that somebody is asked to foresee comes at least this often. Judgement. */
const LIKELY = 0.4;
/** What the cause shows differs from the average coach by at least this much, bits: else the cause was not needed. Judgement. */
const TELLING = 0.25;

/**
 * The cards of a tree: for each cause the checks that show it most clearly, where it stands out from the other causes
 * and where one set of results can be defended.
 */
export function outcomeCards(tree: Tree, { who }: CardOptions): OutcomeCard[] {
  const { model, tables } = askable(tree, who);
  return model.causeIds.flatMap((id, column) => {
    if (id === UNLISTED) return [];
    const cause = tree.causes[column]!;
    return tables
      .filter(({ check }) => canMeet(check.when, cause.when))
      .map((table) => ({
        table,
        options: seenUnder(table, column),
        bits: surprise(table.likelihood, model.prior, column),
      }))
      .filter(
        ({ options, bits }) =>
          bits >= TELLING && decidable(options) && Math.max(...options.map(({ share }) => share)) >= LIKELY,
      )
      .filter(({ table: { check }, options }) =>
        options.every(({ label, accepted }) => !accepted || !givesAway(`${cause.name} ${check.name}`, label)),
      )
      .sort((x, y) => y.bits - x.bits)
      .slice(0, EACH)
      .map(({ table: { check }, options }): OutcomeCard => ({
        id: cardId('outcome', { tree: tree.id, cause: cause.name, check: check.name, options }),
        drill: 'outcome',
        tree: tree.id,
        causes: [cause.id],
        checks: [check.id],
        subject: `${cause.name}: ${check.name}`,
        cause: { id: cause.id, name: cause.name },
        check: { id: check.id, name: check.name },
        options,
      }));
  });
}

/** How far a check's results under one cause lie from what it shows on the average coach, bits (Kullback and Leibler). */
function surprise(likelihood: readonly Float64Array[], prior: Float64Array, cause: number): number {
  return likelihood.reduce((sum, row) => {
    const average = row.reduce((total, value, c) => total + value * prior[c]!, 0);
    return sum + row[cause]! * Math.log2(row[cause]! / average);
  }, 0);
}

/** Any result within `AS_GOOD` of the likeliest is right. */
export function judgeOutcome(card: OutcomeCard, result: string): Outcome {
  return card.options.find((each) => each.result === result)?.accepted ? 'right' : 'wrong';
}
