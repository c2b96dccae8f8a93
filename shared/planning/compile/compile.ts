import type { LayoutAnswer } from '../../knowledge/layout-answer.ts';
import { beliefModel, type Finding } from '../../inference/index.ts';
import type { Check } from '../../knowledge/tree.ts';
import { idsOf, maskOf, move, needOf, vocabularyGraph, type AccessGraph } from '../access.ts';
import { assess } from '../assess.ts';
import { clearResult } from '../clear-result.ts';
import type { Assessment, CheckOption } from '../assessment.ts';
import type { Situation } from '../situation.ts';
import { dangerOpen } from '../verdict.ts';
import type { Answer, Ask, CompiledNode, CompiledTree, Leaf } from './compiled-tree.ts';
import { driveLine, leafOf, plain } from './leaf.ts';
import { resultClasses, stateKey, type ResultClasses } from './state-key.ts';

export interface CompileOptions {
  /** Branches reached less often than this are not followed; 0 follows all, which can be more than a machine holds. */
  readonly threshold?: number;
  /** Share of "cannot be done, or not sure" at each check, 0…1. */
  readonly cannotShare?: number;
  /**
   * What was really answered and found so far. Along that way the tree asks what was looked at, whatever it would have
   * advised, and it follows the way however seldom it is taken.
   */
  readonly walked?: Pick<Situation, 'findings' | 'stopAnswers'>;
  /** Told after every node, for whoever waits: how many are worked out, and how many wait to be. */
  readonly onProgress?: (made: number, waiting: number) => void;
}

/** Two in a hundred: forty to seventy steps a tree, some fifty pages; half of it doubles the paper and saves few. Judgement. */
export const PRINT_THRESHOLD = 0.02;
/** How often a check cannot be done, or the person cannot say. No figure exists; judgement. */
export const CANNOT_SHARE = 0.02;

/**
 * The decision tree that the program would walk from a situation, ready to be printed: at each step the check that
 * `assess` advises, with a branch for every declared result and one for "cannot be done, or not sure". Different ways to
 * the same state of belief meet again. Safety questions that are open come first.
 *
 * @param situation  where the paper starts; for a whole complaint nothing answered and nothing found.
 * @throws {RangeError} when an option is not a number from 0 to 1.
 * @throws {ReadingError} for a finding whose reading no band of its check expects.
 */
export function compileTree(situation: Situation, options: CompileOptions = {}): CompiledTree {
  const threshold = share('threshold', options.threshold ?? PRINT_THRESHOLD);
  const cannotShare = share('cannotShare', options.cannotShare ?? CANNOT_SHARE);
  const { tree } = situation;
  const walked = options.walked && oneACheck(options.walked);
  const start: Draft = { situation, skipped: [], reach: 1, behindStop: false, branches: [], passed: walked ? 0 : null };
  const paper: Paper = {
    threshold,
    cannotShare,
    graph: vocabularyGraph(situation.vocabulary.access),
    classes: resultClasses(tree),
    walked: walked ?? { findings: [], stopAnswers: {} },
  };
  let level = [start];
  let made = 0;
  while (level.length > 0) {
    const next = new Map<string, Draft>();
    for (const [i, draft] of level.entries()) {
      develop(draft, paper, next);
      made += 1;
      options.onProgress?.(made, level.length - 1 - i + next.size);
    }
    level = [...next.values()];
  }
  const nodes = inReadingOrder(start);
  return {
    complaint: tree.id,
    title: tree.title,
    version: tree.version,
    who: situation.who,
    layout: situation.layout,
    nodes,
    threshold,
    cannotShare,
    cutOff: nodes.reduce((sum, node) => (node.kind === 'leaf' && node.end === 'continue' ? sum + node.reach : sum), 0),
  };
}

/** Paper asks each check once: of findings at several places the latest counts. */
function oneACheck({ findings, stopAnswers }: Walked): Walked {
  return {
    findings: findings.filter(({ check }, i) => findings.findLastIndex((each) => each.check === check) === i),
    stopAnswers,
  };
}

