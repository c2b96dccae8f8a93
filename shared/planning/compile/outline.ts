import { inHundred } from '../../inference/words.ts';
import type { Role, Verdict } from '../../knowledge/tree.ts';
import type { Ask, Branch, CompiledTree, Leaf, NamedCause, NextTest, Step } from './compiled-tree.ts';

/** One numbered entry of the outline: an answer and what follows from it. */
export interface OutlineEntry {
  /** "1.3.2": third answer of step 1, second answer after that. Safety questions are S1, S2 …; the whole has none. */
  readonly number: string;
  /** `number` of the compiled node that the entry stands for or sends the reader to; 0 for the whole. */
  readonly node: number;
  /** 0 for the numbered entries at the start, one more with every answer. */
  readonly level: number;
  readonly reach: number;
  /** Texts in the order in which they have to be read: verdict in force and cautions before the check. */
  readonly lines: readonly string[];
  /** What comes after each answer; empty at the end of a path and where another entry goes on. */
  readonly entries: readonly OutlineEntry[];
  /** Number of the entry that goes on from here. */
  readonly goesOnAt?: string;
}

/**
 * The compiled tree as nested numbered entries, for a screen reader and for printing. The entry returned is the whole: its
 * lines are what has to be said first, its entries the safety questions one after the other and then the first step.
 */
export function outlineOf(compiled: CompiledTree): OutlineEntry {
  const shown = new Map<number, string>();
  const entries: OutlineEntry[] = [];
  let number = 1;
  for (let node = compiled.nodes[0]!; node.kind === 'step' && node.ask.kind === 'triage';) {
    const { reach, branches } = node;
    const here = `S${entries.length + 1}`;
    const on = branches.find(({ answer }) => answer.kind === 'stop' && answer.answer === 'no')!;
    const then = compiled.nodes[on.to - 1]!;
    const goesOnAt = then.kind === 'step' && then.ask.kind === 'triage' ? `S${entries.length + 2}` : '1';
    shown.set(on.to, goesOnAt);
    entries.push({
      number: here,
      node: number,
      level: 0,
      reach,
      lines: stepLines(node),
      entries: answersTo(node, here, 0),
    });
    node = then;
    number = on.to;
  }
  shown.delete(number);
  entries.push(entryOf(number, '1', 0, null));
  return { number: '', node: 0, level: -1, reach: 1, lines: headLines(compiled), entries };

  function answersTo({ branches }: Step, path: string, level: number): OutlineEntry[] {
    return branches.map((branch, i) => entryOf(branch.to, `${path}.${i + 1}`, level + 1, branch));
  }

  function entryOf(to: number, path: string, level: number, from: Branch | null): OutlineEntry {
    const node = compiled.nodes[to - 1]!;
    const answer = from ? [answerLine(from)] : [];
    const base = { number: path, node: to, level, reach: node.reach };
    const goesOnAt = shown.get(to);
    if (goesOnAt !== undefined) return { ...base, lines: [...answer, `Go on at ${goesOnAt}.`], entries: [], goesOnAt };
    shown.set(to, path);
    if (node.kind === 'leaf') return { ...base, lines: [...answer, ...leafLines(node)], entries: [] };
    return { ...base, lines: [...answer, ...stepLines(node)], entries: answersTo(node, path, level) };
  }
}

/** The outline as text: one line a text, indented by two blanks a level. Ends with a line break. */
export function outlineText(compiled: CompiledTree): string {
  const whole = outlineOf(compiled);
  const lines = [...whole.lines];
  const write = ({ number, level, lines: texts, entries }: OutlineEntry): void => {
    const indent = '  '.repeat(level);
    texts.forEach((text, i) => lines.push(i === 0 ? `${indent}${number} ${text}` : `${indent}  ${text}`));
    entries.forEach(write);
  };
  whole.entries.forEach(write);
  return `${lines.join('\n')}\n`;
}

const ROLE: Readonly<Record<Role, string>> = {
  'owner-no-tools': 'an owner without tools',
  'owner-basic-tools': 'an owner with basic tools',
  apprentice: 'an apprentice',
  mechanic: 'a mechanic',
};

