import type { Answer, Ask, CompiledTree, Leaf, Step } from '../../../../shared/planning/index.ts';
import { assess, defaultCosts, type Assessment, type Situation } from '../../../../shared/planning/index.ts';
import { draw } from '../../../../shared/planning/evaluation/index.ts';
import type { Role, Tree, Vocabulary } from '../../../../shared/knowledge/index.ts';
import {
  EVENT_VERSION,
  newEventId,
  replay,
  situationOf,
  type VisitEvent,
  type VisitEventBody,
} from '../../../../shared/visit/index.ts';

/** A complaint with nothing answered and nothing found. */
export function blank(tree: Tree, vocabulary: Vocabulary, who: Role, more: Partial<Situation> = {}): Situation {
  return {
    tree,
    vocabulary,
    who,
    layout: {},
    findings: [],
    stopAnswers: {},
    corrections: [],
    access: [],
    costs: defaultCosts(who),
    ...more,
  };
}

/** An answer that was given on paper. */
export interface Answered {
  readonly ask: Ask;
  readonly answer: Answer;
}

const HASH = 'b'.repeat(64);

/** The program's own assessment after answers given on paper: through the log of a visit, its machines and `assess`. */
export function throughTheProgram(
  tree: Tree,
  vocabulary: Vocabulary,
  who: Role,
  path: readonly Answered[],
): Assessment {
  const bodies: VisitEventBody[] = [
    { kind: 'visit.opened', coach: 'Invented coach', demo: true },
    { kind: 'person.set', who },
    { kind: 'complaint.opened', complaint: 'c', tree: tree.id, treeHash: HASH, words: '' },
    ...path.flatMap(({ ask, answer }, i): VisitEventBody[] => {
      if (ask.kind === 'triage' && answer.kind === 'stop')
        return [{ kind: 'stop.answered', complaint: 'c', rule: ask.rule, answer: answer.answer }];
      if (ask.kind === 'layout')
        return answer.kind === 'layout' ? [{ kind: 'layout.set', feature: ask.feature, value: answer.value }] : [];
      if (ask.kind !== 'check') throw new Error(`${answer.kind} is no answer to ${ask.kind}`);
      const value = answer.kind === 'result' ? answer : ({ kind: 'cant-do' } as const);
      return [
        { kind: 'check.chosen', complaint: 'c', check: ask.check },
        { kind: 'finding.recorded', complaint: 'c', finding: `f${i}`, check: ask.check, value },
        { kind: 'halt.acknowledged', complaint: 'c' },
      ];
    }),
  ];
  const events = bodies.map((body, i): VisitEvent => ({
    id: newEventId(i, i, 'test'),
    v: EVENT_VERSION,
    at: '2020-01-01T00:00:00Z',
    by: '',
    ...body,
  }));
  const visit = replay(events, new Map([[HASH, { tree, vocabulary }]]));
  return assess(situationOf(visit, visit.complaints[0]!, tree, vocabulary));
}

/** A path through a compiled tree, likely branches mostly, any branch sometimes. */
export function walkPaper(
  compiled: CompiledTree,
  random: () => number,
): { steps: readonly Step[]; path: Answered[]; leaf: Leaf } {
  const steps: Step[] = [];
  const path: Answered[] = [];
  let node = compiled.nodes[0]!;
  while (node.kind === 'step') {
    const { branches, ask } = node;
    const any = random() < (ask.kind === 'triage' ? 0.02 : 0.3);
    const shares = branches.map(({ share }) => (any ? 1 / branches.length : share));
    const branch = branches[draw(shares, random)]!;
    steps.push(node);
    path.push({ ask: node.ask, answer: branch.answer });
    node = compiled.nodes[branch.to - 1]!;
  }
  return { steps, path, leaf: node };
}
