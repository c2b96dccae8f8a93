import type { Finding } from '../../inference/index.ts';
import { valuesOf } from '../../knowledge/layout-answer.ts';
import type { LayoutValue } from '../../knowledge/tree.ts';
import { clearResult } from '../clear-result.ts';
import type { Situation } from '../situation.ts';
import type { Answer, Ask, Branch, CompiledTree, Step } from './compiled-tree.ts';

/** How far a compiled tree has been walked. */
export interface Way {
  /** `number` of each node on the way, from the start to where it stands now. */
  readonly nodes: readonly number[];
  /** Findings that the way does not pass: made on another check than the paper asks for there. Ids. */
  readonly beside: readonly string[];
}

/**
 * The way through a compiled tree that the answers of a situation lead along. It ends at a leaf, or at the first step that
 * has no answer yet.
 *
 * @throws {ReadingError} for a finding whose reading no band of its check expects.
 */
export function wayTaken(compiled: CompiledTree, situation: Situation): Way {
  const nodes = [1];
  const passed = new Set<string>();
  for (let node = compiled.nodes[0]; node?.kind === 'step';) {
    const on = branchTaken(node, situation);
    if (!on) break;
    if (node.ask.kind === 'check') passed.add(node.ask.check);
    nodes.push(on.to);
    node = compiled.nodes[on.to - 1];
  }
  return { nodes, beside: situation.findings.filter(({ check }) => !passed.has(check)).map(({ id }) => id) };
}

function branchTaken({ ask, branches }: Step, situation: Situation): Branch | undefined {
  const answer = answerGiven(ask, situation);
  return answer ? branches.find((branch) => isSame(branch.answer, answer)) : undefined;
}

function answerGiven(ask: Ask, situation: Situation): Answer | null {
  switch (ask.kind) {
    case 'triage': {
      const answer = situation.stopAnswers[ask.rule];
      return answer === undefined ? null : { kind: 'stop', answer };
    }
    case 'layout': {
      const value = situation.layout[ask.feature];
      // Paper has one way for "more than one of these", whichever they are.
      if (valuesOf(value).length > 1) return { kind: 'layout', value: togetherOf(ask.feature, situation) };
      if (value !== undefined) return { kind: 'layout', value };
      return situation.layoutNotKnown?.includes(ask.feature) ? { kind: 'layout-unknown' } : null;
    }
    case 'check': {
      const check = situation.tree.checks.find(({ id }) => id === ask.check);
      const finding = situation.findings.findLast((each) => each.check === ask.check);
      if (!check || !finding) return null;
      const result = clearResult(check, finding);
      return result === null ? { kind: 'cannot' } : { kind: 'result', result };
    }
  }
}

function togetherOf(feature: string, { vocabulary }: Situation): readonly LayoutValue[] {
  return vocabulary.layout.find(({ id }) => id === feature)?.together ?? [];
}

function isSame(a: Answer, b: Answer): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/** Answers that lead from the first node of a chain to its last; each node must be a child of the one before. */
export function answersTo(compiled: CompiledTree, chain: readonly number[]): { ask: Ask; answer: Answer }[] {
  return chain.slice(1).flatMap((to, i) => {
    const node = compiled.nodes[chain[i]! - 1];
    const branch = node?.kind === 'step' ? node.branches.find((each) => each.to === to) : undefined;
    return node?.kind === 'step' && branch ? [{ ask: node.ask, answer: branch.answer }] : [];
  });
}

/**
 * What would be known at a node of a compiled tree: the situation that it was compiled from, with the answers of the chain
 * of nodes that leads there. What is opened up is left as it was.
 */
export function situationAlong(from: Situation, compiled: CompiledTree, chain: readonly number[]): Situation {
  return answersTo(compiled, chain).reduce<Situation>((so, { ask, answer }) => {
    if (ask.kind === 'triage' && answer.kind === 'stop')
      return { ...so, stopAnswers: { ...so.stopAnswers, [ask.rule]: answer.answer } };
    if (ask.kind === 'layout' && answer.kind === 'layout')
      return { ...so, layout: { ...so.layout, [ask.feature]: answer.value } };
    if (ask.kind !== 'check') return so;
    const value: Finding['value'] =
      answer.kind === 'result' ? { kind: 'result', result: answer.result } : { kind: 'cant-do' };
    return { ...so, findings: [...so.findings, { id: `paper-${ask.check}`, check: ask.check, value }] };
  }, from);
}
