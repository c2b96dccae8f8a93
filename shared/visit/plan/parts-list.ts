import { partKey, realParts } from './cost-band.ts';
import { partWords } from '../inspection/items.ts';
import { isDescribed } from './inspected-work.ts';
import type { InspectedItem } from './inspected.ts';
import { identityAsked } from './part-identity.ts';
import { placeWords, samePlace } from '../../knowledge/places.ts';
import type { Identity, PartNeed, PartRow, PartsList, PlanLine } from './plan.ts';
import type { PlanState } from './state.ts';

/** A name that says itself that the part is needed only under a condition. */
const CONDITIONAL = /\b(if|when|where needed|after inspection|depends on)\b/i;

/** What a line must say for its parts to be ordered. */
type Ordering = Pick<PlanLine, 'id' | 'place' | 'parts' | 'proof' | 'decision' | 'urgency' | 'title'>;

/** Whether a line is really done: not declined or put off, and one that is only watched not before it is agreed to. */
export function isInWork({ decision, urgency, proof }: Pick<PlanLine, 'decision' | 'urgency' | 'proof'>): boolean {
  if (proof.doneAt !== undefined) return true;
  if (decision) return decision.decision === 'agreed';
  return urgency !== 'watch';
}

/**
 * One list for the whole visit: a part that several lines name is one row with every place. What decides a part is asked once
 * a place; while it is not known the row says "measure".
 */
export function partsList(
  lines: readonly Ordering[],
  state: Pick<PlanState, 'measured' | 'marks' | 'bases'>,
  items: readonly InspectedItem[],
): PartsList {
  const rows = new Map<string, { name: string; needs: PartNeed[]; done: boolean[] }>();
  for (const line of lines.filter(isInWork)) {
    for (const name of realParts(line.parts)) {
      const key = partKey(name);
      const row = rows.get(key) ?? { name, needs: [], done: [] };
      rows.set(key, row);
      if (row.needs.some((need) => need.line === line.id)) continue;
      row.needs.push({ line: line.id, place: line.place ?? '' });
      row.done.push(line.proof.doneAt !== undefined);
    }
  }
  return {
    rows: [...rows].map(([key, { name, needs, done }]) => rowOf(key, name, needs, done.every(Boolean), state)),
    warnings: notOpenedWarnings(items),
  };
}

function rowOf(
  key: string,
  name: string,
  needs: readonly PartNeed[],
  fitted: boolean,
  { measured, marks, bases }: Pick<PlanState, 'measured' | 'marks' | 'bases'>,
): PartRow {
  const identity = identityAsked(name).map((ask): Identity => ({
    ...ask,
    found: measured
      .filter(({ part, what }) => part === key && what === ask.id)
      .map(({ place, found: value, at, by }) => ({ place, value, at, by })),
  }));
  const places = [...new Map(needs.map(({ place }) => [placeWords(place), place])).values()];
  const measureFirst = identity.flatMap(({ ask, found }) =>
    places
      .filter((place) => !found.some((each) => samePlace(each.place, place) || each.place === ''))
      .map((place) => (place === '' ? ask : `${ask}: ${place}`)),
  );
  const onlyIf = CONDITIONAL.test(name);
  const mark = marks.get(key);
  const state = fitted
    ? 'fitted'
    : mark !== undefined && mark !== 'none'
      ? mark
      : onlyIf
        ? 'if'
        : measureFirst.length > 0
          ? 'measure'
          : 'order';
  return { key, name, needs, identity, measureFirst, onlyIf, state, price: bases.get(`part:${key}`) ?? null };
}

/** While something is not opened, the list may still grow: ordering now may mean ordering twice. */
export function notOpenedWarnings(items: readonly InspectedItem[]): string[] {
  return items
    .filter(({ state }) => state === 'not-opened')
    .map(({ item, site }) => {
      const name = isDescribed(item) ? partWords(item) : item;
      return `Not opened yet: ${name}${site ? `, ${site}` : ''}. What it needs is not on this list.`;
    });
}
