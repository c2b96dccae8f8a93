import { describe, expect, it } from 'vitest';
import { beliefModel, indexOfMax, posterior, type Finding } from '../../shared/inference/index.ts';
import { fitOf, ROLES } from '../../shared/knowledge/index.ts';
import { isMet } from '../../shared/planning/clear-result.ts';
import { wordsAtHand } from '../../shared/planning/blocked.ts';
import { layoutFor } from '../../shared/planning/evaluation/index.ts';
import { shippedTrees } from '../shipped-trees.ts';

const { trees, vocabulary } = await shippedTrees();
const shipped = [...trees.values()].flatMap(({ value }) => value ?? []);
const atHand = wordsAtHand(vocabulary!, { who: 'mechanic' });

describe.each(shipped.map((tree) => [tree.id, tree] as const))('%s', (_, tree) => {
  it('[EVA-2] a mechanic reaches every cause: own checks, own tools, this layout, in an order that the file allows', () => {
    const checks = new Map(tree.checks.map((check) => [check.id, check]));
    const missed = tree.causes.flatMap((cause) => {
      const layout = layoutFor(tree, vocabulary!, cause.id);
      const column = tree.causes.indexOf(cause);
      const findings: Finding[] = [];
      for (let grew = true; grew;) {
        grew = false;
        for (const check of tree.checks) {
          const mine =
            ROLES.indexOf(check.who) <= ROLES.indexOf('mechanic') && check.tools.every((word) => atHand.has(word));
          const known = findings.some((finding) => finding.check === check.id);
          if (known || !mine || fitOf(check.when, layout).fits === 'no' || !isMet(check.requires, checks, findings))
            continue;
          const result = check.results[indexOfMax(check.likelihood[column]!)]!.id;
          findings.push({ id: check.id, check: check.id, value: { kind: 'result', result } });
          grew = true;
        }
      }
      const model = beliefModel(tree, layout);
      const { probability } = posterior(model, findings);
      const lead = model.causeIds[indexOfMax(probability)]!;
      return lead === cause.id ? [] : [`${cause.id}: ${lead} leads`];
    });
    expect(missed).toEqual([]);
  });
});
