import type { Finding } from './finding.ts';
import { evidenceLedger } from './ledger.ts';
import type { BeliefModel } from './model.ts';
import { posterior } from './posterior.ts';
import { wordsForDecibans } from './words.ts';

/** A weight of evidence with its words. */
export interface Weighed {
  /** Positive = for. */
  readonly decibans: number;
  readonly words: string;
}

/** One finding as evidence for two causes; of a check made at several places the one that counts. */
export interface SideBySideLine {
  readonly finding: string;
  readonly check: string;
  /** For each cause against all others, in the order in which the findings were made. */
  readonly first: Weighed;
  readonly second: Weighed;
  /** For the first against the second: the likelihood ratio, which does not depend on the order. */
  readonly between: Weighed;
  /** Counts less because another finding looks at the same fact. */
  readonly overlaps: boolean;
}

export interface SideBySide {
  readonly lines: readonly SideBySideLine[];
  /** Odds of the first against the second, decibans. before + Σ between = after. */
  readonly before: number;
  readonly after: number;
}

/**
 * What each finding says about two causes, side by side.
 *
 * @param first   id of a cause of the model, `unlisted` included; the same for `second`.
 * @throws {RangeError} when the two are the same, or one of them is not among the causes or has been ruled out.
 * @source W = 10·log10(P(o|f)/P(o|g)) between two named causes, Good 1950 (from memory).
 */
export function sideBySide(
  model: BeliefModel,
  findings: readonly Finding[],
  first: string,
  second: string,
  excluded: ReadonlySet<string> = new Set(),
): SideBySide {
  const open = model.causeIds.filter((id) => !excluded.has(id));
  for (const id of [first, second])
    if (!open.includes(id))
      throw new RangeError(`"${id}" cannot be weighed: it is not a cause of this coach, or it is ruled out.`);
  if (first === second) throw new RangeError(`"${first}" cannot be weighed against itself; choose another cause.`);
  const a = model.causeIds.indexOf(first);
  const b = model.causeIds.indexOf(second);
  const forFirst = evidenceLedger(model, findings, first, excluded).lines;
  const forSecond = evidenceLedger(model, findings, second, excluded).lines;
  const { evidence } = posterior(model, findings, excluded);
  // Of a check made at several places the finding that counts has the line, as in the ledger.
  const lines = forFirst.map(({ finding, check }, i): SideBySideLine => {
    const { exponent, log } = evidence.find((each) => each.finding.id === finding)!;
    return {
      finding,
      check,
      first: weighed(forFirst[i]!.decibans),
      second: weighed(forSecond[i]!.decibans),
      between: weighed(exponent * decibans(log[a]! - log[b]!)),
      overlaps: exponent < 1,
    };
  });
  const before = decibans(Math.log(model.prior[a]!) - Math.log(model.prior[b]!));
  return { lines, before, after: lines.reduce((sum, { between }) => sum + between.decibans, before) };
}

/** Decibans of a natural logarithm of odds. */
function decibans(log: number): number {
  return (10 * log) / Math.LN10;
}

function weighed(value: number): Weighed {
  return { decibans: value, words: wordsForDecibans(value) };
}
