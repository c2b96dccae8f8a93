import type { Tree } from '../knowledge/tree.ts';
import { resultWeights, type Evidence } from './evidence.ts';
import type { Finding } from './finding.ts';
import { evidenceLedger, indexOfMax } from './ledger.ts';
import { FLOOR, type BeliefModel, type ModelOptions } from './model.ts';
import { crossingOf, linesThrough } from './one-way.ts';
import { posterior, type Posterior } from './posterior.ts';

/** A number of the tree that its author judged. */
export type JudgedNumber =
  /** P(result | cause); the other results of the cause keep their proportions. */
  | { readonly kind: 'likelihood'; readonly check: string; readonly result: string; readonly cause: string }
  /** How frequent a cause is beforehand, relative to the others. */
  | { readonly kind: 'weight'; readonly cause: string }
  /** What is kept for causes that the tree does not list. */
  | { readonly kind: 'unlisted-share' };

/** How far one number would have to move before another cause leads. */
export interface Deviation {
  readonly number: JudgedNumber;
  /** As the tree has it, and as it would have to be. */
  readonly value: number;
  readonly needed: number;
  /** needed / value. */
  readonly factor: number;
  /** Cause that would lead instead. */
  readonly leader: string;
}

/** How firm the leading cause is. */
export interface Firmness {
  readonly cause: string;
  /** The numbers nearest to changing it, nearest first, equals in the order of findings and file; empty = no single number in the tree does. */
  readonly nearest: readonly Deviation[];
  /** The finding without which it would lose most; null when no finding speaks for it. */
  readonly hangsOn: {
    readonly finding: string;
    readonly check: string;
    /** Belief in the cause had this finding not been made. */
    readonly without: number;
    readonly leaderWithout: string;
  } | null;
}

export interface FirmnessOptions extends ModelOptions {
  /** How many numbers to name; three unless said otherwise. */
  readonly most?: number;
}

/** Numbers named in a report. */
const NAMED = 3;
/** A weight may be wrong by this factor either way; a likelihood by anything from 0 to 1. Judgement. */
export const WEIGHT_RANGE = 10;
/** The share of `unlisted` stays below this, as the tree's schema has it. */
const MOST_UNLISTED = 0.5;
const HALVINGS = 60;

/**
 * How firm the leading cause stands: the judged numbers that come nearest to putting another cause first when one alone is
 * changed, and the finding that it hangs on most.
 *
 * Likelihoods, the share of `unlisted`, and weights between listed causes in closed form; a weight against `unlisted`, whose
 * likelihoods follow the weights, by halving. Which finding of a group counts in full is held as it is.
 *
 * @param options  `floor` as given to `beliefModel`.
 * @source Admissible deviation: van der Gaag & Renooij 2001 (abstract read); crossing of two linear weights.
 */
export function firmnessOf(
  tree: Tree,
  model: BeliefModel,
  findings: readonly Finding[],
  excluded?: ReadonlySet<string>,
  options: FirmnessOptions = {},
): Firmness {
  const now = posterior(model, findings, excluded);
  const lead = indexOfMax(now.probability);
  const cause = model.causeIds[lead]!;
  const spread: Spread = { tree, model, now, lead, floor: options.floor ?? FLOOR };
  const deviations = [...likelihoods(spread), ...weights(spread), ...unlistedShare(spread)];
  const nearest = deviations
    .map((deviation) => ({ deviation, distance: Number(Math.abs(Math.log(deviation.factor)).toFixed(9)) }))
    .sort((a, b) => a.distance - b.distance)
    .slice(0, options.most ?? NAMED)
    .map(({ deviation }) => deviation);
  const most = evidenceLedger(model, findings, cause, excluded).lines.reduce<Firmness['hangsOn']>(
    (least, { finding, check, without, leaderWithout }) =>
      without < (least?.without ?? now.probability[lead]!) ? { finding, check, without, leaderWithout } : least,
    null,
  );
  return { cause, nearest, hangsOn: most };
}

