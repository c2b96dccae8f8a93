import {
  bestReplacementAge,
  failedShare,
  failsWithin,
  notByCost,
  rebuildOrReplace,
  replaceOrWait,
  type LifeModel,
} from '../../../../shared/measuring/index.ts';
import { digits, grouped, shown } from '../figure-kinds.ts';
import { refused, type Shown } from '../form.ts';
import { Given, source, type Answer, type Asked, type Sheet } from '../sheet.ts';

const SHAPES: readonly (readonly [string, string, number])[] = [
  ['wear', 'Wears out: seals, linings, pumps', 3],
  ['fatigue', 'Tires: rolling bearings', 1.5],
  ['chance', 'Fails by chance: electrics', 1],
];

const LIFE: readonly Asked[] = [
  {
    ask: 'choice',
    name: 'life.safety',
    label: 'What kind of part',
    options: [
      ['no', 'Anything else'],
      ['yes', 'Brake, steering or wheel-end part'],
    ],
    otherwise: 'no',
    where: 'Parts that people’s lives hang on are never weighed by cost.',
  },
  {
    ask: 'choice',
    name: 'life.shape',
    label: 'How such parts fail',
    options: SHAPES,
    otherwise: 'wear',
    where: 'Judgement: what the old parts looked like when they came out.',
  },
  {
    ask: 'figure',
    name: 'life.scale',
    label: 'Age by which 63 in 100 have failed',
    kind: 'distance',
    where: 'Judgement, from your own invoices: the age at which most such parts were renewed.',
    typical: [30_000, 400_000],
  },
  {
    ask: 'figure',
    name: 'life.age',
    label: 'Age of this one',
    kind: 'distance',
    where: 'Odometer now less that on the invoice of the part.',
    typical: [0, 400_000],
  },
  {
    ask: 'figure',
    name: 'life.ahead',
    label: 'Distance it still has to last',
    kind: 'distance',
    where: 'How far the coach is to be driven until it is apart again anyway.',
    typical: [5000, 100_000],
  },
  {
    ask: 'figure',
    name: 'life.part',
    label: 'Price of the part',
    kind: 'plain',
    where: 'A quotation, in your money.',
    typical: [20, 3000],
  },
  {
    ask: 'figure',
    name: 'life.open',
    label: 'Hours to fit it now, while open',
    kind: 'hours',
    where: 'The mechanic’s estimate.',
    typical: [0.2, 8],
  },
  {
    ask: 'figure',
    name: 'life.access',
    label: 'Hours to get there again later',
    kind: 'hours',
    where: 'What opening and closing this place took today.',
    typical: [1, 20],
  },
  {
    ask: 'figure',
    name: 'life.rate',
    label: 'Labour rate an hour',
    kind: 'plain',
    where: 'The shop’s rate, in your money.',
    typical: [40, 250],
  },
  {
    ask: 'figure',
    name: 'life.roadside',
    label: 'Cost of failing on the road',
    kind: 'plain',
    where: 'A heavy tow, nights, a trip lost. Ask the towing firm once: it is more than one thinks.',
    typical: [300, 5000],
  },
];

const CHEAPER = {
  now: 'Renewing it now is cheaper.',
  wait: 'Waiting is cheaper.',
  rebuild: 'The rebuild is cheaper.',
  replace: 'The replacement is cheaper.',
  'no-clear-winner': 'No clear winner: the two lie within a fifth of each other.',
} as const;

export const LIFE_SHEET: Sheet = {
  id: 'life-renew',
  heading: 'Renew it while it is open?',
  fields: LIFE,
  answer(form): Shown<Answer> {
    const given = new Given(form, LIFE);
    if (given.choice('life.safety') !== 'yes' && given.trouble) return given.trouble;
    const shape = SHAPES.find(([id]) => id === given.choice('life.shape'))?.[2] ?? 3;
    const reckon = (factor: number) => {
      const life: LifeModel = { shape, scale: factor * given.figure('life.scale') };
      return replaceOrWait({
        safetyPart: given.choice('life.safety') === 'yes',
        life,
        age: given.figure('life.age'),
        horizon: given.figure('life.ahead'),
        partCost: given.figure('life.part'),
        openHours: given.figure('life.open'),
        accessHours: given.figure('life.access'),
        ratePerHour: given.figure('life.rate'),
        roadsideCost: given.figure('life.roadside'),
      });
    };
    const once = reckon(1);
    if (!once.ok) return refused(once);
    const all = [0.5, 1, 2].map((factor) => ({ factor, found: reckon(factor) }));
    const winners = new Set(all.map(({ found }) => (found.ok ? found.cheaper : '')));
    const life: LifeModel = { shape, scale: given.figure('life.scale') };
    const used = failedShare(life, given.figure('life.age'));
    const best = bestReplacementAge(
      life,
      given.figure('life.part') + given.figure('life.open') * given.figure('life.rate'),
      given.figure('life.part') +
        (given.figure('life.open') + given.figure('life.access')) * given.figure('life.rate') +
        given.figure('life.roadside'),
    );
    const inHundred = (share: number): string => `${digits(100 * share, share < 0.1 ? 1 : 0)} in 100`;
    return {
      kind: 'shown',
      figures: [
        { words: 'It fails before then', figure: inHundred(once.failsIfKept) },
        { words: 'A new one fails before then', figure: inHundred(once.failsIfReplaced) },
        ...(used.ok ? [{ words: 'Such parts that have failed by its age', figure: inHundred(used.probability) }] : []),
        { words: 'Expected cost, now', figure: grouped(once.costNow) },
        { words: 'Expected cost, waiting', figure: grouped(once.costWait) },
        {
          words: 'Break-even: renewing pays if it fails more often than',
          figure: once.breakEven > 1 ? 'never' : inHundred(once.breakEven),
        },
        ...(best.ok
          ? [{ words: 'Cheapest age to renew by plan', figure: shown(best.age, 'distance', form.system) }]
          : []),
      ],
      table: {
        head: ['If the life were', 'Now', 'Waiting', 'Cheaper'],
        rows: all.flatMap(({ factor, found }) =>
          found.ok
            ? [
                [
                  factor === 1 ? 'as judged' : factor < 1 ? 'half' : 'twice',
                  grouped(found.costNow),
                  grouped(found.costWait),
                  { now: 'now', wait: 'waiting', 'no-clear-winner': 'neither' }[found.cheaper],
                ],
              ]
            : [],
        ),
      },
      verdict: CHEAPER[once.cheaper],
      notes: [
        winners.size === 1
          ? 'Firm: half or twice the judged life gives the same answer.'
          : 'Not firm: half or twice the judged life turns it round.',
      ],
      sources: [source('Weibull', 'practice'), source('life and shape; costs as typed')],
    };
  },
};

