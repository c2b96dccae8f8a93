import { rankChecks, whileOpen, type DriveVerdict, type Situation } from '../../shared/planning/index.ts';

/** What pays to be done as well while the coach is open for the check in front; null when nothing does. */
export function whileOpenWords(
  situation: Situation,
  verdict: DriveVerdict,
  check: string,
): { readonly lead: string; readonly checks: readonly { readonly name: string; readonly spares: string }[] } | null {
  const ranking = rankChecks(situation, verdict);
  if (ranking.stop.kind !== 'check' || ranking.stop.option.check !== check) return null;
  const also = whileOpen(ranking);
  if (also.length === 0) return null;
  const name = (id: string): string => situation.tree.checks.find((each) => each.id === id)!.name;
  return {
    lead: `While it is open, do ${also.length === 1 ? 'this one' : 'these two'} as well:`,
    checks: also.map(({ check: id, minutes, spares }) => ({
      name: name(id),
      spares: `${minutes} minutes; on its own it would need ${spares} more to get there and back`,
    })),
  };
}
