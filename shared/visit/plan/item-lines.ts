import type { AccessState } from '../../knowledge/vocabulary.ts';
import type { DraftLine } from './draft-line.ts';
import { heldWhileBad, partWords } from '../inspection/items.ts';
import { inspectedWork } from './inspected-work.ts';
import type { InspectedItem } from './inspected.ts';
import { itemLine } from './line-id.ts';
import { meanwhileOf } from './meanwhile.ts';
import { placeWords, samePlace } from '../../knowledge/places.ts';
import type { Reason } from './plan.ts';

/** What an item of the inspection says, one reason a reading; the item's own words when nothing was measured. */
export function itemReasons({ item, site, readings, note, photos, state, at, by }: InspectedItem): Reason[] {
  const words = `${partWords(item)}: ${state}${note ? `, ${note}` : ''}`;
  const head: Reason = { text: words, place: site, limits: [], photos, at, by };
  return [
    ...(readings.length === 0 || note || photos.length > 0 ? [head] : []),
    ...readings.map(({ what, reading, limit }): Reason => ({
      text: `${partWords(item)}, ${what}`,
      place: site,
      reading,
      limits: limit === undefined ? [] : [limit],
      photos: [],
      at,
      by,
    })),
  ];
}

/**
 * Lines for what the inspection found bad or worth watching. An item that another line at the same place renews anyway is a
 * reason of that line and counts no second time.
 *
 * @returns the lines given, with the reasons joined, and the new ones.
 */
export function withItemLines(
  lines: readonly DraftLine[],
  items: readonly InspectedItem[],
  states: readonly AccessState[],
): DraftLine[] {
  const all = [...lines];
  // A bearing comes with its seal, so it is taken first.
  const order = ['bearing', 'hub'];
  const first = (kind: string): number => (order.includes(kind) ? order.indexOf(kind) : order.length);
  for (const item of [...items].sort((a, b) => first(a.item) - first(b.item))) {
    if (item.state !== 'bad' && item.state !== 'watch') continue;
    const { partOf } = inspectedWork(item.item);
    const host =
      item.state === 'bad'
        ? all.findIndex(
            ({ place, parts, proof }) =>
              place !== null &&
              proof.state !== 'held' &&
              samePlace(place, item.site) &&
              parts.some((part) => partOf.test(part.toLowerCase())),
          )
        : -1;
    const into = all[host];
    if (into) all[host] = { ...into, why: [...into.why, ...itemReasons(item)] };
    else all.push(lineOf(item, states));
  }
  return all;
}

function lineOf(item: InspectedItem, states: readonly AccessState[]): DraftLine {
  const work = inspectedWork(item.item);
  const bad = item.state === 'bad';
  const name = partWords(item.item);
  return {
    id: itemLine(item.id),
    from: { kind: 'inspection', item: item.id },
    title: bad ? work.does : `Keep an eye on the ${name}`,
    plain: bad ? work.plain : `The ${name} is not past its limit and is getting there.`,
    asked: `inspection: ${name}`,
    place: placeWords(item.site) === '' ? null : item.site,
    why: itemReasons(item),
    hazard: bad ? work.hazard : 'none',
    danger: bad && work.hazard === 'danger',
    ifLeft: bad ? work.ifLeft : `Once it is past its limit: ${work.ifLeft}`,
    urgency: bad ? (work.hazard === 'danger' ? 'now' : 'soon') : 'watch',
    parts: bad ? work.parts : [],
    minutes: bad ? work.minutes : [0, 0],
    accessIncluded: false,
    ...(bad ? { access: work.access } : { access: 'parked' }),
    states,
    alsoWhileOpen: bad ? work.alsoWhileOpen : [],
    rebuildWords: bad ? work.rebuild : '',
    meanwhile: bad
      ? meanwhileOf(
          heldWhileBad(item.item),
          work.hazard === 'danger'
            ? `The inspection found the ${name}${item.site ? `, ${item.site},` : ''} bad, and this part can hurt people.`
            : `The inspection found the ${name} bad.`,
        )
      : meanwhileOf('drive-and-book', `The ${name} is worth watching. What was not looked at is not known.`),
    proof: { state: 'to-do', steps: bad ? work.proof : [], wait: '' },
  };
}