function share(name: string, value: number): number {
  if (value >= 0 && value <= 1) return value;
  throw new RangeError(`compileTree: ${name} is ${value}; it is a share, from 0 to 1. Leave it out for the usual one.`);
}

type Walked = Pick<Situation, 'findings' | 'stopAnswers'>;

/** What holds for the whole tree. */
interface Paper {
  readonly walked: Walked;
  readonly threshold: number;
  readonly cannotShare: number;
  readonly graph: AccessGraph;
  readonly classes: ResultClasses;
}

/** A node in the making. All ways to a state have the same length, so its reach is complete when its level is developed. */
interface Draft {
  readonly situation: Situation;
  readonly skipped: readonly string[];
  reach: number;
  /** A stop rule was just answered yes or not sure. */
  readonly behindStop: boolean;
  /** On the way really taken: how many of its findings lie behind; null elsewhere. */
  readonly passed: number | null;
  assessment?: Assessment;
  ask?: Ask;
  end?: Leaf['end'];
  branches: { readonly answer: Answer; readonly label: string; readonly share: number; readonly to: Draft }[];
}

/** Assesses a draft as the program would, and puts what may come of it into the next level. */
function develop(draft: Draft, paper: Paper, next: Map<string, Draft>): void {
  const { situation, skipped, reach } = draft;
  const { tree, vocabulary } = situation;
  const assessment = assess(situation);
  draft.assessment = assessment;
  const looked = draft.passed === null ? undefined : paper.walked.findings[draft.passed];
  const step = (looked && stepWalked(assessment, looked)) ?? stepOf(assessment, skipped);
  if (draft.behindStop) draft.end = 'stop';
  else if (step.kind === 'end') draft.end = step.end;
  else if (reach < paper.threshold && !looked) draft.end = 'continue';
  if (draft.end !== undefined || step.kind === 'end') return;

  if (step.kind === 'triage') {
    const rule = tree.stopRules.find(({ id }) => id === step.rule)!;
    draft.ask = { kind: 'triage', rule: rule.id, text: plain(tree, rule.ask) };
    for (const answer of ['yes', 'not-sure', 'no'] as const) {
      const then = { ...situation, stopAnswers: { ...situation.stopAnswers, [rule.id]: answer } };
      const label = answer === 'not-sure' ? 'not sure' : answer;
      const given = draft.passed !== null && paper.walked.stopAnswers[rule.id] === answer;
      to({ kind: 'stop', answer }, label, Number(answer === 'no'), then, {
        behindStop: answer !== 'no',
        passed: given ? draft.passed : null,
      });
    }
  } else if (step.kind === 'layout') {
    const feature = vocabulary.layout.find(({ id }) => id === step.feature)!;
    draft.ask = { kind: 'layout', feature: feature.id, text: plain(tree, feature.ask) };
    // Nothing says how common each kind of coach is: all the same.
    const answers: readonly { readonly value: LayoutAnswer; readonly label: string }[] = feature.together
      ? [...feature.values, { value: feature.together, label: 'more than one of these' }]
      : feature.values;
    const each = (1 - paper.cannotShare) / answers.length;
    for (const { value, label } of answers)
      to({ kind: 'layout', value }, label, each, {
        ...situation,
        layout: { ...situation.layout, [feature.id]: value },
      });
    to({ kind: 'layout-unknown' }, 'not known', paper.cannotShare, situation, { unknown: [...skipped, feature.id] });
  } else {
    const { option, reason } = step;
    const check = tree.checks.find(({ id }) => id === option.check)!;
    draft.ask = {
      kind: 'check',
      check: check.id,
      text: plain(tree, check.name),
      cautions: check.cautions.map((caution) => plain(tree, caution)),
      minutes: option.minutes,
      accessMinutes: option.accessMinutes,
      reason,
    };
    const open = accessAfter(situation, check, paper.graph);
    const seen = looked?.check === check.id ? looked : undefined;
    const was = seen ? clearResult(check, seen) : null;
    const passed = (draft.passed ?? 0) + 1;
    check.results.forEach(({ id, label }, r) => {
      const taken = seen !== undefined && was === id;
      const value: Finding['value'] = taken ? seen.value : { kind: 'result', result: id };
      const then = { ...found(situation, check, value), access: open };
      const part = (1 - paper.cannotShare) * option.resultShares[r]!;
      to({ kind: 'result', result: id }, label, part, then, taken ? { passed } : {});
    });
    to(
      { kind: 'cannot' },
      'cannot be done, or not sure',
      paper.cannotShare,
      found(situation, check, seen && was === null ? seen.value : { kind: 'cant-do' }),
      seen && was === null ? { passed } : {},
    );
  }

  function to(
    answer: Answer,
    label: string,
    part: number,
    then: Situation,
    {
      unknown = skipped,
      behindStop = false,
      passed = null,
    }: { readonly unknown?: readonly string[]; readonly behindStop?: boolean; readonly passed?: number | null } = {},
  ): void {
    const state = stateKey(then, paper.classes, unknown, dangerOpen(then, beliefModel(tree, then.layout)));
    // The way taken stays apart: elsewhere the same state may be asked something else.
    const key = passed === null ? state : `taken ${state}`;
    const known = next.get(key);
    const child: Draft = known ?? { situation: then, skipped: unknown, reach: 0, behindStop, passed, branches: [] };
    child.reach += reach * part;
    next.set(key, child);
    draft.branches.push({ answer, label, share: part, to: child });
  }
}

