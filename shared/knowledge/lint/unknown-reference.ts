import { referencesIn } from '../markdown.ts';
import { nearestText } from '../names.ts';
import type { Path } from '../source-file.ts';
import type { LintRule } from './rule.ts';

export const unknownReference: LintRule = {
  code: 'unknown-reference',
  level: 'warning',
  looksFor: 'An id in back-quotes that is no check, cause, result or complaint.',
  check({ tree }, report) {
    const known = new Set([
      tree.id,
      ...tree.checks.flatMap((check) => [
        check.id,
        ...(check.group === undefined ? [] : [check.group]),
        ...check.results.map(({ id }) => id),
      ]),
      ...tree.causes.map(({ id }) => id),
      ...[...tree.leadsTo, ...tree.confusedWith].flatMap(({ complaint }) => complaint ?? []),
    ]);
    const look = (text: string, at: string, path: Path): void => {
      for (const id of referencesIn(text))
        if (!known.has(id))
          report(at, path, `"${id}" in back-quotes is nothing that this tree knows.${nearestText(id, known)}`);
    };
    tree.checks.forEach((check, i) => {
      if (check.sharedAs === undefined)
        [...check.steps, ...check.cautions].forEach((text) => look(text, check.id, ['checks', i, 'id']));
    });
    tree.stopRules.forEach((rule, i) =>
      [rule.when, rule.why, rule.now].forEach((text) => look(text, rule.id, ['stopRules', i, 'id'])),
    );
  },
};
