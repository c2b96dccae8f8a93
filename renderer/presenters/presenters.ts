import { inHundred, posterior, type Finding } from '../../shared/inference/index.ts';
import { UNLISTED, withNames, type Check, type Tree } from '../../shared/knowledge/index.ts';
import type { Vocabulary } from '../../shared/knowledge/vocabulary.ts';
import {
  beliefNow,
  type Assessment,
  type Blocked,
  type CauseBelief,
  type CheckOption,
  type Situation,
} from '../../shared/planning/index.ts';
import { formatQuantity, preferredUnit, type UnitSystem } from '../../shared/units/index.ts';
import {
  causeName,
  CLOSED_WORDS,
  fullStop,
  minutesWords,
  readingWords,
  ROLE_WORDS,
  sentence,
  valueWords,
  type ComplaintPhase,
  type TrailLine,
} from '../../shared/visit/index.ts';

export { CLOSED_WORDS, causeName, fullStop, minutesWords, readingWords, ROLE_WORDS, sentence, valueWords };

/** Where a complaint stands, in words for the yard. */
export const PHASE_WORDS: Readonly<Record<ComplaintPhase, string>> = {
  triage: 'Safety questions open',
  'checking.choosing': 'Being checked',
  'checking.doing': 'Being checked',
  'checking.judging': 'A reading waits to be judged',
  halted: 'Halted by a stop rule',
  concluded: 'Probable cause on the sheet',
  correcting: 'Correction under way',
  proving: 'Corrected, the proof is still open',
  closed: 'Closed',
};

/** Range of a band in the reader's units. */
export function rangeWords(check: Check, index: number, system: UnitSystem): string {
  const range = check.results[index]?.range;
  if (!range || !check.measure) return '';
  const [low, high] = range;
  const { unit } = check.measure;
  const figure = (value: number): string => formatQuantity(value, unit, system);
  if (low === null && high === null) return '';
  if (low === null) return `below ${figure(high!)}`;
  if (high === null) return `from ${figure(low)}`;
  return `${figure(low)} to ${figure(high)}`;
}

/** Rows of the belief list: the likeliest by name, the rest together, what is in no list last. */
export interface BeliefRow {
  readonly name: string;
  readonly share: string;
  readonly danger: boolean;
  /** Texture class of the swatch and the band. */
  readonly look: string;
  readonly causes: readonly string[];
}

const NAMED = 6;

export function beliefRows(tree: Tree, belief: readonly CauseBelief[]): BeliefRow[] {
  const listed = belief.filter(({ cause }) => cause !== UNLISTED);
  const danger = (id: string): boolean => tree.causes.find((cause) => cause.id === id)?.hazard === 'danger';
  const rows: BeliefRow[] = listed.slice(0, NAMED).map(({ cause, probability }, i) => ({
    name: causeName(tree, cause),
    share: inHundred(probability),
    danger: danger(cause),
    look: `k${i + 1}`,
    causes: [cause],
  }));
  const rest = listed.slice(NAMED);
  if (rest.length > 0) {
    const share = rest.reduce((sum, { probability }) => sum + probability, 0);
    rows.push({
      name: `${rest.length} other causes`,
      share: inHundred(share),
      danger: rest.some(({ cause }) => danger(cause)),
      look: 'k7',
      causes: rest.map(({ cause }) => cause),
    });
  }
  const unlisted = belief.find(({ cause }) => cause === UNLISTED);
  rows.push({
    name: 'Not in the list',
    share: inHundred(unlisted?.probability ?? 0),
    danger: false,
    look: 'k8',
    causes: [UNLISTED],
  });
  return rows;
}

/** Share of each row before the first finding and after each line of the trail; each inner list sums to 1. */
export function beliefHistory(
  situation: Situation,
  rows: readonly BeliefRow[],
  lines: readonly TrailLine[],
): number[][] {
  const { model, findings, excluded } = beliefNow(situation);
  const standing = new Map(findings.map((finding) => [finding.id, finding]));
  const sofar: Finding[] = [];
  const shares = (): number[] => {
    const { probability } = posterior(model, sofar, excluded);
    return rows.map(({ causes }) =>
      causes.reduce((sum, id) => sum + (probability[model.causeIds.indexOf(id)] ?? 0), 0),
    );
  };
  const history = [shares()];
  for (const line of lines) {
    sofar.push(...line.findings.flatMap(({ id }) => standing.get(id) ?? []));
    history.push(shares());
  }
  return history;
}