type NextStep =
  | { readonly kind: 'triage'; readonly rule: string }
  | { readonly kind: 'layout'; readonly feature: string }
  | { readonly kind: 'check'; readonly option: CheckOption; readonly reason: string }
  | { readonly kind: 'end'; readonly end: 'conclude' | 'hand-over' };

/** The check that was really done next; nothing while a safety question is open. */
function stepWalked({ advice, options }: Assessment, { check }: Finding): NextStep | undefined {
  const option = advice.kind === 'triage' ? undefined : options.find((each) => each.check === check);
  return option && { kind: 'check', option, reason: 'This is what was looked at next on this coach.' };
}

/** What the program does next; a layout question that nobody could answer is passed over for the best check. */
function stepOf({ advice, nextCheck }: Assessment, skipped: readonly string[]): NextStep {
  if (advice.kind === 'conclude' || advice.kind === 'hand-over') return { kind: 'end', end: advice.kind };
  if (advice.kind !== 'layout' || !skipped.includes(advice.feature)) return advice;
  return nextCheck ? { kind: 'check', ...nextCheck } : { kind: 'end', end: 'hand-over' };
}

function found(situation: Situation, check: Check, value: Finding['value']): Situation {
  return {
    ...situation,
    findings: [...situation.findings, { id: `paper-${check.id}`, check: check.id, value }],
  };
}

/** What is open once a check has been done; one that could not be done leaves everything as it was. */
function accessAfter({ vocabulary, access }: Situation, check: Check, graph: AccessGraph): string[] {
  const need = needOf(graph, vocabulary.access, check.access);
  return idsOf(graph, move(graph, maskOf(graph, access), need).state);
}

/** Depth first, branches in order, each node once. */
function inReadingOrder(start: Draft): CompiledNode[] {
  const order: Draft[] = [];
  const numbers = new Map<Draft, number>();
  const visit = (draft: Draft): void => {
    if (numbers.has(draft)) return;
    order.push(draft);
    numbers.set(draft, order.length);
    for (const branch of draft.branches) visit(branch.to);
  };
  visit(start);
  return order.map((draft, i): CompiledNode => {
    const { tree } = draft.situation;
    const assessment = draft.assessment!;
    const reached = { number: i + 1, reach: draft.reach, drive: driveLine(tree, assessment.verdict) };
    if (draft.end !== undefined) return { ...reached, ...leafOf(draft.situation, assessment, draft.end) };
    return {
      ...reached,
      kind: 'step',
      ask: draft.ask!,
      branches: draft.branches.map(({ to, ...branch }) => ({ ...branch, to: numbers.get(to)! })),
    };
  });
}
