/** The pages of the bench, without what they hold: the window knows them before the bench is fetched. */
export const BENCH_PAGE_IDS = [
  'leak',
  'build',
  'bands',
  'flow',
  'stroke',
  'lining',
  'heat',
  'endplay',
  'orders',
  'sound',
  'bearing',
  'stop',
  'retard',
  'hand',
  'compare',
  'drip',
  'oil',
  'fluid',
  'limit',
  'life',
  'lift',
] as const;

export type BenchPage = (typeof BENCH_PAGE_IDS)[number];
