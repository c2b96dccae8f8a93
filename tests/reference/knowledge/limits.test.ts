import { describe, expect, it } from 'vitest';
import { convert, unitOf, type Quantity } from '../../../shared/units/index.ts';
import { DISAGREEING, NOT_IN_THIS_TABLE, SOURCED, WORKED } from './limit-table.ts';
import { figuresIn, isBareFigure, numbersOf } from './printed-figures.ts';
import { shippedTrees } from '../../shipped-trees.ts';

const { trees, vocabulary } = await shippedTrees();
const limits = vocabulary!.limits;
const shipped = [...trees.values()].flatMap(({ value }) => value ?? []);
/** Checks with bands: those of the vocabulary, and those that one tree has to itself. */
const measuring = [
  ...vocabulary!.checks.values(),
  ...shipped.flatMap(({ checks }) => checks.filter(({ sharedAs }) => sharedAs === undefined)),
].flatMap((check) => (check.measure ? [{ ...check, measure: check.measure }] : []));
const limitOf = (id: string) => {
  const limit = limits.get(id);
  if (!limit) throw new Error(`The vocabulary has no limit "${id}".`);
  return limit;
};

/** "Not more than 3 psi in 1 minute" limits a rate; a difference of temperatures is printed in degrees. */
const alsoPrintedAs: Partial<Record<Quantity, Quantity>> = {
  'pressure-rate': 'pressure',
  'temperature-difference': 'temperature',
};

/** Whether a printed text has a figure, in its own unit or another of the same quantity. */
function prints(text: string, value: number, unit: string): boolean {
  return figuresIn(text).some(
    (figure) =>
      unitOf(figure.unit).quantity === unitOf(unit).quantity &&
      Math.abs(convert(figure.value, figure.unit, unit) - value) < 1e-9,
  );
}

describe('[KNO-11] limits against the sources they name', () => {
  it.each(SOURCED.flatMap((row) => row.limits.map((id) => [id, row] as const)))('%s', (id, row) => {
    const { value, status } = limitOf(id);
    for (const figure of row.figures)
      expect(prints(value, figure, row.unit), `${figure} ${row.unit} in "${value}" (${row.source})`).toBe(true);
    // A figure that was only remembered when this table was made may have been read since, never the other way round.
    if (row.status !== 'practice') expect(['seen', 'second-hand', 'memory', 'practice']).toContain(status);
  });
  it('every limit that bands rest on is in the table, is judgement, or is named as one with a source of its own', () => {
    const used = new Set(measuring.flatMap((check) => check.limits));
    const placed = new Set([...SOURCED.flatMap((row) => row.limits), ...NOT_IN_THIS_TABLE.map(({ limit }) => limit)]);
    const loose = [...used].filter((id) => !placed.has(id) && limitOf(id).status !== 'judgement');
    expect(loose).toEqual(['free-stroke']);
    // Free stroke: the table knows the other figure alone, see below.
    expect(limitOf('free-stroke').disagreement).toBeDefined();
    expect(NOT_IN_THIS_TABLE.filter(({ limit, why }) => !used.has(limit) || why.length < 10)).toEqual([]);
    const sourced = new Set(SOURCED.flatMap((row) => row.limits));
    expect(NOT_IN_THIS_TABLE.filter(({ limit }) => sourced.has(limit))).toEqual([]);
  });
  it('a limit known from a text that quotes its source does not say that the source was read', () => {
    const quoted = [...limits.values()].filter(({ source }) =>
      /quot|as listed|as recorded|read in a|reproduc|reprint|paraphras/.test(source),
    );
    expect(quoted.length).toBeGreaterThanOrEqual(8);
    expect(quoted.filter(({ status }) => status === 'seen').map(({ id }) => id)).toEqual([]);
  });
});

describe('[KNO-12] where sources disagree, the limit names both and says which the bands follow', () => {
  it.each(DISAGREEING.flatMap((row) => row.limits.map((id) => [id, row] as const)))('%s', (id, row) => {
    const { disagreement } = limitOf(id);
    expect(disagreement, row.source).toBeDefined();
    const other = disagreement!.others.find((said) =>
      row.figures.every((figure) => prints(said.value, figure, row.unit)),
    );
    expect(other, `${row.figures.join(', ')} ${row.unit}: ${row.source}`).toBeDefined();
    expect(other!.status).toBe(row.status);
    expect(disagreement!.taken.length).toBeGreaterThan(10);
  });
});

