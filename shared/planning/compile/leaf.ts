import { UNLISTED, type Check, type Tree } from '../../knowledge/tree.ts';
import { withNames } from '../../knowledge/markdown.ts';
import type { Vocabulary } from '../../knowledge/vocabulary.ts';
import type { Assessment, CauseBelief, CheckOption, DriveVerdict } from '../assessment.ts';
import type { Situation } from '../situation.ts';
import type { DriveLine, Leaf, NamedCause, NextTest } from './compiled-tree.ts';

/** A text of the tree with names in place of ids. */
export function plain(tree: Tree, text: string): string {
  return withNames(
    text,
    (id) =>
      tree.causes.find((cause) => cause.id === id)?.name ??
      tree.checks.find((check) => check.id === id)?.name ??
      tree.stopRules.find((rule) => rule.id === id)?.when,
  );
}

/** The drive verdict in the words of the page. */
export function driveLine(tree: Tree, verdict: DriveVerdict): DriveLine {
  return {
    verdict: verdict.verdict,
    doNow: plain(tree, verdict.doNow),
    because: plain(tree, verdict.because),
    halts: verdict.fired.some((rule) => rule.verdict !== 'drive-and-book'),
  };
}

/** What the end of a path says: probable cause, next test, caution. */
export function leafOf(
  { tree, vocabulary }: Pick<Situation, 'tree' | 'vocabulary'>,
  assessment: Assessment,
  end: Leaf['end'],
): Pick<Leaf, 'kind' | 'end' | 'cause' | 'alsoOpen' | 'nextTest' | 'caution' | 'because'> {
  const { leading } = assessment;
  return {
    kind: 'leaf',
    end,
    cause: named(tree, leading),
    alsoOpen: leading.alsoOpen.map((each) => named(tree, each)),
    nextTest: nextTest(tree, assessment, end, driven(tree, vocabulary)),
    caution: leading.caution,
    because: leading.because,
  };
}

function named(tree: Tree, { cause, probability }: CauseBelief): NamedCause {
  const name =
    cause === UNLISTED
      ? 'something that this tree does not list'
      : plain(tree, tree.causes.find(({ id }) => id === cause)!.name);
  return { cause, name, probability };
}

/**
 * The test that comes next. While the program would go on asking, its next check; at a conclusion, the check that would
 * settle the cause, by whoever can do it; once that has been done, what proves the correction. A coach that has to stay is
 * not sent on the road for any of them, whoever would drive.
 */
function nextTest(
  tree: Tree,
  { leading, nextCheck, options, verdict }: Assessment,
  end: Leaf['end'],
  onTheRoad: ReadonlySet<string>,
): NextTest {
  const held = verdict.verdict === 'stay-put' || driveLine(tree, verdict).halts;
  const allowed = ({ check }: CheckOption): boolean => !held || !onTheRoad.has(check);
  const goesOn = end === 'continue' || end === 'stop';
  if (goesOn && nextCheck) return checkTest(tree, nextCheck.option);
  if (leading.settledBy && allowed(leading.settledBy)) return checkTest(tree, leading.settledBy);
  const proof =
    tree.proofs.find(({ after }) => after === leading.cause) ?? tree.proofs.find(({ after }) => after === '*');
  if (leading.settled && proof)
    return { kind: 'proof', steps: proof.steps.map((step) => plain(tree, step)), wait: plain(tree, proof.wait) };
  const telling = mostTelling(options.filter(allowed));
  if (telling) return checkTest(tree, telling);
  return {
    kind: 'look-further',
    text: 'No check of this tree is left. A licensed mechanic looks further, with these findings in hand.',
  };
}

/** Checks for which the coach is driven on a road. */
function driven(tree: Tree, vocabulary: Vocabulary): ReadonlySet<string> {
  const moving = new Set(vocabulary.access.filter(({ moves }) => moves).map(({ id }) => id));
  return new Set(tree.checks.filter(({ access }) => moving.has(access)).map(({ id }) => id));
}

/** The check that tells most about the causes, whoever can do it: somebody better equipped may take over. */
function mostTelling(options: readonly CheckOption[]): CheckOption | undefined {
  return options
    .filter(({ bits, blocked }) => {
      const elsewhere = blocked?.kind === 'layout' && blocked.known;
      return bits > 0 && blocked?.kind !== 'done' && !elsewhere;
    })
    .sort((a, b) => b.bits - a.bits)[0];
}

function checkTest(tree: Tree, option: CheckOption): NextTest {
  const check: Check = tree.checks.find(({ id }) => id === option.check)!;
  return {
    kind: 'check',
    check: check.id,
    text: plain(tree, check.name),
    who: check.who,
    cautions: check.cautions.map((caution) => plain(tree, caution)),
  };
}
