import { inHundred, wordsForDecibans } from '../../shared/inference/index.ts';
import { UNLISTED, withNames, type Role, type Tree } from '../../shared/knowledge/index.ts';
import type { Assessment } from '../../shared/planning/index.ts';

/** What `walk --json` prints. */
export interface WalkReport {
  readonly tree: string;
  readonly who: Role;
  /** All causes and `unlisted`, likeliest first. Judged odds, not statistics. */
  readonly belief: readonly { readonly cause: string; readonly probability: number }[];
  readonly next: {
    readonly check: string;
    readonly name: string;
    readonly reason: string;
    readonly minutes: number;
    readonly accessMinutes: number;
  } | null;
  readonly verdict: {
    readonly verdict: string;
    readonly because: string;
    readonly doNow: string;
    readonly rules: readonly string[];
    readonly openQuestions: readonly string[];
  };
  readonly conclusion: {
    readonly cause: string;
    readonly probability: number;
    readonly sites: readonly string[];
    readonly evidence: readonly { readonly check: string; readonly decibans: number; readonly without: number }[];
    readonly nextTest: string | null;
    readonly caution: string;
    readonly because: string;
  } | null;
}

/** The assessment as the command line reports it: next is null when it is time to conclude, conclusion null before. */
export function walkReport(tree: Tree, who: Role, assessment: Assessment): WalkReport {
  const { advice, verdict } = assessment;
  const concluded = advice.kind === 'conclude' || advice.kind === 'hand-over' ? advice.conclusion : null;
  const option = advice.kind === 'check' ? advice.option : null;
  return {
    tree: tree.id,
    who,
    belief: assessment.belief,
    next: option && {
      check: option.check,
      name: tree.checks.find(({ id }) => id === option.check)!.name,
      reason: advice.kind === 'check' ? advice.reason : '',
      minutes: option.minutes,
      accessMinutes: option.accessMinutes,
    },
    verdict: {
      verdict: verdict.verdict,
      because: verdict.because,
      doNow: verdict.doNow,
      rules: verdict.fired.map(({ rule }) => rule),
      openQuestions: verdict.openQuestions,
    },
    conclusion: concluded && {
      cause: concluded.cause,
      probability: concluded.probability,
      sites: concluded.sites,
      evidence: concluded.evidence.map(({ check, decibans, without }) => ({ check, decibans, without })),
      nextTest: concluded.settledBy?.check ?? null,
      caution: concluded.caution,
      because: concluded.because,
    },
  };
}

/** The same for people. */
export function walkText(report: WalkReport, tree: Tree): string {
  const nameOf = (id: string): string =>
    id === UNLISTED ? 'not in the list' : tree.causes.find((cause) => cause.id === id)!.name;
  const plain = (text: string): string =>
    withNames(text, (id) => tree.checks.find((check) => check.id === id)?.name ?? id.replaceAll('-', ' '));
  const checkName = (id: string): string => tree.checks.find((check) => check.id === id)!.name;
  const lines = [
    tree.title,
    '',
    `May it move: ${report.verdict.verdict}. ${plain(report.verdict.because)}`,
    `Now: ${plain(report.verdict.doNow)}`,
    ...(report.verdict.openQuestions.length > 0
      ? [`Safety questions not asked here: ${report.verdict.openQuestions.length}.`]
      : []),
    '',
    'Belief, in 100 (judged odds, not statistics):',
    ...report.belief.map(
      ({ cause, probability }) => `  ${inHundred(probability).padStart(7)}  ${nameOf(cause)}  [${cause}]`,
    ),
    '',
  ];
  if (report.next)
    lines.push(
      `Next: ${report.next.name}  [${report.next.check}], ${report.next.minutes} min and ${report.next.accessMinutes} to get there and back`,
      `  ${report.next.reason}`,
    );
  if (report.conclusion) {
    lines.push(
      `Probable cause: ${nameOf(report.conclusion.cause)}, ${inHundred(report.conclusion.probability)} in 100`,
    );
    lines.push(
      ...report.conclusion.evidence.map(
        ({ check, decibans }) => `  ${checkName(check)}: ${wordsForDecibans(decibans)} (${decibans.toFixed(1)} dB)`,
      ),
    );
    if (report.conclusion.nextTest !== null)
      lines.push(`What would settle it: ${checkName(report.conclusion.nextTest)}  [${report.conclusion.nextTest}]`);
    lines.push(report.conclusion.because, report.conclusion.caution);
  }
  return `${lines.join('\n')}\n`;
}
