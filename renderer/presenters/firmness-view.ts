import {
  factorWords,
  firmnessOf,
  inHundred,
  NO_NUMBER,
  type Deviation,
  type JudgedNumber,
} from '../../shared/inference/index.ts';
import type { Tree } from '../../shared/knowledge/index.ts';
import { beliefNow, inSentence, type CheckOption, type Situation } from '../../shared/planning/index.ts';
import { causeName, effortWords, sentence } from './presenters.ts';

/** How firm the leading cause is, in words. */
export interface FirmnessView {
  /** The numbers nearest to changing it, nearest first. */
  readonly numbers: readonly { readonly what: string; readonly needs: string; readonly then: string }[];
  /** Said instead when there is none. */
  readonly none: string | null;
  /** The finding it hangs on most; null when none speaks for it. */
  readonly hangsOn: {
    readonly finding: string;
    readonly check: string;
    /** What would be believed without it. */
    readonly without: string;
    /** What looking again would cost. */
    readonly again: string;
  } | null;
}

/** How firm the conclusion of a situation is. */
export function firmnessView(situation: Situation, options: readonly CheckOption[]): FirmnessView {
  const { tree } = situation;
  const { model, findings, excluded } = beliefNow(situation);
  const { cause, nearest, hangsOn } = firmnessOf(tree, model, findings, excluded);
  const name = (id: string): string => inSentence(causeName(tree, id));
  return {
    numbers: nearest.map((each) => ({
      what: sentence(numberWords(tree, each.number)),
      needs: `${factorWords(each.factor)}: from ${figure(each, each.value)} to ${figure(each, each.needed)}`,
      then: `Then ${name(each.leader)} leads.`,
    })),
    none: nearest.length === 0 ? NO_NUMBER : null,
    hangsOn: hangsOn && {
      finding: hangsOn.finding,
      check: tree.checks.find(({ id }) => id === hangsOn.check)?.name ?? hangsOn.check,
      without:
        hangsOn.leaderWithout === cause
          ? `Without it ${name(cause)} would still lead, with ${inHundred(hangsOn.without)} in 100.`
          : `Without it ${name(cause)} would have ${inHundred(hangsOn.without)} in 100, and ${name(hangsOn.leaderWithout)} would lead.`,
      again: againWords(options.find(({ check }) => check === hangsOn.check)),
    },
  };
}

function againWords(option: CheckOption | undefined): string {
  return option ? `Looking again costs ${effortWords(option)}.` : 'It cannot be looked at again in this tree.';
}

/** Which number of the tree it is. All of them are judged. */
function numberWords(tree: Tree, number: JudgedNumber): string {
  switch (number.kind) {
    case 'likelihood': {
      const check = tree.checks.find(({ id }) => id === number.check);
      const result = check?.results.find(({ id }) => id === number.result);
      return `how often “${result?.label ?? number.result}” is found (${check?.name ?? number.check}) when it is ${inSentence(causeName(tree, number.cause))}`;
    }
    case 'weight':
      return `how frequent “${inSentence(causeName(tree, number.cause))}” is before anything is found`;
    case 'unlisted-share':
      return 'what is kept for causes that are not in the list';
  }
}

/** A likelihood or share in 100 as written in the tree; a weight as it is. */
function figure({ number }: Deviation, value: number): string {
  return number.kind === 'weight' ? String(Number(value.toPrecision(2))) : `${inHundred(value)} in 100`;
}
