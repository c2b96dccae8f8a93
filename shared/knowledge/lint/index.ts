import { nearestText } from '../names.ts';
import type { Problem } from '../problem.ts';
import type { SourceFile } from '../source-file.ts';
import type { Tree } from '../tree.ts';
import type { Vocabulary } from '../vocabulary.ts';
import { bandGap } from './band-gap.ts';
import { calculationDoesNotFit } from './calculation-does-not-fit.ts';
import { causesAlike } from './causes-alike.ts';
import { checkSeparatesNothing } from './check-separates-nothing.ts';
import { dangerWithoutCaution } from './danger-without-caution.ts';
import { dangerWithoutStopRule } from './danger-without-stop-rule.ts';
import { fewPhrases } from './few-phrases.ts';
import { hazardWithoutCaution } from './hazard-without-caution.ts';
import { measureWithoutLimit } from './measure-without-limit.ts';
import { missingProof } from './missing-proof.ts';
import { ownerInDanger } from './owner-in-danger.ts';
import { resultUnexplained } from './result-unexplained.ts';
import { roadSaysUnknown } from './road-says-unknown.ts';
import type { LintRule } from './rule.ts';
import { teachingOrder } from './teaching-order.ts';
import { toolNotCovered } from './tool-not-covered.ts';
import { unknownReference } from './unknown-reference.ts';
import { unreachableCheck } from './unreachable-check.ts';
import { variesInVain } from './varies-in-vain.ts';

export type { LintRule } from './rule.ts';

/** Every rule, in the order in which they are reported. */
export const LINT_RULES: readonly LintRule[] = [
  dangerWithoutStopRule,
  dangerWithoutCaution,
  hazardWithoutCaution,
  ownerInDanger,
  checkSeparatesNothing,
  causesAlike,
  resultUnexplained,
  unreachableCheck,
  missingProof,
  measureWithoutLimit,
  calculationDoesNotFit,
  bandGap,
  teachingOrder,
  unknownReference,
  toolNotCovered,
  fewPhrases,
  roadSaysUnknown,
  variesInVain,
];

/** Faults of the exceptions that a tree makes from the rules. They cannot be excepted themselves. */
export const EXCEPTION_CODES = ['unknown-rule', 'exception-not-needed'] as const;

/**
 * Holds a tree against every rule. A fault that the tree excepts with a reason is left out; an exception that is no
 * longer needed, or names no rule, is itself an error.
 *
 * @param source  the file the tree was read from, for places; its list of problems grows.
 */
export function lintTree(tree: Tree, vocabulary: Vocabulary, source: SourceFile): Problem[] {
  const before = source.problems.length;
  const codes = LINT_RULES.map(({ code }) => code);
  const needed = new Set<number>();
  for (const rule of LINT_RULES) {
    rule.check({ tree, vocabulary }, (at, path, message) => {
      const exception = tree.exceptions.findIndex((each) => each.rule === rule.code && each.at === at);
      if (exception >= 0) needed.add(exception);
      else source[rule.level](rule.code, path, message);
    });
  }
  tree.exceptions.forEach((exception, i) => {
    if (!codes.includes(exception.rule))
      source.error(
        'unknown-rule',
        ['exceptions', i, 'rule'],
        `"${exception.rule}" is not a rule.${nearestText(exception.rule, codes)} Rules: ${codes.join(', ')}.`,
      );
    else if (!needed.has(i))
      source.error(
        'exception-not-needed',
        ['exceptions', i, 'at'],
        `The exception from ${exception.rule} for "${exception.at}" is not needed any more. Take it out.`,
      );
  });
  return source.problems.slice(before);
}
