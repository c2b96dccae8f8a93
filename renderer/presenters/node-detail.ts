import { inHundred } from '../../shared/inference/index.ts';
import { situationAlong, type CompiledNode, type CompiledTree, type Situation } from '../../shared/planning/index.ts';
import { sentence } from './presenters.ts';
import { whatItWouldMean } from './would-mean.ts';

/** One fork of a step: what may be answered, how often, and what it would mean. */
export interface Fork {
  readonly label: string;
  /** In 100, or why there is no figure. */
  readonly share: string;
  readonly then: string;
}

/**
 * What each answer at a step of the drawn tree would mean.
 *
 * @param chain  compiled nodes from the start to the step.
 */
export function forksOf(from: Situation, compiled: CompiledTree, chain: readonly number[]): readonly Fork[] {
  const node = compiled.nodes[chain.at(-1)! - 1];
  if (node?.kind !== 'step') return [];
  const then = node.ask.kind === 'check' ? whatItWouldMean(situationAlong(from, compiled, chain), node.ask.check) : [];
  return node.branches.map(({ label, share, answer, to }, i) => ({
    label: sentence(label),
    share: answer.kind === 'stop' ? 'not known' : inHundred(share),
    then: [then[i]?.then, nextWords(compiled.nodes[to - 1])].filter(Boolean).join('; '),
  }));
}

/** What comes next on paper. */
function nextWords(node: CompiledNode | undefined): string {
  if (!node) return '';
  if (node.kind === 'step') return `then: ${node.ask.text}`;
  return { stop: 'stop here', conclude: 'conclusion', 'hand-over': 'hand over', continue: 'continue in the program' }[
    node.end
  ];
}
