import { CALCULATIONS, type CalculationFacts } from '../../measuring/index.ts';
import { isUnit, unitOf } from '../../units/index.ts';
import { nearestText } from '../names.ts';
import type { LintRule } from './rule.ts';

export const calculationDoesNotFit: LintRule = {
  code: 'calculation-does-not-fit',
  level: 'error',
  looksFor:
    'A check whose calculation gives another quantity than it measures, or that fixes what the calculation has not.',
  check({ tree }, report) {
    tree.checks.forEach((check, i) => {
      const { calculation, measure } = check;
      if (!calculation) return;
      const facts: CalculationFacts = CALCULATIONS[calculation.use];
      const say = (message: string): void => report(check.id, ['checks', i, 'id'], message);
      if (!measure)
        say(
          `"${check.id}" names the calculation ${calculation.use}, but measures nothing that it could give. Add measure: { unit: ${facts.unit}, of, instrument }, or take the calculation out.`,
        );
      else if (isUnit(measure.unit) && unitOf(measure.unit).quantity !== unitOf(facts.unit).quantity)
        say(
          `"${check.id}" measures ${measure.unit}, but ${calculation.use} gives ${facts.unit}: ${facts.means}. Name a calculation that gives ${measure.unit}, or none.`,
        );
      for (const [setting, value] of Object.entries(calculation.set)) {
        const allowed = facts.settings[setting];
        if (!allowed)
          say(
            `${calculation.use} has no setting "${setting}".${nearestText(setting, Object.keys(facts.settings))} ${
              Object.keys(facts.settings).length === 0
                ? 'It has none: take "set" out.'
                : `Settings: ${Object.keys(facts.settings).join(', ')}.`
            }`,
          );
        else if (!allowed.includes(value))
          say(
            `"${value}" is nothing that "${setting}" of ${calculation.use} can be.${nearestText(value, allowed)} Allowed: ${allowed.join(', ')}.`,
          );
      }
    });
  },
};
