import { hierarchy, tree as tidyTree, type HierarchyPointNode } from 'd3-hierarchy';
import { inHundred } from '../../shared/inference/index.ts';
import {
  outlineOf,
  shortName,
  type Branch,
  type CompiledNode,
  type CompiledTree,
  type OutlineEntry,
} from '../../shared/planning/index.ts';
import { sentence } from './presenters.ts';

/** How a node is drawn. `see` stands for a node that is drawn elsewhere. */
export type DrawnKind = 'triage' | 'layout' | 'check' | 'conclude' | 'hand-over' | 'continue' | 'stop' | 'see';

export interface DrawnNode {
  readonly key: string;
  /** Of the compiled node, and as it is numbered in the outline and on paper. */
  readonly node: number;
  readonly number: string;
  readonly kind: DrawnKind;
  /** Answer that leads here with its share in 100, fitted to the drawing; empty at the start. */
  readonly answer: string;
  readonly title: string;
  /** Everything the node says, for a screen reader and for the search. */
  readonly words: string;
  readonly x: number;
  readonly y: number;
  readonly level: number;
  /** Thickness of the branch that leads here: how often people get there. */
  readonly thick: number;
  readonly taken: boolean;
  /** Where the work stands. */
  readonly here: boolean;
  readonly parent: DrawnNode | null;
  readonly children: readonly DrawnNode[];
  /** Ends that lie behind a folded node; 0 for one that is open or has nothing behind it. */
  readonly folded: number;
  /** Compiled nodes from the start to here. */
  readonly chain: readonly number[];
}

export interface DrawnTree {
  readonly width: number;
  readonly height: number;
  /** In reading order. */
  readonly nodes: readonly DrawnNode[];
}

/** Distances in the drawing, px at full size. */
export const COLUMN = 262;
export const ROW = 50;
/** Length of the line that a node's texts stand on. */
export const SHELF = 196;
const MARGIN = 32;
const LETTERS = 27;
/** Thickness of a branch taken by everybody, and the least that the way taken has. */
const THICKEST = 9;
const TAKEN = 5;

interface Sketch {
  readonly to: number;
  readonly branch: Branch | null;
  readonly see: boolean;
  /** Place in the drawing: "1.2.1" is the first answer after the second answer of the start. */
  readonly key: string;
  readonly ends: number;
  readonly children: readonly Sketch[];
}

/**
 * The compiled tree as a diagram from left to right. A node that several ways lead to is drawn once, on the way taken
 * where that leads there; the other ways point to its number.
 *
 * @param way     `number` of the nodes passed so far; empty when nothing was.
 * @param isOpen  whether what follows a node is drawn, by the node's key; the others are folded.
 * @source Layout: tidy tree of Reingold and Tilford 1981 as d3-hierarchy has it.
 */
export function drawnTree(
  compiled: CompiledTree,
  way: readonly number[],
  isOpen: (key: string) => boolean = () => true,
): DrawnTree {
  const numbers = numbersOf(outlineOf(compiled));
  const before = new Map(way.slice(1).map((node, i) => [node, way[i]!]));
  const shown = new Set<number>();
  const root = hierarchy<Sketch>(sketch(1, null, 0, '1'), ({ key, children }) => (isOpen(key) ? [...children] : []));
  const placed = tidyTree<Sketch>()
    .nodeSize([ROW, COLUMN])
    .separation(() => 1)(root);
  let top = Infinity;
  let bottom = -Infinity;
  placed.each(({ x }) => {
    top = Math.min(top, x);
    bottom = Math.max(bottom, x);
  });
  const nodes: DrawnNode[] = [];
  draw(placed, null);
  return {
    width: (placed.height + 1) * COLUMN + 2 * MARGIN,
    height: bottom - top + 2 * MARGIN + ROW,
    nodes,
  };

  function sketch(to: number, branch: Branch | null, from: number, key: string): Sketch {
    const elsewhere = before.get(to);
    const node = compiled.nodes[to - 1]!;
    if (shown.has(to) || (elsewhere !== undefined && elsewhere !== from))
      return { to, branch, see: true, key, ends: 0, children: [] };
    shown.add(to);
    const children =
      node.kind === 'step' ? node.branches.map((each, i) => sketch(each.to, each, to, `${key}.${i + 1}`)) : [];
    const ends = children.reduce((sum, each) => sum + each.ends, Number(node.kind === 'leaf'));
    return { to, branch, see: false, key, ends, children };
  }

  function draw(point: HierarchyPointNode<Sketch>, parent: DrawnNode | null): DrawnNode {
    const { to, branch, see, key, ends, children: behind } = point.data;
    const folded = behind.length > 0 && !point.children ? ends : 0;
    const node = compiled.nodes[to - 1]!;
    const at = way.indexOf(to);
    const taken = !see && at >= 0;
    const here = taken && at === way.length - 1;
    const number = numbers.get(to) ?? '';
    const children: DrawnNode[] = [];
    const drawn: DrawnNode = {
      key,
      node: to,
      number,
      kind: see ? 'see' : node.kind === 'leaf' ? node.end : node.ask.kind,
      answer: branch ? answerText(branch) : '',
      title: fitted(see ? `goes on at ${number}` : titleOf(node)),
      words: wordsOf(node, branch, number, see, taken, here),
      folded,
      x: MARGIN + point.y,
      y: MARGIN + ROW / 2 + point.x - top,
      level: point.depth + 1,
      thick: Math.max(
        taken ? TAKEN : 1.5,
        THICKEST * (parent && branch ? compiled.nodes[parent.node - 1]!.reach * branch.share : 1),
      ),
      taken,
      here,
      parent,
      children,
      chain: [...(parent?.chain ?? []), to],
    };
    nodes.push(drawn);
    for (const child of point.children ?? []) children.push(draw(child, drawn));
    return drawn;
  }
}

