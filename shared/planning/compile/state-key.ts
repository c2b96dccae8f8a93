import type { Finding } from '../../inference/index.ts';
import type { Prerequisite, Tree } from '../../knowledge/tree.ts';
import type { Situation } from '../situation.ts';

/**
 * Results that change nothing but the record are one and the same on paper: for each check and result, the first result
 * of that check with the same likelihood for every cause and the same part in prerequisites, stop rules and doors.
 */
export type ResultClasses = ReadonlyMap<string, ReadonlyMap<string, string>>;

/** The classes of every check of a tree: check → result → first result of its class. */
export function resultClasses(tree: Tree): ResultClasses {
  const uses: readonly (readonly Prerequisite[])[] = [
    ...tree.checks.map(({ requires }) => requires),
    ...tree.stopRules.map(({ firedBy }) => firedBy),
    ...tree.leadsTo.map(({ firedBy }) => firedBy),
  ];
  return new Map(
    tree.checks.map((check) => {
      const first = new Map<string, string>();
      const classes = new Map<string, string>();
      check.results.forEach(({ id }, r) => {
        const says = check.likelihood.map((row) => row[r]).join();
        const opens = uses
          .flatMap((entries, i) =>
            entries.some((entry) => entry.check === check.id && entry.results.includes(id)) ? [i] : [],
          )
          .join();
        const signature = `${says}|${opens}`;
        if (!first.has(signature)) first.set(signature, id);
        classes.set(id, first.get(signature)!);
      });
      return [check.id, classes];
    }),
  );
}

/**
 * Key of a state of belief: situations of one tree with the same key have the same future. The order of the findings
 * matters to nothing but whether danger has been let go of, which is a part of the key.
 *
 * @param skipped     layout questions that nobody could answer.
 * @param dangerOpen  `dangerOpen` of the situation.
 */
export function stateKey(
  situation: Situation,
  classes: ResultClasses,
  skipped: readonly string[],
  dangerOpen: boolean,
): string {
  return JSON.stringify([
    situation.findings.map((finding) => `${finding.check}@${finding.site ?? ''}=${said(finding, classes)}`).sort(),
    situation.access,
    Object.entries(situation.layout).sort(([a], [b]) => (a < b ? -1 : 1)),
    Object.entries(situation.stopAnswers).sort(([a], [b]) => (a < b ? -1 : 1)),
    [...skipped].sort(),
    dangerOpen,
  ]);
}

function said({ check, value }: Finding, classes: ResultClasses): string {
  return value.kind === 'result' ? (classes.get(check)?.get(value.result) ?? value.result) : JSON.stringify(value);
}
