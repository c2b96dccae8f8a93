import { conflictIn, inHundred, type Conflict } from '../../shared/inference/index.ts';
import { beliefNow, blockedAgain, shortName, type Assessment, type Situation } from '../../shared/planning/index.ts';
import { blockedWords } from './presenters.ts';

/** Two findings that one cause does not explain, in words. */
export interface ConflictView {
  /** The two findings, each with what would explain it if two things are wrong at once. */
  readonly findings: readonly [DisagreeingFinding, DisagreeingFinding];
  /** What two causes at once would mean; empty when this coach can have no two. */
  readonly pair: string;
  /** The cheaper of those of the two that can be looked at again now; null when neither can. */
  readonly again: { readonly check: string; readonly name: string; readonly minutes: number } | null;
  /** Why neither can be looked at again now, check by check; empty while one can. */
  readonly notAgain: readonly { readonly check: string; readonly name: string; readonly why: string }[];
}

interface DisagreeingFinding {
  readonly finding: string;
  /** Empty when this coach can have no two causes at once. */
  readonly explained: string;
}

/**
 * @param assessment  of the same situation: what a check costs from here, and whether the coach may be taken on the road.
 * @returns null while the findings fit together.
 */
export function conflictView(
  situation: Situation,
  { options, verdict }: Pick<Assessment, 'options' | 'verdict'>,
): ConflictView | null {
  const { model, findings, excluded } = beliefNow(situation);
  const conflict = conflictIn(model, findings, excluded);
  if (!conflict) return null;
  const checkOf = (finding: string) => {
    const id = findings.find((each) => each.id === finding)!.check;
    return situation.tree.checks.find((check) => check.id === id)!;
  };
  const looks = [...new Set(conflict.findings.map(checkOf))].map((check) => {
    const option = options.find((each) => each.check === check.id);
    const minutes = check.minutes + (option?.accessMinutes ?? 0);
    return { check, minutes, blocked: blockedAgain(check, situation, verdict) };
  });
  const again = looks.filter(({ blocked }) => !blocked).sort((a, b) => a.minutes - b.minutes)[0];
  const name = (id: string): string => `“${shortName(situation.tree.causes.find((cause) => cause.id === id)!.name)}”`;
  const said = (at: 0 | 1): DisagreeingFinding => {
    const by = conflict.explained[at];
    const explained = by === null ? 'either of the two below would explain it' : `${name(by)} would explain it`;
    return { finding: conflict.findings[at], explained: conflict.pair ? explained : '' };
  };
  return {
    findings: [said(0), said(1)],
    pair: pairWords(conflict, name),
    again: again ? { check: again.check.id, name: again.check.name, minutes: again.minutes } : null,
    notAgain: again
      ? []
      : looks.flatMap(({ check, blocked }) =>
          blocked
            ? [{ check: check.id, name: check.name, why: blockedWords(blocked, situation.tree, situation.vocabulary) }]
            : [],
        ),
  };
}

function pairWords({ pair, twoShare }: Conflict, name: (cause: string) => string): string {
  if (!pair) return '';
  const [one, other] = pair.causes;
  return `If two things may be wrong at once, that gets ${inHundred(twoShare)} in 100 of the belief, on judged odds; the two that fit best are ${name(one)} and ${name(other)}, with ${inHundred(pair.share)}.`;
}
