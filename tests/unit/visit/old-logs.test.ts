import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readTree, readVocabulary } from '../../../shared/knowledge/index.ts';
import { EVENT_VERSION, migrate, MIGRATIONS, readEvent, replay, type PinnedTree } from '../../../shared/visit/index.ts';
import { TREE_FILES } from '../../exchange.ts';

const FOLDER = join(import.meta.dirname, 'old-logs');
const { 'tree.yaml': treeYaml = '', ...vocabularyFiles } = TREE_FILES;
const vocabulary = readVocabulary(vocabularyFiles).value!;
const tree = readTree({ treeYaml, file: 'tree.yaml', vocabulary }).value!;
const trees: ReadonlyMap<string, PinnedTree> = new Map([['c'.repeat(64), { tree, vocabulary }]]);
const recordsOf = (name: string): unknown[] =>
  readFileSync(join(FOLDER, name), 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line): unknown => JSON.parse(line));

describe('[VIS-18] logs of older versions', () => {
  it('there is one of each version up to this, with every kind that it had', () => {
    expect(readdirSync(FOLDER)).toEqual(Array.from({ length: EVENT_VERSION }, (_, i) => `version-${i + 1}.jsonl`));
    expect(MIGRATIONS.map(({ from }) => from)).toEqual(Array.from({ length: EVENT_VERSION - 1 }, (_, i) => i + 1));
  });

  it.each(readdirSync(FOLDER))('%s is read whole, and says what it said then', (name) => {
    const records = recordsOf(name);
    const events = records.map((record) => readEvent(record));
    expect(events.map(({ v }) => v)).toEqual(records.map(() => EVENT_VERSION));
    // Written down by hand from the story of the log, not from what the program makes of it.
    expect(replay(events, trees)).toMatchObject({
      coach: 'Invented coach 3',
      demo: true,
      openedAt: '2026-01-05T08:01:00Z',
      phase: 'done',
      who: 'mechanic',
      tools: ['second-person'],
      layout: { 'tag-axle': true },
      layoutNotKnown: ['retarder'],
      costs: { tow: 240 },
      ignored: [],
      complaints: [
        {
          id: 'c1',
          words: 'the horn is dead',
          phase: 'closed',
          closedHow: 'cured',
          noticedAsked: false,
          stopAnswers: { 'no-horn-at-all': 'no' },
          notes: ['owner will wait'],
          photos: [`${'0'.repeat(64)}.jpg`],
          trail: [
            {
              id: 'f1',
              check: 'listen-at-horn',
              value: { kind: 'result', result: 'hiss' },
              site: 'roof, left',
              notes: ['cord pulled twice', 'faint'],
              by: 'Invented name',
              who: 'mechanic',
              minutes: 6,
            },
          ],
          corrections: [
            {
              cause: 'diaphragm-cracked',
              partSeen: 'bad',
              proof: 'gone',
              parts: ['horn diaphragm'],
              findingsBefore: ['f1'],
              minutes: 40,
            },
          ],
          // Six for the check, forty for the correction.
          minutesSpent: 46,
        },
      ],
    });
  });

  it('a step that is missing leaves an old log where it is, and a later step waits for it', () => {
    const second = { from: 2, what: 'renamed', apply: (record: object) => ({ ...record, renamed: true }) };
    expect(migrate({ v: 1, kind: 'x' }, [second])).toEqual({ v: 1, kind: 'x' });
    const first = { from: 1, what: 'added', apply: (record: object) => ({ ...record, added: 1 }) };
    expect(migrate({ v: 1, kind: 'x' }, [first, second])).toEqual({ v: 3, kind: 'x', added: 1, renamed: true });
    expect(migrate({ v: 2, kind: 'x' }, [first, second])).toEqual({ v: 3, kind: 'x', renamed: true });
  });
});
