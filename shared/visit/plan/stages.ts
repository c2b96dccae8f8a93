import { stepMinutes } from './access-steps.ts';
import { URGENCIES } from './events.ts';
import type { AccessStep, PlanHours, PlanLine, Stage } from './plan.ts';

/** What ordering needs of a line. */
type Ordered = Pick<PlanLine, 'id' | 'danger' | 'urgency' | 'minutes' | 'accessSteps' | 'accessMinutes'>;

interface Node {
  readonly step: AccessStep | null;
  readonly depth: number;
  readonly lines: Ordered[];
  readonly below: Map<string, Node>;
}

/** Danger first, then how soon. */
function rank(line: Ordered): number {
  return (line.danger ? 0 : 1) * URGENCIES.length + URGENCIES.indexOf(line.urgency);
}

function nodeRank(node: Node): number {
  return Math.min(...node.lines.map(rank), ...[...node.below.values()].map(nodeRank));
}

/**
 * The order of work: every place is opened once, worked through and closed, the one with the worst danger first. Inside a
 * place danger comes first too, and of equals what needs less opened. A line that needs both ends of an axle stands at each.
 */
export function stagesOf(lines: readonly Ordered[]): Stage[] {
  const root: Node = { step: null, depth: 0, lines: [], below: new Map() };
  for (const line of lines) {
    for (const way of waysTo(line.accessSteps)) {
      let at = root;
      for (const step of way) {
        const next = at.below.get(step.id) ?? { step, depth: at.depth + 1, lines: [], below: new Map<string, Node>() };
        at.below.set(step.id, next);
        at = next;
      }
      at.lines.push(line);
    }
  }
  const stages: Stage[] = [];
  walk(root, stages);
  return stages;
}

/** The way to each innermost step: a step belongs under the last one of another state before it that it shares a way with. */
function waysTo(steps: readonly AccessStep[]): (readonly AccessStep[])[] {
  const levels: AccessStep[][] = [];
  for (const step of steps) {
    const level = levels.at(-1);
    if (level?.[0]?.state === step.state) level.push(step);
    else levels.push([step]);
  }
  const most = Math.max(1, ...levels.map(({ length }) => length));
  return Array.from({ length: most }, (_, i) => levels.map((level) => level[Math.min(i, level.length - 1)]!));
}

function walk(node: Node, into: Stage[]): void {
  const work = [
    ...[...node.lines].map((line) => ({ rank: rank(line), line })),
    ...[...node.below.values()].map((below) => ({ rank: nodeRank(below), below })),
  ].sort((a, b) => a.rank - b.rank || Number('below' in a) - Number('below' in b));
  let open: string[] | null = null;
  // A place that only leads farther in still has to be opened: it is shown once, empty.
  if (node.step !== null && !('line' in (work[0] ?? {}))) into.push(stage(node, []));
  for (const each of work) {
    if ('below' in each) {
      open = null;
      walk(each.below, into);
      continue;
    }
    if (open === null) {
      open = [];
      into.push(stage(node, open));
    }
    open.push(each.line.id);
  }
}

function stage({ step, depth }: Node, lines: readonly string[]): Stage {
  return { step, depth, lines };
}

/** Ids of lines in the order of their stages, each once. */
export function workOrder(stages: readonly Stage[]): string[] {
  return [...new Set(stages.flatMap(({ lines }) => lines))];
}

/** Hours of lines that are done together, each place opened once, beside the same lines one by one. */
export function planHours(lines: readonly Ordered[]): PlanHours {
  const own: [number, number] = [0, 0];
  let alone = 0;
  const users = new Map<string, { readonly step: AccessStep; lines: number }>();
  for (const { minutes, accessSteps, accessMinutes } of lines) {
    own[0] += minutes[0];
    own[1] += minutes[1];
    alone += accessMinutes;
    for (const step of accessSteps) {
      const known = users.get(step.id);
      if (known) known.lines += 1;
      else users.set(step.id, { step, lines: 1 });
    }
  }
  const access = stepMinutes([...users.values()].map(({ step }) => step));
  return {
    own,
    access,
    total: [own[0] + access, own[1] + access],
    apart: [own[0] + alone, own[1] + alone],
    saved: alone - access,
    shared: [...users.values()].filter((each) => each.lines > 1),
  };
}