interface Spread {
  readonly tree: Tree;
  readonly model: BeliefModel;
  readonly now: Posterior;
  readonly lead: number;
  readonly floor: number;
}

/** The nearest point on each side at which a rival catches up. */
class Crossings {
  readonly #number: JudgedNumber;
  readonly #value: number;
  #best: Deviation | null = null;

  constructor(number: JudgedNumber, value: number) {
    this.#number = number;
    this.#value = value;
  }

  add(needed: number | null, leader: string, [least, most]: readonly [number, number]): void {
    if (needed === null || !(needed > least && needed < most) || this.#value <= 0) return;
    const factor = needed / this.#value;
    if (this.#best && Math.abs(Math.log(this.#best.factor)) <= Math.abs(Math.log(factor))) return;
    this.#best = { number: this.#number, value: this.#value, needed, factor, leader };
  }

  get list(): Deviation[] {
    return this.#best ? [this.#best] : [];
  }
}

/** P(result | cause) of every finding that counts, for every listed cause. */
function likelihoods(spread: Spread): Deviation[] {
  const { tree, model, now } = spread;
  return now.evidence.flatMap((evidence) => {
    if (evidence.exponent === 0) return [];
    const { check } = evidence.table;
    const seen = resultWeights(evidence.table, evidence.finding)!;
    return tree.causes.flatMap(({ id }, row) => {
      const column = model.causeIds.indexOf(id);
      if (column < 0) return [];
      return check.results.flatMap((result, r) => {
        if (seen[r] === 0) return [];
        const number: JudgedNumber = { kind: 'likelihood', check: check.id, result: result.id, cause: id };
        const found = new Crossings(number, check.likelihood[row]![r]!);
        const lines = linesThrough((x) => likelihoodsWhen(spread, evidence, seen, row, column, r, x));
        crossAll(spread, evidence, lines, found);
        return found.list;
      });
    });
  });
}

/** P(what was seen | cause) for every cause when one entry of a row is x and the rest of the row keeps its proportions. */
function likelihoodsWhen(
  { model, floor }: Spread,
  { table, log }: Evidence,
  seen: readonly number[],
  row: number,
  column: number,
  r: number,
  x: number,
): Float64Array {
  const authored = table.check.likelihood[row]!;
  const rest = 1 - authored[r]!;
  const results = authored.length;
  let own = 0;
  authored.forEach((value, i) => {
    const moved = i === r ? x : rest > 0 ? (value * (1 - x)) / rest : (1 - x) / (results - 1);
    own += seen[i]! * ((1 - floor) * moved + floor / results);
  });
  const all = log.map(Math.exp);
  const last = all.length - 1;
  // Half of the row of `unlisted` is the mean of the others.
  const part = model.prior[column]! / (1 - model.prior[last]!);
  all[last]! += 0.5 * part * (own - all[column]!);
  all[column] = own;
  return all;
}

/** Where a rival's weight meets the leader's: K·L^e = K'·L'^e is linear after the root. */
function crossAll(
  { model, now, lead }: Spread,
  { log, exponent }: Evidence,
  lines: ReturnType<typeof linesThrough>,
  found: Crossings,
): void {
  const own = lines[lead]!;
  for (let rival = 0; rival < lines.length; rival++) {
    if (rival === lead || now.logWeight[rival] === -Infinity) continue;
    const ahead = now.logWeight[lead]! - now.logWeight[rival]! - exponent * (log[lead]! - log[rival]!);
    const factor = Math.exp(-ahead / exponent);
    const line = lines[rival]!;
    const level = { slope: factor * line.slope, intercept: factor * line.intercept };
    found.add(crossingOf(own, level), model.causeIds[rival]!, [0, 1]);
  }
}

function weights(spread: Spread): Deviation[] {
  const { model, now, lead } = spread;
  const last = model.causeIds.length - 1;
  return model.weights.flatMap((weight, column) => {
    const id = model.causeIds[column]!;
    const found = new Crossings({ kind: 'weight', cause: id }, weight);
    const range = [weight / WEIGHT_RANGE, weight * WEIGHT_RANGE] as const;
    for (let rival = 0; rival <= last; rival++) {
      if (rival === lead || now.logWeight[rival] === -Infinity) continue;
      const name = model.causeIds[rival]!;
      if (rival === last || lead === last) {
        for (const edge of range)
          found.add(
            halved(weight, edge, (x) => aheadWhen(spread, column, x / weight, rival)),
            name,
            range,
          );
      } else if (column === lead || column === rival) {
        const ratio = Math.exp(now.logWeight[rival]! - now.logWeight[lead]!);
        found.add(column === lead ? weight * ratio : weight / ratio, name, range);
      }
    }
    return found.list;
  });
}

/**
 * Log of the leader's weight over a rival's when the weight of one listed cause is `times` its own. One of the two is
 * `unlisted`, whose likelihoods are half the weighted mean of the listed ones.
 */
function aheadWhen({ model, now, lead }: Spread, column: number, times: number, rival: number): number {
  const last = model.causeIds.length - 1;
  const part = model.prior[column]! / (1 - model.prior[last]!);
  const total = 1 + part * (times - 1);
  const moved = (c: number): number => {
    let log = now.logWeight[c]!;
    if (c !== last) return log + (c === column ? Math.log(times) : 0) - Math.log(total);
    for (const { table, finding, log: before, exponent } of now.evidence) {
      if (exponent === 0) continue;
      const seen = resultWeights(table, finding)!;
      const even = 0.5 * (seen.reduce((sum, each) => sum + each, 0) / seen.length);
      const was = Math.exp(before[last]!);
      const mean = was - even + 0.5 * part * (times - 1) * Math.exp(before[column]!);
      log += exponent * (Math.log(even + mean / total) - before[last]!);
    }
    return log;
  };
  return moved(lead) - moved(rival);
}

/** Where a function that is positive at `from` and not at `to` turns; null when it does not. */
function halved(from: number, to: number, ahead: (x: number) => number): number | null {
  if (ahead(to) > 0) return null;
  let inside = from;
  let outside = to;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (inside + outside) / 2;
    if (ahead(middle) > 0) inside = middle;
    else outside = middle;
  }
  return outside;
}

function unlistedShare({ tree, model, now, lead }: Spread): Deviation[] {
  const last = model.causeIds.length - 1;
  const found = new Crossings({ kind: 'unlisted-share' }, tree.unlistedShare);
  if (last === 0 || now.logWeight[last] === -Infinity) return [];
  const odds = model.prior[last]! / (1 - model.prior[last]!);
  for (let rival = 0; rival <= last; rival++) {
    if (rival === lead || (rival !== last && lead !== last) || now.logWeight[rival] === -Infinity) continue;
    const listed = rival === last ? lead : rival;
    const even = odds * Math.exp(now.logWeight[listed]! - now.logWeight[last]!);
    found.add(even / (1 + even), model.causeIds[rival]!, [0, MOST_UNLISTED]);
  }
  return found.list;
}

/** A factor as people say it: "half of its present value", "1.7 times its present value". */
export function factorWords(factor: number): string {
  const plain: readonly (readonly [number, string])[] = [
    [1 / 2, 'half of'],
    [1 / 3, 'a third of'],
    [1 / 4, 'a quarter of'],
    [1 / 10, 'a tenth of'],
    [2, 'twice'],
    [3, 'three times'],
    [4, 'four times'],
    [10, 'ten times'],
  ];
  const near = plain.find(([value]) => Math.abs(factor / value - 1) < 0.03);
  const words = near ? near[1] : `${Number(factor.toPrecision(2))} times`;
  return `would need ${words} its present value`;
}

/** What is said when no single number changes the conclusion. */
export const NO_NUMBER = `No single number in this tree changes it: no likelihood from 0 to 1, and no starting weight within a factor of ${WEIGHT_RANGE}.`;
