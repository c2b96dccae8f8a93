import type { Tree, Vocabulary } from '../../../shared/knowledge/index.ts';
import type { PinnedTree } from '../../../shared/visit/index.ts';
import { cause, check, tree } from '../planning/small-tree.ts';

/** Hash under which the invented tree is pinned. */
export const HASH = 'ab12cd34'.repeat(8);

/** A small tree whose every figure, limit and source is invented, so that the expected document does not move with the shipped ones. */
const TREE: Tree = tree(
  [
    cause('bearing', 3, {
      name: 'left front wheel bearing rough',
      plain: 'The rollers that carry the wheel have worn pits into their track',
      hazard: 'danger',
      urgency: 'within one long drive the wheel can be lost',
      correction: {
        does: 'Renew bearing, cup and seal',
        parts: ['bearing', 'cup', 'seal'],
        hours: [3, 5],
        alsoWhileOpen: [],
        rebuildOrReplace: 'Renew',
      },
    }),
    cause('tyre', 5, { name: 'front tyre worn in blocks', plain: 'The tread has worn unevenly', hazard: 'nuisance' }),
    cause('bushing', 2, { name: 'shackle bushing dry', plain: 'A rubber bushing has gone hard' }),
  ],
  [
    check(
      'where',
      ['front', 'rear'],
      [
        [0.9, 0.1],
        [0.8, 0.2],
        [0.3, 0.7],
      ],
      {
        name: 'Where it is loudest',
        results: [
          { id: 'front', label: 'at the front', range: null },
          { id: 'rear', label: 'at the rear', range: null },
        ],
      },
    ),
    check(
      'end-play',
      ['within', 'loose'],
      [
        [0.2, 0.8],
        [0.9, 0.1],
        [0.9, 0.1],
      ],
      {
        name: 'End play by dial gauge',
        site: 'wheel-end',
        limits: ['play'],
        measure: { unit: 'in', of: 'hub against spindle', instrument: 'dial' },
        results: [
          { id: 'within', label: 'within the figure', range: [0, 0.006] },
          { id: 'loose', label: 'loose', range: [0.006, 0.05] },
        ],
      },
    ),
    check(
      'spin',
      ['smooth', 'gritty'],
      [
        [0.05, 0.95],
        [0.97, 0.03],
        [0.97, 0.03],
      ],
      {
        name: 'Raised, spun by hand',
        site: 'wheel-end',
        settles: ['bearing'],
        results: [
          { id: 'smooth', label: 'smooth', range: null },
          { id: 'gritty', label: 'gritty', range: null },
        ],
      },
    ),
    check(
      'tread',
      ['even', 'blocks'],
      [
        [0.9, 0.1],
        [0.1, 0.9],
        [0.9, 0.1],
      ],
      {
        name: 'Palm over the tread',
        results: [
          { id: 'even', label: 'even', range: null },
          { id: 'blocks', label: 'worn in blocks', range: null },
        ],
      },
    ),
  ],
  {
    id: 'growl',
    version: 4,
    title: 'Growl through the floor (invented)',
    unlistedShare: 0.04,
    stopRules: [
      {
        id: 'hot-hub',
        verdict: 'stay-put',
        when: 'a hub is too hot to touch',
        why: 'a hub too hot to touch can seize',
        ask: 'Is any hub too hot to touch?',
        now: '',
        covers: ['bearing'],
        firedBy: [],
      },
    ],
    proofs: [
      {
        after: 'bearing',
        steps: ['Write down end play.', 'Try the wheel nuts after 50 miles.'],
        wait: 'quiet on the same stretch after 500 miles',
        minutes: 45,
        access: 'parked',
        sensitivity: 0.9,
        specificity: 0.98,
      },
      {
        after: '*',
        steps: ['Drive the same stretch.'],
        wait: 'quiet on the same stretch',
        minutes: 30,
        access: 'parked',
        sensitivity: 0.9,
        specificity: 0.98,
      },
    ],
  },
);

const VOCABULARY: Vocabulary = {
  limits: new Map([
    [
      'play',
      {
        id: 'play',
        quantity: 'end play of a front hub',
        value: '0.001–0.005 in',
        source: 'invented hub sheet, page 3',
        status: 'second-hand',
        disagreement: {
          others: [{ value: '0.010 in at most', source: 'invented inspection book', status: 'memory' }],
          taken: '0.001–0.005 in, the stricter one',
        },
      },
    ],
  ]),
  instruments: new Map([
    [
      'dial',
      {
        id: 'dial',
        name: 'dial gauge',
        unit: 'in',
        uncertainty: 0.0005,
        range: [0, 0.1],
        source: 'invented',
        status: 'judgement',
      },
    ],
  ]),
  access: [
    { id: 'parked', name: 'parked', means: 'as it stands', openMinutes: 0, closeMinutes: 0, forbids: [], moves: false },
  ],
  layout: [
    {
      id: 'axles',
      ask: 'How many axles has it?',
      values: [
        { value: 'two', label: 'two' },
        { value: 'three', label: 'three' },
      ],
    },
  ],
  checks: new Map(),
  tools: [],
  road: [],
};

export const PINNED: ReadonlyMap<string, PinnedTree> = new Map([[HASH, { tree: TREE, vocabulary: VOCABULARY }]]);
