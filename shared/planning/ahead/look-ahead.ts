import { isOwner } from '../../knowledge/tree.ts';
import { rankChecks, tieMinutes, usableChecks, type Ranking } from '../next-check.ts';
import type { DriveVerdict } from '../assessment.ts';
import type { Situation } from '../situation.ts';
import { farStart, farTables, type FarTables } from './far-tables.ts';
import { forecast, shortlist, USUAL_DEPTH, type Depth, type Forecast } from './forecast.ts';
import type { LookedAhead } from './looked-ahead.ts';

/** Checks weighed in full: the best of the one-step rule, and the ones that tell most for their time. */
const OF_THE_RULE = 5;
const OF_THE_TELLING = 3;

/**
 * Below this belief a correction, or a hand-over, waits for a check that would raise the expected cost by no more than this
 * share of it: the tables are judgement, and a wrong part is worse than its minutes. Judgement.
 */
const SURE = 0.85;
const LOOK_ONCE_MORE = 0.02;

/** Forecasts made before for the same model and person; a walk asks for neighbouring states. */
export type Memory = Map<string, Forecast>;

/**
 * Looks many steps ahead: what each of the best checks costs in the end when the program's rule is followed after it. Of two
 * that are equally good the rule's own is named.
 *
 * @param options.memory  keeps what was worked out for many situations of one tree in which every finding is a clear result.
 * @returns null for an owner, who corrects nothing: what ends the matter there is the drive decision.
 */
export function lookAhead(
  situation: Situation,
  verdict: DriveVerdict | null,
  options: { readonly depth?: Depth; readonly memory?: Memory } = {},
): LookedAhead | null {
  if (isOwner(situation.who)) return null;
  const ranking = rankChecks(situation, verdict);
  const { problem, actNow, bound } = ranking;
  if (ranking.exact) return inTheEnd(ranking);
  const blocked = new Map(ranking.options.map((option) => [option.check, option.blocked ?? null]));
  const tables = farTables(problem, usableChecks(problem, blocked));
  const start = farStart(problem);
  const far = remembered(options.memory, situation, ranking, tables, options.depth ?? USUAL_DEPTH);
  const place = new Map(problem.checksOf.map(({ id }, k) => [id, k]));
  const offered = ranking.options.filter(({ blocked }) => !blocked);
  const offeredIds = new Set(offered.map(({ check }) => check));
  const wanted = [
    ...offered.slice(0, OF_THE_RULE).map(({ check }) => place.get(check)!),
    ...shortlist(tables, problem, start, OF_THE_TELLING)
      .map(({ check }) => check)
      .filter((k) => offeredIds.has(problem.checksOf[k]!.id)),
  ];
  const act = far.worth(start, actNow.first);
  const checks = [...new Set(wanted)].map((k) => ({
    check: problem.checksOf[k]!.id,
    cost: far.worth(start, { kind: 'check', check: k }),
  }));
  const { first } = actNow;
  const sure = first.kind === 'correct' ? problem.belief(problem.start)[first.correction]! : 0;
  const most = act * (1 + (sure >= SURE ? 0 : LOOK_ONCE_MORE));
  const best = bestOf(checks, most, ruleChoice(ranking));
  return { checks, act, best, bound, exact: false };
}

/** What the best plan costs, where it is known. */
function inTheEnd({ options, actNow, bound, stop }: Ranking): LookedAhead {
  const checks = options
    .filter(({ blocked }) => !blocked)
    .map(({ check, saves }) => ({ check, cost: actNow.cost - saves }));
  const best = stop.kind === 'check' ? checks.findIndex(({ check }) => check === stop.option.check) : -1;
  return { checks, act: actNow.cost, best, bound, exact: true };
}

/** The check with the least cost, where it is below `most`; the first answer's own choice when it is as good. */
function bestOf(checks: LookedAhead['checks'], most: number, rule: string | null): number {
  let best = -1;
  let least = most;
  checks.forEach(({ cost }, i) => {
    if (cost < least) {
      least = cost;
      best = i;
    }
  });
  if (best < 0 || rule === null) return best;
  const own = checks.findIndex(({ check }) => check === rule);
  return own >= 0 && checks[own]!.cost <= least + tieMinutes(least) ? own : best;
}

function ruleChoice({ stop }: Ranking): string | null {
  return stop.kind === 'check' ? stop.option.check : null;
}

function remembered(
  memory: Memory | undefined,
  situation: Situation,
  { problem }: Ranking,
  tables: FarTables,
  depth: Depth,
): Forecast {
  if (!memory) return forecast(tables, problem, depth);
  const key = JSON.stringify([situation.who, situation.costs, problem.model.causeIds, tables.usable]);
  const known = memory.get(key) ?? forecast(tables, problem, depth);
  memory.set(key, known);
  return known;
}