const VERDICT: Readonly<Record<Verdict, string>> = {
  'stay-put': 'Stay put.',
  'creep-to-safe-place': 'Creep to a safe place, no farther.',
  'drive-and-book': 'Drive gently and book a workshop.',
};

/** Causes named beside the leading one; the program shows the others. */
const MOST_NAMED = 3;

/** What has to be said before the first step: for whom, how much is not on the paper, who has the last word. */
function headLines(compiled: CompiledTree): readonly string[] {
  const { title, who, cutOff, threshold, cannotShare } = compiled;
  return [
    `${title}: for ${ROLE[who]}.`,
    'Nothing here says that the coach is in order. Local law and a licensed mechanic have the last word.',
    'Likelihoods are judgement. Shares hold for coaches on which no stop rule applies.',
    cutOff > 0
      ? `${inHundred(cutOff)} in 100 coaches leave the paper where it says “continue in the program”: paths taken by fewer than ${inHundred(threshold)} in 100 are not printed further.`
      : 'Every path is printed to its end.',
    `At each check ${inHundred(cannotShare)} in 100 are taken to be unable to do it or to say.`,
  ];
}

function answerLine({ answer, label, share }: Branch): string {
  if (answer.kind === 'stop') return `If ${label}:`;
  return `If ${label} (${inHundred(share)} in 100):`;
}

function stepLines({ drive, ask }: Step): string[] {
  return [...(drive.halts ? [driveText(drive)] : []), ...askLines(ask)];
}

function driveText({ verdict, because, doNow }: Step['drive']): string {
  return `${VERDICT[verdict]} ${because} ${doNow}`;
}

function askLines(ask: Ask): string[] {
  switch (ask.kind) {
    case 'triage':
      return [`Safety question: ${ask.text}`];
    case 'layout':
      return [`How the coach is built: ${ask.text}`];
    case 'check': {
      const access = ask.accessMinutes > 0 ? `, and ${ask.accessMinutes} to get there and back` : '';
      return [
        ...cautionLines('Caution', ask.cautions),
        `Check: ${sentence(ask.text)} ${ask.minutes} min${access}. ${ask.reason}`,
      ];
    }
  }
}

const END: Readonly<Record<Leaf['end'], string>> = {
  conclude: 'Conclusion.',
  'hand-over': 'Hand over.',
  continue: 'Continue in the program.',
  stop: 'Stop here.',
};

function leafLines(leaf: Leaf): string[] {
  const { end, drive, caution, cause, alsoOpen } = leaf;
  const named = alsoOpen.slice(0, MOST_NAMED).map(causeText).join('; ');
  const more = alsoOpen.length > MOST_NAMED ? `; ${alsoOpen.length - MOST_NAMED} more` : '';
  const open = named ? ` Also open: ${named}${more}.` : '';
  return [
    `${END[end]} ${end === 'continue' && !drive.halts ? VERDICT[drive.verdict] : driveText(drive)}`,
    `Caution: ${caution}`,
    `Probable cause: ${causeText(cause)}.${open}`,
    ...testLines(leaf.nextTest),
  ];
}

function causeText({ name, probability }: NamedCause): string {
  return `${name} (${inHundred(probability)} in 100)`;
}

function testLines(test: NextTest): string[] {
  switch (test.kind) {
    case 'check':
      return [
        ...cautionLines('Before the next test', test.cautions),
        `Next test: ${sentence(test.text)} By ${ROLE[test.who]} or somebody more qualified.`,
      ];
    case 'proof':
      return [`Next test, after the correction: ${test.steps.map(sentence).join(' ')} ${test.wait}`.trim()];
    case 'look-further':
      return [`Next test: ${test.text}`];
  }
}

function cautionLines(word: string, cautions: readonly string[]): string[] {
  return cautions.length > 0 ? [`${word}: ${cautions.map(sentence).join(' ')}`] : [];
}

function sentence(text: string): string {
  return /[.?!]$/.test(text) ? text : `${text}.`;
}
