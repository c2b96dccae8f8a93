import { outlook, type Posterior } from '../inference/index.ts';
import { UNLISTED, type Tree } from '../knowledge/tree.ts';
import type { CheckOption } from './assessment.ts';
import type { Ranking } from './next-check.ts';
import type { Situation } from './situation.ts';
import { beliefNow } from './standing.ts';

/** Causes that a check sets apart most: what its most telling result raises, and what the same result lowers. */
export interface TellsApart {
  readonly result: string;
  readonly raises: readonly string[];
  readonly lowers: readonly string[];
}

/** The result with the largest expected movement of the belief, with the causes it moves most. */
export function tellsApart(ranking: Ranking, check: string): TellsApart {
  const { model, start, checksOf } = ranking.problem;
  return tellsApartIn(
    model.causeIds,
    start.now,
    outlook(model, start.now, check),
    checksOf.find(({ id }) => id === check)!.results.map(({ id }) => id),
  );
}

/** The same from a situation alone. */
export function tellsApartFor(situation: Situation, check: string): TellsApart {
  const { model, now } = beliefNow(situation);
  const results = situation.tree.checks.find(({ id }) => id === check)!.results.map(({ id }) => id);
  return tellsApartIn(model.causeIds, now, outlook(model, now, check), results);
}

function tellsApartIn(
  causeIds: readonly string[],
  now: Posterior,
  { share, after }: ReturnType<typeof outlook>,
  results: readonly string[],
): TellsApart {
  let best = 0;
  let most = -1;
  after.forEach((belief, r) => {
    const moved = share[r]! * belief.reduce((sum, p, c) => sum + Math.abs(p - now.probability[c]!), 0);
    if (moved > most) {
      most = moved;
      best = r;
    }
  });
  const change = causeIds
    .map((id, c) => ({ id, by: after[best]![c]! - now.probability[c]! }))
    .filter(({ id }) => id !== UNLISTED);
  const raises = change.filter(({ by }) => by > 0.005).sort((a, b) => b.by - a.by);
  const lowers = change.filter(({ by }) => by < -0.005).sort((a, b) => a.by - b.by);
  return {
    result: results[best]!,
    raises: raises.slice(0, 2).map(({ id }) => id),
    lowers: lowers.slice(0, 2).map(({ id }) => id),
  };
}

/** One sentence: why this check now. Names, never ids. */
export function reasonFor(ranking: Ranking, option: CheckOption, tree: Tree): string {
  const check = tree.checks.find(({ id }) => id === option.check)!;
  const name = (id: string): string => `“${shortName(tree.causes.find((cause) => cause.id === id)!.name)}”`;
  const belief = ranking.problem.belief(ranking.problem.start);
  const { causeIds } = ranking.problem.model;
  const settled = check.settles.filter((id) => (belief[causeIds.indexOf(id)] ?? 0) >= 0.2);
  const { raises, lowers } = tellsApart(ranking, option.check);
  const what =
    settled.length > 0
      ? `it settles whether it is ${name(settled[0]!)}`
      : raises.length > 0 && lowers.length > 0
        ? `it tells ${name(raises[0]!)} from ${name(lowers[0]!)}`
        : 'it may turn up something that nothing else has shown';
  return `Asked now because ${what}, and ${effort(option)}.`;
}

function effort(option: CheckOption): string {
  const minutes = `${option.minutes} minute${option.minutes === 1 ? '' : 's'}`;
  if (option.accessMinutes === 0) return `it takes ${minutes} as the coach stands now`;
  return `it is worth ${minutes} and ${option.accessMinutes} more to get there and back`;
}

/** The first part of a long name, for sentences: up to a comma, semicolon or bracket. */
export function shortName(name: string): string {
  return inSentence(name.split(/[,;(:]/)[0]!.trim());
}

/** A name inside a sentence: small first letter unless it is an abbreviation. */
export function inSentence(name: string): string {
  return /^[A-Z](?![A-Z-])/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}
