import { addNode, infer } from 'bayesjs';
import { describe, expect, it } from 'vitest';
import { beliefModel, posterior, type Finding } from '../../../shared/inference/index.ts';
import { cause, check, tree } from '../../unit/planning/small-tree.ts';

/**
 * A network becomes a belief model by taking every setting of its hidden nodes as one cause; observed nodes are checks.
 * Published networks then test posterior sums over many causes.
 */
const sure = (value: boolean): readonly number[] => (value ? [1, 0] : [0, 1]);
const chance = (p: number): readonly number[] => [p, 1 - p];
const saw = (id: string, yes: boolean): Finding => ({
  id,
  check: id,
  value: { kind: 'result', result: yes ? 'yes' : 'no' },
});
const BOTH = [true, false];

interface Patient {
  readonly asia: boolean;
  readonly smoke: boolean;
  readonly tub: boolean;
  readonly lung: boolean;
  readonly bronc: boolean;
}
const patients: Patient[] = BOTH.flatMap((asia) =>
  BOTH.flatMap((smoke) =>
    BOTH.flatMap((tub) => BOTH.flatMap((lung) => BOTH.map((bronc) => ({ asia, smoke, tub, lung, bronc })))),
  ),
);
const p = (share: number, value: boolean): number => (value ? share : 1 - share);
const weightOf = ({ asia, smoke, tub, lung, bronc }: Patient): number =>
  p(0.01, asia) * 0.5 * p(asia ? 0.05 : 0.01, tub) * p(smoke ? 0.1 : 0.01, lung) * p(smoke ? 0.6 : 0.3, bronc);
const dyspOf = ({ tub, lung, bronc }: Patient): number => (tub || lung ? (bronc ? 0.9 : 0.7) : bronc ? 0.8 : 0.1);
const chest = beliefModel(
  tree(
    patients.map((each, i) => cause(`p${i}`, weightOf(each))),
    [
      check(
        'asia',
        ['yes', 'no'],
        patients.map(({ asia }) => sure(asia)),
      ),
      check(
        'smoke',
        ['yes', 'no'],
        patients.map(({ smoke }) => sure(smoke)),
      ),
      check(
        'xray',
        ['yes', 'no'],
        patients.map(({ tub, lung }) => chance(tub || lung ? 0.98 : 0.05)),
      ),
      check(
        'dysp',
        ['yes', 'no'],
        patients.map((each) => chance(dyspOf(each))),
      ),
    ],
  ),
  {},
  { floor: 0 },
);
function believed(findings: Readonly<Record<string, boolean>>, of: (patient: Patient) => boolean): number {
  const { probability } = posterior(
    chest,
    Object.entries(findings).map(([id, yes]) => saw(id, yes)),
  );
  return patients.reduce((sum, patient, i) => (of(patient) ? sum + probability[i]! : sum), 0);
}

const HIDDEN = ['tub', 'lung', 'bronc'] as const;
const VECTORS: [Readonly<Record<string, boolean>>, readonly [number, number, number]][] = [
  [{}, [0.0104, 0.055, 0.45]],
  [{ asia: true }, [0.05, 0.055, 0.45]],
  [{ dysp: true }, [0.0188453075, 0.1027592228, 0.8339673363]],
  [{ asia: true, dysp: true }, [0.087750965, 0.0995251451, 0.8114020716]],
  [{ asia: true, dysp: true, xray: false }, [0.0022486953, 0.002550419, 0.862760773]],
  [{ xray: true, dysp: true, smoke: false }, [0.2556251243, 0.2457933887, 0.5652049863]],
  [{ xray: true }, [0.0924108832, 0.4887114013, 0.5063261561]],
];

describe('[INF-1] chest clinic: Lauritzen & Spiegelhalter, Journal of the Royal Statistical Society B 50, 1988', () => {
  it.each(VECTORS)('given %j', (findings, expected) => {
    HIDDEN.forEach((node, i) =>
      expect(Math.abs(believed(findings, (patient) => patient[node]) - expected[i]!)).toBeLessThan(1e-9),
    );
  });

  it.each(VECTORS)('an independent inference library agrees, given %j', (findings) => {
    const network = chestNetwork();
    const given = Object.fromEntries(Object.entries(findings).map(([id, yes]) => [id, yes ? 'T' : 'F']));
    for (const node of HIDDEN)
      expect(
        Math.abs(believed(findings, (patient) => patient[node]) - infer(network, { [node]: 'T' }, given)),
      ).toBeLessThan(1e-9);
  });
});

