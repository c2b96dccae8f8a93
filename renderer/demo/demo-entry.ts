import type { VisitEventBody } from '../../shared/visit/index.ts';

/** Name of the invented coach; it says on every page what it is. */
export const DEMO_COACH = 'Invented coach (demo)';
export const MINA = 'Mina (invented)';
export const JOEL = 'Joel (invented)';
export const OWNER = 'The owner (invented)';

/** What somebody wrote down, so many minutes after the visit began. */
export interface DemoEntry {
  readonly minute: number;
  readonly by: string;
  readonly body: VisitEventBody;
}

/** Entries of one person, one after the other, `every` minutes apart. */
export function inTurn(minute: number, by: string, bodies: readonly VisitEventBody[], every = 1): DemoEntry[] {
  return bodies.map((body, i) => ({ minute: minute + i * every, by, body }));
}

type Recorded = Extract<VisitEventBody, { kind: 'inspection.recorded' }>;

/** A part at a place as it was found. */
export function part(
  item: string,
  site: string,
  state: Recorded['state'],
  more: Partial<Pick<Recorded, 'note' | 'photos' | 'readings' | 'facts'>> = {},
): VisitEventBody {
  return { kind: 'inspection.recorded', entry: `${item}@${site}`, item, site, state, ...more };
}

/** A part with one figure, read against its limit where the program has one. */
export function measured(
  item: string,
  site: string,
  what: string,
  value: number,
  unit: string,
  facts?: Recorded['facts'],
  limit?: string,
): VisitEventBody {
  const reading = { what, reading: { value, unit }, ...(limit === undefined ? {} : { limit }) };
  return part(item, site, 'good', { readings: [reading], ...(facts ? { facts } : {}) });
}

/** A finding of a complaint. */
export function finding(
  complaint: string,
  id: string,
  check: string,
  found: string | readonly [value: number, unit: string],
  more: { readonly site?: string; readonly note?: string; readonly photos?: readonly string[] } = {},
): VisitEventBody {
  return {
    kind: 'finding.recorded',
    complaint,
    finding: id,
    check,
    value:
      typeof found === 'string'
        ? { kind: 'result', result: found }
        : { kind: 'reading', reading: { value: found[0], unit: found[1] } },
    ...more,
  };
}

/** A complaint opened, every safety question answered with no, and what was noticed asked. */
export function opened(
  complaint: string,
  tree: { readonly id: string; readonly hash: string; readonly rules: readonly string[] },
  words: string,
): VisitEventBody[] {
  return [
    { kind: 'complaint.opened', complaint, tree: tree.id, treeHash: tree.hash, words },
    ...tree.rules.map((rule): VisitEventBody => ({ kind: 'stop.answered', complaint, rule, answer: 'no' })),
    { kind: 'noticed.asked', complaint },
  ];
}
