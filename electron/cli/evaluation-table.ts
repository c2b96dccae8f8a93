import type { ModelRow, TreeRow, WayScore } from '../../shared/planning/evaluation/index.ts';

/** The whole evaluation as lines of text: models, trees, and how far each tree is from what can be reached. */
export function modelTable(rows: readonly ModelRow[]): string {
  const money = (value: number | null): string => (value === null ? '–' : value.toFixed(2));
  return [
    'Small models: expected cost, exact. The last figures: share above the optimum when the numbers are off, over so many truths.',
    line('', [
      'ours',
      'rule',
      'ahead',
      'optimum',
      'one step',
      'rollout',
      'bits/min',
      'taught',
      'swapped',
      'by lot',
      'checks',
      'wrong',
      'ended',
      '.25',
      '.5',
      '1',
      'truths',
    ]),
    ...rows.map((row) =>
      line(row.model, [
        ...[
          row.ours,
          row.rule,
          row.ahead,
          row.optimum,
          row.oneStep,
          row.rollout,
          row.information,
          row.taught,
          row.swapped,
          row.lot,
        ].map(money),
        row.checks.toFixed(1),
        row.wrongParts.toFixed(2),
        share(row.handedOver),
        ...row.disturbed.map(({ excess }) => share(excess)),
        String(row.truths),
      ]),
    ),
    '',
  ].join('\n');
}

/** One tree: every way, then the trials beside it. */
export function treeTable(row: TreeRow): string {
  const ours = row.ways.find(({ way }) => way === 'this program')!;
  const taught = row.ways.find(({ way }) => way === 'taught order')!;
  const swapped = row.ways.find(({ way }) => way === 'likeliest part first')!;
  const every = row.ways.find(({ way }) => way === 'every check')!;
  const beside = (name: string, score: WayScore): string => wayLine(`  ${name}`, score);
  return [
    `${row.tree} (${row.causes} causes, ${row.checks} checks)`,
    line('', ['right', 'check min', 'cost min', '+/-', 'checks', 'wrong', 'handed over']),
    ...row.ways.map((score) => wayLine(score.way, score)),
    line('least, cause known', ['', '', row.least.known.toFixed(0)]),
    line('least, proven', ['', '', row.least.proven.toFixed(0)]),
    `  ours / taught ${(ours.cost / taught.cost).toFixed(2)} (wanted .60; what is proven to be the least over all coaches is ${(row.least.proven / taught.cost).toFixed(2)} of it), ours / swapped ${(ours.cost / swapped.cost).toFixed(2)} (wanted .40), right / every check ${(ours.right / every.right).toFixed(2)} (wanted .97)`,
    ...row.disturbed.flatMap(({ sigma, ours: own, taught: order }) => [
      beside(`tables off by ${sigma}`, own),
      beside(`  taught order`, order),
    ]),
    beside(`without ${row.removed.cause}`, row.removed.ours),
    beside('  taught order', row.removed.taught),
    beside('two faults', row.twoFaults.ours),
    beside('  taught order', row.twoFaults.taught),
    `  owner without tools: ${(row.drive.toldToDrive * 100).toFixed(1)} in 100 coaches with a danger cause were told "drive and book" (${row.drive.dangerCoaches} coaches)`,
    '',
  ].join('\n');
}

function wayLine(name: string, s: WayScore): string {
  return line(name, [
    share(s.right),
    s.checkMinutes.toFixed(0),
    s.cost.toFixed(0),
    (2 * s.costError).toFixed(0),
    s.checks.toFixed(1),
    s.wrongParts.toFixed(2),
    share(s.handedOver),
  ]);
}

function share(value: number): string {
  return `${(value * 100).toFixed(1)} %`;
}

function line(name: string, cells: readonly string[]): string {
  return name.padEnd(26) + cells.map((cell) => cell.padStart(12)).join('');
}
