import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  beliefModel,
  evidenceLedger,
  mutualInformation,
  posterior,
  type Finding,
} from '../../../shared/inference/index.ts';
import { cause, check, tree } from '../../unit/planning/small-tree.ts';

/** Expected values: full enumeration by another program, from the same invented tables (theory page, vectors). */
interface Model {
  readonly causes: readonly { readonly id: string; readonly prior: number }[];
  readonly checks: readonly {
    readonly id: string;
    readonly outcomes: readonly string[];
    readonly likelihood: Readonly<Record<string, Readonly<Record<string, number>>>>;
  }[];
}
const model = JSON.parse(
  readFileSync(
    new URL('../../../shared/planning/evaluation/models/m5-slow-air-imperfect.json', import.meta.url),
    'utf8',
  ),
) as Model;
const built = beliefModel(
  tree(
    model.causes.map(({ id, prior }) => cause(id, prior)),
    model.checks.map(({ id, outcomes, likelihood }) =>
      check(
        id,
        outcomes,
        model.causes.map((each) => outcomes.map((outcome) => likelihood[each.id]![outcome]!)),
      ),
    ),
  ),
  {},
  { floor: 0 },
);
const found = (id: string, result: string): Finding => ({ id, check: id, value: { kind: 'result', result } });

describe('[INF-1] slow air build-up: six causes, imperfect checks', () => {
  it.each<[string, readonly Finding[], readonly number[]]>([
    ['nothing', [], [0.28, 0.27, 0.12, 0.13, 0.12, 0.08]],
    [
      'a hiss at the purge valve',
      [found('listen_purge', 'hiss')],
      [
        0.7785410533202486, 0.08832188420019628, 0.03140333660451423, 0.06378802747791952, 0.011776251226692834,
        0.026169447170428524,
      ],
    ],
    [
      'no hiss',
      [found('listen_purge', 'none')],
      [
        0.0604925824571511, 0.34999279850208853, 0.1590090738873686, 0.1591531038455999, 0.1676508713812473,
        0.10370156992654475,
      ],
    ],
    [
      'four findings',
      [
        found('listen_purge', 'none'),
        found('leak_down', 'none'),
        found('cut_out', 'low'),
        found('second_gauge', 'agrees'),
      ],
      [
        0.0067984366080366225, 0.03496338826990264, 0.3494612239915207, 0.5405656367490708, 0.017481694134951316,
        0.05072962024651777,
      ],
    ],
    [
      'findings that disagree',
      [found('listen_purge', 'hiss'), found('second_gauge', 'differs')],
      [
        0.5647393814759156, 0.06406707268844421, 0.022779403622557932, 0.046270663608320814, 0.2705054180178755,
        0.03163806058688603,
      ],
    ],
  ])('%s', (_, findings, expected) => {
    const { probability } = posterior(built, findings);
    expected.forEach((each, c) => expect(Math.abs(probability[c]! - each)).toBeLessThan(1e-9));
  });

  it.each([
    ['listen_purge', 0.4023758236883874],
    ['soap_chambers', 0.40504047023652956],
    ['second_gauge', 0.37665988342935974],
    ['build_time', 0.17197821153216086],
    ['leak_down', 0.39188154203853953],
    ['cut_out', 0.18278012708710967],
  ])('information of %s, bits', (id, bits) => {
    expect(Math.abs(mutualInformation(built.prior, built.tables.get(id)!.likelihood) - bits)).toBeLessThan(1e-9);
  });

  it('[INF-8] ledger for the governor, decibans (Good 1950, weight of evidence)', () => {
    const { before, lines } = evidenceLedger(
      built,
      [
        found('listen_purge', 'none'),
        found('leak_down', 'none'),
        found('cut_out', 'low'),
        found('second_gauge', 'agrees'),
      ],
      'governor',
    );
    expect(Math.abs(before - -8.255759003117817)).toBeLessThan(1e-9);
    [1.026740876809157, 2.671270961146128, 2.953244798411985, 2.3107519622688075].forEach((each, i) =>
      expect(Math.abs(lines[i]!.decibans - each)).toBeLessThan(1e-9),
    );
  });
});

describe('[INF-3] a reading as virtual evidence (Pearl 1988)', () => {
  const bands: readonly (readonly [string, number, number])[] = [
    ['a', 0, 2],
    ['b', 2, 3],
    ['c', 3, 6],
    ['d', 6, 20],
  ];
  const leak = check(
    'leak',
    ['a', 'b', 'c', 'd'],
    [
      [0.85, 0.1, 0.04, 0.01],
      [0.2, 0.3, 0.4, 0.1],
      [0.1, 0.2, 0.4, 0.3],
    ],
    {
      measure: { unit: 'psi/min', of: '', instrument: 'gauge' },
      results: bands.map(([id, low, high]) => ({ id, label: id, range: [low, high] })),
    },
  );
  const leaks = beliefModel(
    tree([cause('tight', 1), cause('fitting', 1), cause('relay', 1)], [leak]),
    {},
    { floor: 0 },
  );
  // Bands of equal width, or one band alone, give the shares; where neighbours differ by more than a factor of 2 the
  // density inside a band counts. Expected values by SciPy, the density form confirmed by numerical integration.
  it.each([
    [2.3, 0.05, [0.1667, 0.5, 0.3333]],
    [5, 1, [0.0555, 0.4721, 0.4724]],
    [1.9, 0.6, [0.5683, 0.2684, 0.1633]],
    [2, 0.01, [0.5429, 0.2857, 0.1714]],
    [2.3, 0.6, [0.4057, 0.3521, 0.2422]],
  ])('%s psi/min with %s', (value, uncertainty, expected) => {
    const { probability } = posterior(leaks, [
      { id: 'leak', check: 'leak', value: { kind: 'reading', value, uncertainty, range: [0, 20] } },
    ]);
    expected.forEach((each, c) => expect(probability[c]).toBeCloseTo(each, 4));
  });
});
