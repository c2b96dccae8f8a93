import type { Hold } from '../../planning/situation.ts';
import { itemLine } from '../plan/line-id.ts';
import type { PlanState } from '../plan/state.ts';
import { sheetHold, strictestFirst, type SheetHold } from '../sheet-hold.ts';
import { heldWhileBad, partWords } from './items.ts';
import { hubPairVerdict, pairsOf } from './pairs.ts';
import { heldAgainst, QUANTITIES, quantityOf } from './quantities.ts';
import type { InspectionItem, InspectionState } from './state.ts';

/** What lifts a hold of the inspection. */
const AGAIN = 'record it again under Inspection';

/**
 * Everything in the inspection that holds the coach, strictest first, in the order of the entries. A part that was put right
 * holds no more once it is recorded again, or once its own line of the plan is done and proven after it was found.
 */
export function inspectionHolds(state: InspectionState, plan: Pick<PlanState, 'said'>): SheetHold[] {
  const open = state.items.filter((item) => !provenSince(item, plan));
  const parts = open.flatMap((item): SheetHold[] => {
    const found = wrongWith(item);
    if (!found) return [];
    const name = [partWords(item.item), item.site].filter(Boolean).join(', ');
    const held = heldWhileBad(item.item);
    const verdict = !found.certain && held === 'stay-put' ? 'creep-to-safe-place' : held;
    return verdict === 'drive-and-book'
      ? []
      : [sheetHold(item.id, verdict, `Inspection: ${name}: ${found.words}.`, AGAIN)];
  });
  return strictestFirst([...parts, ...hubHolds(state, open)]);
}

/**
 * What the inspection holds the coach to; null when nothing in it does. That is no permission: what was not looked at is not
 * known, and "good" speaks for one part at one place alone.
 */
export function inspectionVerdict(state: InspectionState, plan: Pick<PlanState, 'said'>): Hold | null {
  return inspectionHolds(state, plan)[0] ?? null;
}

/** What is wrong with a part, by what was said of it and by its figures, whichever is worse; null when nothing is. */
function wrongWith(item: InspectionItem): { readonly certain: boolean; readonly words: string } | null {
  if (item.facts['oily'] === 'yes') return { certain: true, words: 'oil on it' };
  const judged = item.readings.flatMap(({ what }) => {
    const quantity = quantityOf(what);
    const outcome = quantity && quantity.item === item.item ? heldAgainst(item, quantity) : null;
    return quantity && outcome?.kind === 'held' ? [{ words: quantity.words.toLowerCase(), outcome }] : [];
  });
  const beyond = judged.find(({ outcome }) => outcome.decision === 'fails');
  if (beyond) return { certain: true, words: `${beyond.words} beyond its limit` };
  if (item.state === 'bad')
    return { certain: true, words: item.note.trim() === '' ? 'found bad' : `found bad, “${item.note.trim()}”` };
  const close = judged.find(({ outcome }) => outcome.decision === 'too-close');
  if (close)
    return { certain: false, words: `${close.words} too near its limit to tell, and that counts against driving` };
  return null;
}

/** Pairs of hubs whose heat asks for a look before driving: held until they were looked at and read again. */
function hubHolds(state: InspectionState, open: readonly InspectionItem[]): SheetHold[] {
  const heat = QUANTITIES.find(({ what }) => what === 'hub-heat');
  if (!heat) return [];
  return pairsOf(state, heat).flatMap((pair): SheetHold[] => {
    const judged = hubPairVerdict(pair);
    const { left, right } = pair;
    if (!left || !right || !judged || judged.verdict === 'usual' || judged.verdict === 'caution') return [];
    const hotter = left.value >= right.value ? left.item : right.item;
    if (!open.includes(hotter)) return [];
    return [sheetHold(hotter.id, 'stay-put', `Inspection: hub, ${hotter.site}: ${judged.why}.`, AGAIN)];
  });
}

function provenSince({ id, foundAt: found }: InspectionItem, { said }: Pick<PlanState, 'said'>): boolean {
  const line = said.get(itemLine(id));
  return line?.done !== undefined && line.proven?.outcome === 'held' && line.proven.at > found;
}
