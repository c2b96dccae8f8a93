import { evidenceLedger, indexOfMax, standingOut } from '../inference/index.ts';
import { ROLES, UNLISTED, type CauseHazard } from '../knowledge/tree.ts';
import type { CheckOption, Conclusion, EvidenceLine } from './assessment.ts';
import { clearResult } from './clear-result.ts';
import type { Ranking } from './next-check.ts';
import type { Situation } from './situation.ts';

const CAUTION: Readonly<Record<CauseHazard, string>> = {
  danger:
    'This can hurt people. A licensed mechanic or inspector decides whether the coach may move and how it is put right; local law has the last word.',
  damage:
    'Left alone this breaks more. Have a licensed mechanic confirm it before parts are ordered; local rules apply.',
  nuisance: 'A licensed mechanic should confirm it before money is spent; local rules apply.',
  none: 'Nothing found here says that the coach is in order. What was not looked at is not known; a licensed mechanic or inspector has the last word.',
};

/** From this share a cause counts as still worth naming beside the leading one. Judgement. */
const RIVAL = 1 / 3;

/** The leading cause as a conclusion: how sure, on what it rests, what would settle it. */
export function conclusionOf(situation: Situation, ranking: Ranking, because: string): Conclusion {
  const { tree } = situation;
  const { problem } = ranking;
  const belief = problem.belief(problem.start);
  const { causeIds } = problem.model;
  const lead = indexOfMax(belief);
  const id = causeIds[lead]!;
  const cause = tree.causes.find((each) => each.id === id);
  const ledger = evidenceLedger(problem.model, problem.start.findings, id, problem.excluded);
  const settlers = tree.checks.filter((check) => check.settles.includes(id));
  const settled = problem.start.findings.some((finding) =>
    settlers.some((check) => check.id === finding.check && clearResult(check, finding) !== null),
  );
  return {
    cause: id,
    probability: belief[lead]!,
    sites: id === UNLISTED ? [] : sitesFor(problem, ledger.lines),
    evidence: ledger.lines.map(({ finding, check, decibans, without, overlaps }) => ({
      finding,
      check,
      decibans,
      without,
      overlaps,
    })),
    settledBy: settled
      ? null
      : bestSettler(
          ranking,
          settlers.map((check) => check.id),
          tree.checks,
        ),
    settled,
    alsoOpen: causeIds
      .map((each, c) => ({ cause: each, probability: belief[c]! }))
      .filter(
        (each, c) =>
          c !== lead &&
          (each.probability >= RIVAL * belief[lead]! ||
            (tree.causes.find((known) => known.id === each.cause)?.hazard === 'danger' && each.probability >= 0.03)),
      )
      .sort((a, b) => b.probability - a.probability),
    caution: CAUTION[id === UNLISTED || !cause ? 'none' : cause.hazard],
    because,
  };
}

/** More places than these are no place. Judgement. */
const PLACES_NAMED = 3;
/** So many findings say where. Judgement. */
const FINDINGS_NAMED = 2;

/**
 * Places that the two strongest of the findings that speak for the cause and have a place point to, strongest first, each once. Of
 * a check that was made at several places those that stand out; all alike they point nowhere.
 */
function sitesFor({ model, start: { findings } }: Ranking['problem'], lines: readonly EvidenceLine[]): string[] {
  const sites = [...lines]
    .filter(({ decibans }) => decibans >= 1)
    .sort((a, b) => b.decibans - a.decibans)
    .map((line) => {
      const made = findings.filter(({ check }) => check === line.check);
      if (made.length < 2) return made.flatMap(({ site }) => site ?? []);
      const odd = standingOut(model, line.check, made)?.odd.flatMap(({ site }) => site ?? []) ?? [];
      return odd.length > PLACES_NAMED ? [] : odd;
    })
    .filter(({ length }) => length > 0)
    .slice(0, FINDINGS_NAMED);
  return [...new Set(sites.flat())].slice(0, PLACES_NAMED);
}

/** The best settling check this person can do; else the one that needs the least qualified person. */
function bestSettler(
  ranking: Ranking,
  ids: readonly string[],
  checks: Situation['tree']['checks'],
): CheckOption | null {
  const open = ranking.options.filter(
    (option) =>
      ids.includes(option.check) &&
      option.blocked?.kind !== 'done' &&
      !(option.blocked?.kind === 'layout' && option.blocked.known),
  );
  const mine = open.find((option) => !option.blocked);
  if (mine) return mine;
  const rank = (option: CheckOption): number => ROLES.indexOf(checks.find(({ id }) => id === option.check)!.who);
  // One that would have to drive comes last while the coach may not.
  const drives = ({ blocked }: CheckOption): number =>
    Number(blocked?.kind === 'verdict' || blocked?.kind === 'triage');
  return [...open].sort((a, b) => drives(a) - drives(b) || rank(a) - rank(b) || a.minutes - b.minutes)[0] ?? null;
}
