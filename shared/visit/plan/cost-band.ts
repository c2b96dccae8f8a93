import type { CostBand, Span } from './plan.ts';

/** Key of a part in the basis of the sums and in the list of parts. */
export function partKey(name: string): string {
  return name
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean)
    .map((word) => (word.length > 3 && /[^s]s$/.test(word) ? word.slice(0, -1) : word))
    .join('-');
}

/** Names of the parts that are really ordered: "none" and the like say that there is nothing to order. */
export function realParts(parts: readonly string[]): string[] {
  return parts.filter((part) => !/^(none|nothing|as found)\b/i.test(part.trim()));
}

/** What minutes of labour and parts come to; undefined without a labour rate, since nobody's price is assumed. */
export function costBand(
  minutes: Span,
  parts: readonly string[],
  bases: ReadonlyMap<string, number>,
): CostBand | undefined {
  const ratePerHour = bases.get('labour-rate');
  if (ratePerHour === undefined) return undefined;
  const prices = realParts(parts).map((name) => ({ name, price: bases.get(`part:${partKey(name)}`) }));
  const partsCost = prices.reduce((sum, { price }) => sum + (price ?? 0), 0);
  return {
    low: (minutes[0] / 60) * ratePerHour + partsCost,
    high: (minutes[1] / 60) * ratePerHour + partsCost,
    ratePerHour,
    partsCost,
    unpriced: prices.filter(({ price }) => price === undefined).map(({ name }) => name),
  };
}