function chestNetwork(): Parameters<typeof infer>[0] {
  const states = ['T', 'F'];
  const root = (id: string, share: number) => ({ id, states, parents: [], cpt: { T: share, F: 1 - share } });
  const row = (when: Readonly<Record<string, string>>, share: number) => ({ when, then: { T: share, F: 1 - share } });
  const child = (id: string, parent: string, yes: number, no: number) => ({
    id,
    states,
    parents: [parent],
    cpt: [row({ [parent]: 'T' }, yes), row({ [parent]: 'F' }, no)],
  });
  const pair = (id: string, [a, b]: readonly [string, string], tt: number, tf: number, ft: number, ff: number) => ({
    id,
    states,
    parents: [a, b],
    cpt: [
      row({ [a]: 'T', [b]: 'T' }, tt),
      row({ [a]: 'T', [b]: 'F' }, tf),
      row({ [a]: 'F', [b]: 'T' }, ft),
      row({ [a]: 'F', [b]: 'F' }, ff),
    ],
  });
  return [
    root('asia', 0.01),
    root('smoke', 0.5),
    child('tub', 'asia', 0.05, 0.01),
    child('lung', 'smoke', 0.1, 0.01),
    child('bronc', 'smoke', 0.6, 0.3),
    pair('either', ['tub', 'lung'], 1, 1, 1, 0),
    child('xray', 'either', 0.98, 0.05),
    pair('dysp', ['either', 'bronc'], 0.9, 0.7, 0.8, 0.1),
  ].reduce<Parameters<typeof addNode>[0]>((network, node) => addNode(network, node), {});
}

describe('[INF-1] five-node alarm: Russell & Norvig, Artificial Intelligence: A Modern Approach, 3rd ed.', () => {
  const worlds = BOTH.flatMap((b) => BOTH.flatMap((e) => BOTH.map((a) => ({ b, e, a }))));
  const rings = (b: boolean, e: boolean): number => (b ? (e ? 0.95 : 0.94) : e ? 0.29 : 0.001);
  const alarm = beliefModel(
    tree(
      worlds.map(({ b, e, a }, i) => cause(`w${i}`, p(0.001, b) * p(0.002, e) * p(rings(b, e), a))),
      [
        check(
          'a',
          ['yes', 'no'],
          worlds.map(({ a }) => sure(a)),
        ),
        check(
          'e',
          ['yes', 'no'],
          worlds.map(({ e }) => sure(e)),
        ),
        check(
          'j',
          ['yes', 'no'],
          worlds.map(({ a }) => chance(a ? 0.9 : 0.05)),
        ),
        check(
          'm',
          ['yes', 'no'],
          worlds.map(({ a }) => chance(a ? 0.7 : 0.01)),
        ),
      ],
    ),
    {},
    { floor: 0 },
  );
  it.each([
    [{ j: true, m: true }, 0.2841718354],
    [{ a: true }, 0.3735512283],
    [{ a: true, e: true }, 0.0032684236],
    [{ m: true }, 0.056117454],
    [{ j: true }, 0.0162837299],
    [{ j: false, m: true }, 0.0068762461],
  ])('burglary given %j', (findings, expected) => {
    const { probability } = posterior(
      alarm,
      Object.entries(findings).map(([id, yes]) => saw(id, yes)),
    );
    const burglary = worlds.reduce((sum, { b }, i) => (b ? sum + probability[i]! : sum), 0);
    expect(Math.abs(burglary - expected)).toBeLessThan(1e-9);
  });
});

describe('[INF-1] car start: Jensen & Nielsen, Bayesian Networks and Decision Graphs, 2nd ed. 2007', () => {
  const cars = BOTH.flatMap((fuel) => BOTH.map((clean) => ({ fuel, clean })));
  const start = beliefModel(
    tree(
      cars.map(({ fuel, clean }, i) => cause(`c${i}`, p(0.98, fuel) * p(0.96, clean))),
      [
        check(
          'st',
          ['yes', 'no'],
          cars.map(({ fuel, clean }) => chance(fuel ? (clean ? 0.99 : 0.01) : 0)),
        ),
        check(
          'fm',
          ['full', 'half', 'empty'],
          cars.map(({ fuel }) => (fuel ? [0.39, 0.6, 0.01] : [0.001, 0.001, 0.998])),
        ),
      ],
    ),
    {},
    { floor: 0 },
  );
  it.each([
    [[], 0.2931863492, 0.580626246],
    [['half'], 0.0006908558, 0.8043496283],
    [['empty'], 0.9764134514, 0.0580408333],
  ])('no start, gauge %j: no fuel, dirty plugs', (gauge, noFuel, dirty) => {
    const { probability } = posterior(start, [
      saw('st', false),
      ...gauge.map((result): Finding => ({ id: 'fm', check: 'fm', value: { kind: 'result', result } })),
    ]);
    const sum = (of: (car: (typeof cars)[number]) => boolean): number =>
      cars.reduce((total, car, i) => (of(car) ? total + probability[i]! : total), 0);
    expect(Math.abs(sum(({ fuel }) => !fuel) - noFuel)).toBeLessThan(1e-9);
    expect(Math.abs(sum(({ clean }) => !clean) - dirty)).toBeLessThan(1e-9);
  });
});