/** Outlines of the belief bands, one a row, in a drawing of the given size; step i lies at height i·step. */
export function bandPaths(history: readonly (readonly number[])[], width: number, step: number): string[] {
  const rows = history[0]?.length ?? 0;
  const edge = (at: readonly number[], upTo: number): number =>
    at.slice(0, upTo).reduce((sum, share) => sum + share, 0) * width;
  return Array.from({ length: rows }, (_, r) => {
    const left = history.map((at, i) => [edge(at, r), i * step] as const);
    const right = history.map((at, i) => [edge(at, r + 1), i * step] as const);
    const last = (history.length - 1) * step + step;
    const down = [...left, [left.at(-1)![0], last] as const];
    const up = [...right, [right.at(-1)![0], last] as const].reverse();
    return `M${[...down, ...up].map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}Z`;
  });
}

/** Why a check is not offered, as a sentence with its own end. */
export function blockedWords(blocked: Blocked, tree: Tree, vocabulary: Vocabulary): string {
  switch (blocked.kind) {
    case 'who':
      return `Needs ${ROLE_WORDS[blocked.needs].toLowerCase()} or more.`;
    case 'tools':
      return `Needs: ${blocked.missing.join(', ')}.`;
    case 'layout': {
      const feature = vocabulary.layout.find(({ id }) => id === blocked.feature);
      return blocked.known
        ? `Left out: this coach is built otherwise (${feature?.ask ?? blocked.feature}).`
        : `First to be known: ${feature?.ask ?? blocked.feature}`;
    }
    case 'requires':
      return 'Only makes sense after another result.';
    case 'done':
      return 'Done.';
    case 'verdict':
      return 'Not while the coach has to stay or creep: it would have to drive.';
    case 'triage':
      return 'Not before the safety questions are answered: it would have to drive.';
  }
}

/** "2 causes and 1 check": what does not apply, counted. */
export function leftOutWords(leftOut: Assessment['leftOut']): string {
  const counted = (kind: 'cause' | 'check'): string => {
    const n = leftOut.filter((each) => each.kind === kind).length;
    return n === 0 ? '' : `${n} ${kind}${n === 1 ? '' : 's'}`;
  };
  return [counted('cause'), counted('check')].filter(Boolean).join(' and ');
}

/** What a check costs, in words. */
export function effortWords(option: CheckOption): string {
  return option.accessMinutes > 0
    ? `${option.minutes} min, and ${option.accessMinutes} to get there and back`
    : `${option.minutes} min`;
}

/** Saving in words. */
export function savingWords(option: CheckOption): string {
  if (option.saves >= 1) return `saves about ${Math.round(option.saves)} minutes on average`;
  return option.bits >= 0.15 ? 'tells much, but changes little by itself' : 'tells little now';
}

/** A reading that does not fit, as a question; null when it does. */
export function readingDoubt(
  value: number,
  unit: string,
  converted: { readonly value: number; readonly range: readonly [number, number] },
): string | null {
  const [least, most] = converted.range;
  if (converted.value >= least && converted.value <= most) return null;
  const tenth = converted.value / 10;
  const guess =
    tenth >= least && tenth <= most && Number.isInteger(value)
      ? ` Is it ${formatQuantity(value / 10, unit)}?`
      : ' Look at the figure and the unit.';
  return `${formatQuantity(value, unit)} is outside what this check expects.${guess}`;
}

/** Order of units to choose from: the reader's own first. */
export function unitChoices(
  unit: string,
  system: UnitSystem,
  like: readonly { readonly id: string; readonly symbol: string; readonly spoken: string }[],
): { readonly id: string; readonly label: string }[] {
  const first = preferredUnit(unit, system);
  return [...like]
    .sort((a, b) => Number(b.id === first) - Number(a.id === first))
    .map(({ id, symbol, spoken }) => ({ id, label: symbol || spoken }));
}

/** Date and time for people. */
export function when(at: string): string {
  const date = new Date(at);
  return Number.isNaN(date.getTime())
    ? ''
    : date.toLocaleString('en', {
        weekday: 'short',
        day: 'numeric',
        month: 'short',
        hour: '2-digit',
        minute: '2-digit',
      });
}

/** Bar of one finding in the for/against chart: −100…100, 20 decibans at the end. */
export function evidenceBar(decibans: number): { readonly x: number; readonly width: number } {
  const size = Math.min(100, (Math.abs(decibans) / 20) * 100);
  return decibans >= 0 ? { x: 0, width: size } : { x: -size, width: size };
}

/** Text with back-quoted ids as names, for places that take no Markdown. */
export function withPlainNames(text: string, nameOf: (id: string) => string | undefined): string {
  return withNames(text, nameOf);
}
