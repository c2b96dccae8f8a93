import type { Finding } from './finding.ts';
import type { BeliefModel } from './model.ts';
import { posterior } from './posterior.ts';

/** One finding as evidence for a cause against all others; a check that was made at several places is one line. */
export interface LedgerLine {
  /** Of several places the finding that counts. */
  readonly finding: string;
  readonly check: string;
  /** Positive = for. */
  readonly decibans: number;
  /** Belief in the cause had this finding not been made, nor those of its check at other places. */
  readonly without: number;
  /** Cause that would lead then. */
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
  const weights = new Map<string, number>();
  findings.forEach((finding, i) => {
    if (!all.evidence.some((each) => each.finding === finding)) return;
    const now = decibansOf(beliefIn(findings.slice(0, i + 1)));
    weights.set(finding.check, (weights.get(finding.check) ?? 0) + now - last);
    last = now;
  });
  const lines = [...weights].map(([check, decibans]): LedgerLine => {
    const { finding, exponent } = all.evidence.find((each) => each.finding.check === check && each.exponent > 0)!;
    const rest = posterior(
      model,
      findings.filter((each) => each.check !== check),
      excluded,
    ).probability;
    return {
      finding: finding.id,
      check,
      decibans,
      without: rest[column]!,
      leaderWithout: model.causeIds[indexOfMax(rest)]!,
      overlaps: exponent < 1,
    };
  });
  return { lines, before, after: last };
}

/** Index of the largest value; ties to the first. */
export function indexOfMax(values: ArrayLike<number>): number {
  let best = 0;
  for (let i = 1; i < values.length; i++) if (values[i]! > values[best]!) best = i;
  return best;
}
