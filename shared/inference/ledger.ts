import type { Finding } from './finding.ts';
import type { BeliefModel } from './model.ts';
import { posterior } from './posterior.ts';

/** One finding as evidence for a cause against all others. */
export interface LedgerLine {
  readonly finding: string;
  readonly check: string;
  /** Positive = for. */
  readonly decibans: number;
  /** Belief in the cause had this finding not been made. */
  readonly without: number;
  /** Cause that would lead had this finding not been made. */
  readonly leaderWithout: string;
  /** Counts less because another finding looks at the same fact. */
  readonly overlaps: boolean;
}

export interface Ledger {
  readonly lines: readonly LedgerLine[];
  /** Log-odds of the cause against all others, decibans, before and after all findings. before + Σ lines = after. */
  readonly before: number;
  readonly after: number;
}

/** Log-odds in decibans: 10·log10(p / (1 − p)). */
export function decibansOf(probability: number): number {
  return 10 * Math.log10(probability / (1 - probability));
}

/**
 * Weight of each finding for one cause, in the order in which the findings were made: the change of its log-odds.
 *
 * The weight depends on what was known before (the other causes are weighed by the belief in them), so the order of the
 * findings is kept. A finding that re-damps earlier ones of its group carries that change too; the sum is always exact.
 *
 * @param cause  id of a cause of the model.
 * @source W(f:o) = 10·log10(P(o|f)/P(o|not f)), Good 1950 (from memory).
 */
export function evidenceLedger(
  model: BeliefModel,
  findings: readonly Finding[],
  cause: string,
  excluded?: ReadonlySet<string>,
): Ledger {
  const column = model.causeIds.indexOf(cause);
  const beliefIn = (some: readonly Finding[]): number => posterior(model, some, excluded).probability[column]!;
  const all = posterior(model, findings, excluded);
  const before = decibansOf(beliefIn([]));
  let last = before;
  const lines: LedgerLine[] = [];
  findings.forEach((finding, i) => {
    const evidence = all.evidence.find((each) => each.finding === finding);
    if (!evidence) return;
    const now = decibansOf(beliefIn(findings.slice(0, i + 1)));
    const rest = posterior(
      model,
      findings.filter((each) => each !== finding),
      excluded,
    ).probability;
    lines.push({
      finding: finding.id,
      check: finding.check,
      decibans: now - last,
      without: rest[column]!,
      leaderWithout: model.causeIds[indexOfMax(rest)]!,
      overlaps: evidence.exponent < 1,
    });
    last = now;
  });
  return { lines, before, after: last };
}

/** Index of the largest value; ties to the first. */
export function indexOfMax(values: ArrayLike<number>): number {
  let best = 0;
  for (let i = 1; i < values.length; i++) if (values[i]! > values[best]!) best = i;
  return best;
}
