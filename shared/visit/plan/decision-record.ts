import type { Verdict } from '../../knowledge/tree.ts';
import type { PlanLine } from './plan.ts';
import type { SaidOfLine } from './state.ts';

const UNTIL: Readonly<Record<Verdict, string>> = {
  'stay-put': 'that until it is done the coach stays where it stands',
  'creep-to-safe-place': 'that until it is done the coach goes no farther than to a safe place nearby',
  'drive-and-book': 'that it is booked now and driven gently until then',
};

/**
 * A danger line that was declined or put off, in words to the person who decided; undefined for any other. Nothing in it that
 * the line does not say.
 */
export function decisionRecord(
  line: Pick<PlanLine, 'danger' | 'plain' | 'title' | 'meanwhile' | 'place'>,
  decision: NonNullable<SaidOfLine['decision']>,
): string | undefined {
  if (!line.danger || decision.decision === 'agreed') return undefined;
  const what = `${line.title}${line.place === null ? '' : ` (${line.place})`}`;
  const plain =
    line.plain.trim() === ''
      ? ''
      : ` ${line.plain.trim().charAt(0).toUpperCase()}${line.plain
          .trim()
          .slice(1)
          .replace(/[.\s]*$/, '.')}`;
  const did = decision.decision === 'declined' ? 'decided against it' : 'put it off';
  const who = decision.who.trim() === '' ? 'You' : `You (${decision.who.trim()})`;
  const words = decision.words.trim() === '' ? '' : ` Your words: “${decision.words.trim()}”`;
  return `${what}.${plain} You were told that this can hurt people, and ${UNTIL[line.meanwhile.verdict]}. ${who} ${did}.${words}`;
}
