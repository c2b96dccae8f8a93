import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SHIPPED_TREES } from '../../electron/cli/load-trees.ts';
import { STATUSES, type CheckHazard } from '../../shared/knowledge/index.ts';
import { shippedTrees } from '../shipped-trees.ts';

const { trees, vocabulary } = await shippedTrees();
const shipped = [...trees.values()].flatMap(({ value }) => value ?? []);
const textOf = (path: string): string => readFileSync(`${SHIPPED_TREES}/${path}`, 'utf8');
/** The comment at the top of a file, on one line. */
const headOf = (path: string): string => /^(#.*\n)+/.exec(textOf(path))?.[0].replace(/\n# ?/g, ' ') ?? '';

/** What getting there alone brings with it. */
const HAZARD_OF_ACCESS: Readonly<Record<string, CheckHazard>> = {
  'road-test': 'road',
  'hot-stop': 'hot',
  'chocked-raised': 'lifts',
  'wheel-off': 'lifts',
  'hub-open': 'lifts',
  'under-coach': 'under',
  'engine-running': 'runs',
};

describe('[KNO-16] no figure without a basis', () => {
  it.each(shipped.map(({ id }) => id))(
    '%s says that its weights, likelihoods, minutes and hours are judgement',
    (id) => {
      const head = headOf(`${id}/tree.yaml`);
      for (const word of ['weights', 'likelihoods', 'minutes', 'hours']) expect(head.toLowerCase()).toContain(word);
      expect(head).toMatch(/are judgement/);
      expect(textOf(`${id}/tree.yaml`)).toMatch(/\(judgement\)\.?\nunlisted: /);
    },
  );
  it.each(['access', 'instruments', 'layout', 'limits', 'tools'])(
    'vocabulary/%s.yaml says what its figures are',
    (name) => {
      expect(headOf(`vocabulary/${name}.yaml`) + textOf(`vocabulary/${name}.yaml`)).toMatch(/judgement/);
    },
  );
  it('every limit and every instrument has a source and says how it was read', () => {
    const all = [...vocabulary!.limits.values(), ...vocabulary!.instruments.values()];
    expect(all.length).toBeGreaterThan(80);
    for (const { id, source, status } of all) {
      expect(source.length, id).toBeGreaterThan(8);
      expect(STATUSES, id).toContain(status);
      if (/no source/.test(source))
        expect(['practice', 'judgement'], `${id} says that it has no source`).toContain(status);
    }
  });
  it('every measuring check names limits and an instrument of the vocabulary', () => {
    const measuring = shipped.flatMap(({ checks }) => checks.filter(({ measure }) => measure));
    expect(measuring.length).toBeGreaterThan(15);
    for (const { id, measure, limits } of measuring) {
      expect(vocabulary!.instruments.has(measure!.instrument), id).toBe(true);
      expect(limits.length, id).toBeGreaterThan(0);
      for (const limit of limits) expect(vocabulary!.limits.has(limit), limit).toBe(true);
    }
  });
});

it('[KNO-17] there are causes that can hurt people, so that the gates below hold something', () => {
  const danger = shipped.flatMap(({ causes }) => causes.filter(({ hazard }) => hazard === 'danger'));
  expect(danger.length).toBeGreaterThan(20);
});

describe.each(shipped.map((tree) => [tree.id, tree] as const))('[KNO-17] %s: what can hurt is said', (id, tree) => {
  const danger = tree.causes.filter(({ hazard }) => hazard === 'danger');

  it('every cause that can hurt people has a strict rule with its reason and its question', () => {
    for (const cause of danger) {
      const strict = tree.stopRules.filter(
        (rule) => rule.verdict !== 'drive-and-book' && rule.covers.includes(cause.id),
      );
      expect(strict.length, cause.id).toBeGreaterThan(0);
      for (const rule of strict) {
        expect(rule.why.length, rule.id).toBeGreaterThan(8);
        expect(rule.ask, rule.id).toMatch(/\?$/);
      }
    }
  });
  it('every cause that can hurt people is settled by a check, and each check that settles it says a caution', () => {
    for (const cause of danger) {
      const settling = tree.checks.filter(({ settles }) => settles.includes(cause.id));
      expect(settling.length, cause.id).toBeGreaterThan(0);
      expect(
        settling.filter(({ cautions }) => cautions.length === 0).map((check) => check.id),
        cause.id,
      ).toEqual([]);
    }
  });
  it('a check without a caution only asks: nothing opened, no tool, no hazard', () => {
    const silent = tree.checks.filter(({ cautions }) => cautions.length === 0);
    for (const check of silent) {
      expect(['parked', 'inside-coach'], check.id).toContain(check.access);
      expect([...check.tools, ...check.hazards], check.id).toEqual([]);
    }
  });
  it('a check names the hazard of the place where it is done', () => {
    const without = tree.checks.filter(({ access, hazards }) => {
      const hazard = HAZARD_OF_ACCESS[access];
      return hazard !== undefined && !hazards.includes(hazard);
    });
    expect(without.map((check) => `${check.id} at ${check.access}`)).toEqual([]);
  });
  it('cautions stand before steps', () => {
    for (const file of [`${id}/tree.yaml`, 'vocabulary/checks.yaml']) {
      // From one check to the next, the key that comes first.
      const keys = [...textOf(file).matchAll(/^ +(id|cautions|steps):|^ *- (id): /gm)].map(
        ([, key, start]) => start ?? key,
      );
      const late = keys.filter((key, i) => key === 'cautions' && keys[i - 1] === 'steps');
      expect(late, file).toEqual([]);
    }
  });
});

describe('[KNO-6] pictures', () => {
  const files = readdirSync(`${SHIPPED_TREES}/pictures`);
  const used = shipped.flatMap(({ checks }) => checks.flatMap(({ pictures }) => pictures));
  it.each(files)('%s names and describes itself, and a tree uses it with a text alternative', (file) => {
    const text = textOf(`pictures/${file}`);
    const [, title] = /<title[^>]*>([^<]+)<\/title>/.exec(text) ?? [];
    const [, described] = /<desc[^>]*>([^<]+)<\/desc>/.exec(text) ?? [];
    expect(title?.trim().length).toBeGreaterThan(5);
    expect(described?.trim().length).toBeGreaterThan(20);
    for (const [, id] of text.matchAll(/<(?:title|desc) id="([^"]+)"/g))
      expect(/aria-labelledby="([^"]+)"/.exec(text)?.[1]?.split(' ')).toContain(id);
    const uses = used.filter((picture) => picture.file === file);
    expect(uses.length).toBeGreaterThan(0);
    for (const { alt } of uses) expect(alt.trim().length).toBeGreaterThan(20);
  });
});