describe('[KNO-13] figures and units of the limits', () => {
  const plain = new Set(['ratio', 'percent', 'drop-rate', 'consumption']);

  it('a figure printed in two units is the same in both, as finely as it is printed', () => {
    const printed = [...limits.values()].flatMap(({ id, value, disagreement }) =>
      [value, ...(disagreement?.others.map((said) => said.value) ?? [])].map((text) => ({ id, value: text })),
    );
    const pairs = printed.flatMap(({ id, value }) =>
      [...value.matchAll(/([^(;,]+) \(([^)]+)\)/g)].flatMap(([, before, inside]) => {
        const [outer, inner] = [figuresIn(before!), figuresIn(inside!)];
        // A bracket with words in it is a remark, not the same figure once more.
        if (inner.length === 0 || outer.length < inner.length || !isBareFigure(inside!)) return [];
        const last = outer.slice(-inner.length);
        return inner.map((figure, i) => ({ id, figure, other: last[i]!, text: inside! }));
      }),
    );
    expect(pairs.length).toBeGreaterThanOrEqual(7);
    for (const { id, figure, other, text } of pairs) {
      const digits = /\.(\d+)/.exec(text)?.[1]!.length ?? 0;
      expect(
        Math.abs(convert(other.value, other.unit, figure.unit) - figure.value),
        `${id}: ${text}`,
      ).toBeLessThanOrEqual(
        // Half a step of the last printed digit, and as much again for the figure it was converted from.
        10 ** -digits,
      );
    }
  });
  it.each(measuring.map((check) => [check.id, check] as const))(
    '%s: limits and bands are in one quantity',
    (_, check) => {
      const { quantity } = unitOf(check.measure.unit);
      const printed = check.limits.flatMap((id) => figuresIn(`${limitOf(id).quantity}; ${limitOf(id).value}`));
      const fits = printed.filter(({ unit }) => [quantity, alsoPrintedAs[quantity]].includes(unitOf(unit).quantity));
      if (!plain.has(quantity)) expect(fits.length, JSON.stringify(printed)).toBeGreaterThan(0);
      for (const { value, unit } of fits) {
        if (unitOf(unit).quantity === quantity)
          expect(convert(value, unit, check.measure.unit)).toSatisfy(Number.isFinite);
      }
    },
  );
  it.each(measuring.map((check) => [check.id, check] as const))(
    '%s: every band edge is a figure of its limits',
    (_, check) => {
      const numbers = check.limits.flatMap((id) => numbersOf(`${limitOf(id).quantity}; ${limitOf(id).value}`));
      const edges = check.results.flatMap(({ range }) => range ?? []).flatMap((edge) => edge ?? []);
      // 0 is where a deviation from the limit itself begins.
      const without = edges.filter(
        (edge) => edge !== 0 && !numbers.some((each) => Math.abs(each - Math.abs(edge)) < 1e-9),
      );
      expect(without).toEqual([]);
      expect(edges.length).toBeGreaterThan(0);
    },
  );
});

describe('[KNO-14] worked readings fall in the band that the source gives them', () => {
  it.each(WORKED.map((row) => [`${row.check} ${row.because}`, row] as const))('%s', (_, row) => {
    const check = measuring.find(({ id }) => id === row.check);
    const reading = convert(row.reading, row.unit, check!.measure.unit);
    const band = check!.results.find(
      ({ range }) => range && reading >= (range[0] ?? -Infinity) && reading < (range[1] ?? Infinity),
    );
    expect(band?.id).toBe(row.band);
  });
  it('every check with a figure that was read in its source has a worked reading', () => {
    const worked = new Set(WORKED.map(({ check }) => check));
    const withFigure = measuring.filter((check) => {
      const { quantity } = unitOf(check.measure.unit);
      const read = check.limits.map(limitOf).filter(({ status }) => status === 'seen' || status === 'second-hand');
      return read.some(({ value }) =>
        figuresIn(value).some(({ unit }) => [quantity, alsoPrintedAs[quantity]].includes(unitOf(unit).quantity)),
      );
    });
    expect(withFigure.length).toBeGreaterThanOrEqual(25);
    expect(withFigure.map(({ id }) => id).filter((id) => !worked.has(id))).toEqual([]);
  });
});
