import { UNLISTED, type Tree } from '../../../shared/knowledge/index.ts';
import type { Vocabulary } from '../../../shared/knowledge/vocabulary.ts';
import type { Move } from '../../../shared/planning/evaluation/index.ts';
import { inSentence } from '../../../shared/planning/index.ts';
import {
  CLOSED,
  DANGERS,
  type Choice,
  type Level,
  type PassLine,
  type Told,
  type Way,
} from '../../../shared/practice/index.ts';
import { causeName, minutesWords, sentence } from '../presenters.ts';

export const LEVEL_WORDS: Readonly<Record<Level, { readonly words: string; readonly about: string }>> = {
  likely: {
    words: 'What it usually is',
    about: 'the likeliest causes, which together are behind most such complaints',
  },
  listed: { words: 'Anything in the list', about: 'by the odds of the tree' },
  any: { words: 'Anything at all', about: 'also what is not in the list; then it is right to hand over' },
};

/** Said wherever simulated results are shown. */
export const JUDGED =
  'Simulated: results are drawn from the tree’s judged tables, not from real coaches. Nothing here touches a visit or is learned from.';

/** What a hidden cause is called once it may be named. */
export function hiddenName(tree: Tree, cause: string): string {
  return cause === UNLISTED ? 'something that is not in the list' : inSentence(causeName(tree, cause));
}

/** An access state by name. */
export function accessName(vocabulary: Vocabulary, id: string): string {
  return id === CLOSED ? 'Close everything up' : (vocabulary.access.find((state) => state.id === id)?.name ?? id);
}

/** A choice in a few words. */
export function choiceWords(choice: Choice, tree: Tree, vocabulary: Vocabulary): string {
  switch (choice.kind) {
    case 'question.asked':
      return tree.stopRules.find(({ id }) => id === choice.rule)?.ask ?? choice.rule;
    case 'check.made':
      return tree.checks.find(({ id }) => id === choice.check)?.name ?? choice.check;
    case 'access.changed':
      return accessName(vocabulary, choice.to);
    case 'suspicion.stated':
      return `Suspected: ${inSentence(causeName(tree, choice.cause))}, ${Math.round(choice.share * 100)} in 100 sure`;
    case 'hint.taken':
      return 'Asked for a hint';
    case 'correction.made':
      return `Corrected: ${inSentence(causeName(tree, choice.cause))}`;
    case 'proof.made':
      return 'Proof';
    case 'proof.skipped':
      return 'Called done without its proof';
    case 'handed-over':
      return 'Handed over';
    case 'given-up':
      return 'Given up';
  }
}

/** What a choice brought to light; empty when nothing. */
export function toldWords(choice: Choice, told: Told, tree: Tree): string {
  switch (told.kind) {
    case 'nothing':
      return '';
    case 'answer':
      return told.answer === 'yes' ? 'Yes: the rule applies' : 'No';
    case 'result': {
      const check = choice.kind === 'check.made' ? tree.checks.find(({ id }) => id === choice.check) : undefined;
      return sentence(check?.results.find(({ id }) => id === told.result)?.label ?? told.result);
    }
    case 'proof':
      return told.gone ? 'The complaint is gone' : 'The complaint is still there: it was not this part';
    case 'danger':
      return DANGERS[told.danger].label || 'Stopped: this can kill';
  }
}

/** What the planner would have done. */
export function moveWords(move: Move, tree: Tree): string {
  switch (move.kind) {
    case 'check':
      return tree.checks.find(({ id }) => id === move.check)?.name ?? move.check;
    case 'correct':
      return `Correct ${inSentence(causeName(tree, move.cause))}`;
    case 'hand-over':
      return 'Hand over';
  }
}

/** A way to set about something. */
export function wayWords(way: Way, opening: readonly string[]): { readonly words: string; readonly about: string } {
  if (way !== 'properly') return { words: DANGERS[way].label, about: '' };
  return {
    words: 'As its cautions ask',
    about: opening.length === 0 ? '' : `first: ${opening.map(inSentence).join(', ')}`,
  };
}

/** One line of what an instructor asked for. */
export function passWords({ asked, limit, was, met }: PassLine): string {
  const at = (what: string): string => `${what}, at most ${limit ?? 0}: ${was ?? 0}`;
  const words: Readonly<Record<PassLine['asked'], string>> = {
    safe: met ? 'Never unsafe' : 'Unsafe: this alone decides',
    found: met ? 'The fault was dealt with' : 'The fault was not found',
    proven: met ? 'The cure is proven' : 'The cure is not proven',
    'wrong-parts': at('Wrong parts'),
    hints: at('Hints'),
    minutes: `Work, at most ${minutesWords(limit ?? 0)}: ${minutesWords(was ?? 0)}`,
  };
  return words[asked];
}
