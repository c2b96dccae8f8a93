import { nearestText } from '../names.ts';
import type { LintRule } from './rule.ts';

export const roadSaysUnknown: LintRule = {
  code: 'road-says-unknown',
  level: 'error',
  looksFor: 'Notes of the road test that name a check or result which this tree does not have.',
  check({ tree, vocabulary }, report) {
    for (const { id, says } of vocabulary.road) {
      for (const { tree: of, check: name, result } of says) {
        if (of !== tree.id) continue;
        const check = tree.checks.find((each) => each.id === name);
        if (!check) {
          const known = tree.checks.map((each) => each.id);
          report(
            tree.id,
            ['id'],
            `road.yaml, "${id}", names the check "${name}", which this tree does not have.${nearestText(name, known)}`,
          );
        } else if (result === undefined) {
          if (!check.measure)
            report(
              tree.id,
              ['id'],
              `road.yaml, "${id}", hands a reading to "${name}", which measures nothing. Name a result.`,
            );
        } else if (!check.results.some((each) => each.id === result)) {
          const known = check.results.map((each) => each.id);
          report(
            tree.id,
            ['id'],
            `road.yaml, "${id}", names the result "${result}" of "${name}", which it does not have.${nearestText(result, known)}`,
          );
        }
      }
    }
  },
};