const AHEAD: readonly Asked[] = LIFE.filter(({ name }) =>
  ['life.safety', 'life.shape', 'life.scale', 'life.age', 'life.ahead'].includes(name),
);

export const FAILS_SHEET: Sheet = {
  id: 'life-fails',
  heading: 'How likely it lasts',
  lead: 'From age and life above, without any cost; for a part that shows nothing wrong.',
  fields: [],
  answer(form) {
    const given = new Given(form, AHEAD);
    const safety = notByCost(given.choice('life.safety') === 'yes');
    if (safety) return refused(safety);
    if (given.trouble) return given.trouble;
    const shape = SHAPES.find(([id]) => id === given.choice('life.shape'))?.[2] ?? 3;
    const rows = [0.5, 1, 2].flatMap((factor) => {
      const found = failsWithin(
        { shape, scale: factor * given.figure('life.scale') },
        given.figure('life.age'),
        given.figure('life.ahead'),
      );
      return found.ok
        ? [[factor === 1 ? 'as judged' : factor < 1 ? 'half' : 'twice', `${digits(100 * found.probability, 0)} in 100`]]
        : [];
    });
    return {
      kind: 'shown',
      table: { head: ['If the life were', 'Fails before then'], rows },
      sources: [source('conditional Weibull probability', 'practice'), source('life and shape')],
    };
  },
};

const REBUILD: readonly Asked[] = [
  {
    ask: 'figure',
    name: 'rebuild.cost',
    label: 'Cost of the rebuild',
    kind: 'plain',
    where: 'Kit and hours, in your money.',
    typical: [50, 5000],
  },
  {
    ask: 'figure',
    name: 'rebuild.back',
    label: 'Rebuilds that come back',
    kind: 'percent',
    where: 'Judgement: of a hundred such rebuilds by these hands, how many were back within the year.',
    typical: [2, 30],
  },
  {
    ask: 'figure',
    name: 'replace.cost',
    label: 'Cost of the replacement',
    kind: 'plain',
    where: 'Part and hours, in your money.',
    typical: [100, 8000],
  },
  {
    ask: 'figure',
    name: 'replace.back',
    label: 'Replacements that come back',
    kind: 'percent',
    where: 'Judgement; remanufactured parts come back too.',
    typical: [1, 15],
  },
  {
    ask: 'figure',
    name: 'again.cost',
    label: 'Cost of doing it again, tow included',
    kind: 'plain',
    where: 'The whole job once more, and what comes with it.',
    typical: [300, 8000],
  },
];

export const REBUILD_SHEET: Sheet = {
  id: 'life-rebuild',
  heading: 'Rebuild or replace',
  fields: REBUILD,
  answer(form) {
    const given = new Given(form, REBUILD);
    if (given.trouble) return given.trouble;
    const found = rebuildOrReplace(
      { cost: given.figure('rebuild.cost'), comeback: given.figure('rebuild.back') / 100 },
      { cost: given.figure('replace.cost'), comeback: given.figure('replace.back') / 100 },
      given.figure('again.cost'),
      0,
    );
    if (!found.ok) return refused(found);
    const even = found.breakEvenComeback;
    return {
      kind: 'shown',
      figures: [
        { words: 'Expected cost, rebuild', figure: grouped(found.rebuildCost) },
        { words: 'Expected cost, replacement', figure: grouped(found.replaceCost) },
        {
          words: 'Break-even: the rebuild pays while fewer come back than',
          figure: even > 1 ? 'any share' : even < 0 ? 'no share' : `${digits(100 * even, 0)} in 100`,
        },
      ],
      verdict: CHEAPER[found.cheaper],
      sources: [source('expected cost, one comeback each'), source('shares of comebacks as typed')],
    };
  },
};