/**
 * Keys of the nodes that are open at first: the safety questions, the way taken, and the step where it stands.
 */
export function openAtFirst({ nodes }: DrawnTree): Set<string> {
  const open = new Set(nodes.filter(({ kind, taken }) => kind === 'triage' || taken).map(({ key }) => key));
  const start = nodes.find(({ here }) => here) ?? nodes.find(({ kind }) => kind !== 'triage');
  if (start) open.add(start.key);
  return open;
}

/** Compiled node → number of the entry under which it is printed. */
function numbersOf(whole: OutlineEntry): Map<number, string> {
  const numbers = new Map<number, string>();
  const add = ({ node, number, goesOnAt, entries }: OutlineEntry): void => {
    if (goesOnAt === undefined) numbers.set(node, number);
    entries.forEach(add);
  };
  add(whole);
  return numbers;
}

function answerText({ answer, label, share }: Branch): string {
  if (answer.kind === 'stop') return fitted(label);
  const figure = inHundred(share);
  return `${fitted(label, LETTERS - figure.length - 2)}, ${figure}`;
}

function titleOf(node: CompiledNode): string {
  if (node.kind === 'step') return sentence(shortName(node.ask.text));
  const cause = `${shortName(node.cause.name)} ${inHundred(node.cause.probability)}`;
  switch (node.end) {
    case 'conclude':
      return sentence(cause);
    case 'hand-over':
      return `hand over: ${cause}`;
    case 'stop':
      return 'stop here';
    case 'continue':
      return `goes on: ${cause}`;
  }
}

const KIND_WORDS = {
  conclude: 'Probable cause',
  'hand-over': 'Hand over; probable cause',
  continue: 'Continue in the program; so far',
  stop: 'Stop here; so far',
} as const;

function wordsOf(
  node: CompiledNode,
  branch: Branch | null,
  number: string,
  see: boolean,
  taken: boolean,
  here: boolean,
): string {
  const share = branch && branch.answer.kind !== 'stop' ? `, ${inHundred(branch.share)} in 100` : '';
  const answer = branch ? `If ${branch.label}${share}: ` : '';
  const marks = [here ? 'The work stands here.' : taken ? 'On the way taken.' : ''];
  if (see) return `${answer}goes on at ${number}.`;
  const said =
    node.kind === 'step'
      ? `${node.ask.text}.`
      : `${KIND_WORDS[node.end]}: ${node.cause.name}, ${inHundred(node.cause.probability)} in 100.`;
  return [`${answer}${number} ${said}`, ...marks].filter(Boolean).join(' ');
}

/** A text that fits its place in the drawing; the whole text stands in the detail. */
function fitted(text: string, letters = LETTERS): string {
  return text.length <= letters ? text : `${text.slice(0, letters - 1).trimEnd()}…`;
}

/** Outline of a branch from its parent's shelf to the node. */
export function branchPath({ x, y, parent }: DrawnNode): string {
  if (!parent) return `M${x} ${y}H${x + SHELF}`;
  const from = parent.x + SHELF;
  const middle = (from + x) / 2;
  return `M${from} ${parent.y}C${middle} ${parent.y} ${middle} ${y} ${x} ${y}H${x + SHELF}`;
}

/** Node that an arrow key leads to: right to the first answer (the one taken, where there is one), left back, up and down among all at the same distance from the start. */
export function neighbour(drawing: DrawnTree, from: DrawnNode, key: 'left' | 'right' | 'up' | 'down'): DrawnNode {
  if (key === 'left') return from.parent ?? from;
  if (key === 'right') return from.children.find(({ taken }) => taken) ?? from.children[0] ?? from;
  const column = drawing.nodes.filter(({ level }) => level === from.level);
  return column[column.indexOf(from) + (key === 'down' ? 1 : -1)] ?? from;
}
