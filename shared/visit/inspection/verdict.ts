import { VERDICTS, type Verdict } from '../../knowledge/tree.ts';
import type { Hold } from '../../planning/situation.ts';
import { itemLine } from '../plan/line-id.ts';
import type { PlanState } from '../plan/state.ts';
import { heldWhileBad, INSPECTION_PARTS } from './items.ts';
import { hubPairVerdict, pairsOf } from './pairs.ts';
import { heldAgainst, QUANTITIES, quantityOf } from './quantities.ts';
import type { InspectionItem, InspectionState } from './state.ts';

/** One part that holds the coach. */
export interface InspectionHold extends Hold {
  /** Entry of the part. */
  readonly of: string;
}

const DO_NOW: Readonly<Record<Verdict, string>> = {
  'stay-put':
    'Leave the coach where it stands: parking brake on, wheels chocked. Have it put right and record it again under Inspection before it moves.',
  'creep-to-safe-place':
    'Go slowly to the nearest place off the road, no farther. Have it put right there and record it again under Inspection.',
  'drive-and-book': '',
};

/**
 * Everything in the inspection that holds the coach, strictest first, in the order of the entries. A part that was put right
 * holds no more once it is recorded again, or once its own line of the plan is done and proven after it was found.
 */
export function inspectionHolds(state: InspectionState, plan: Pick<PlanState, 'said'>): InspectionHold[] {
  const open = state.items.filter((item) => !provenSince(item, plan));
  const parts = open.flatMap((item): InspectionHold[] => {
    const found = foundAt(item);
    if (!found) return [];
    const part = INSPECTION_PARTS.find((each) => each.item === item.item);
    const name = [(part?.words ?? item.item.replaceAll('-', ' ')).toLowerCase(), item.site].filter(Boolean).join(', ');
    const verdict = found.certain ? heldWhileBad(item.item) : milderOf('creep-to-safe-place', heldWhileBad(item.item));
    return verdict === 'drive-and-book' ? [] : [hold(item.id, verdict, `Inspection: ${name}: ${found.words}.`)];
  });
  return [...parts, ...hubHolds(state, open)].sort((a, b) => VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict));
}

/**
 * What the inspection holds the coach to; null when nothing in it does. That is no permission: what was not looked at is not
 * known, and "good" speaks for one part at one place alone.
 */
export function inspectionVerdict(state: InspectionState, plan: Pick<PlanState, 'said'>): Hold | null {
  return inspectionHolds(state, plan)[0] ?? null;
}

/** What is wrong with a part, by what was said of it and by its figures, whichever is worse; null when nothing is. */
function foundAt(item: InspectionItem): { readonly certain: boolean; readonly words: string } | null {
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
function hubHolds(state: InspectionState, open: readonly InspectionItem[]): InspectionHold[] {
  const heat = QUANTITIES.find(({ what }) => what === 'hub-heat');
  if (!heat) return [];
  return pairsOf(state, heat).flatMap((pair): InspectionHold[] => {
    const judged = hubPairVerdict(pair);
    const { left, right } = pair;
    if (!left || !right || !judged || judged.verdict === 'usual' || judged.verdict === 'caution') return [];
    const hotter = left.value >= right.value ? left.item : right.item;
    if (!open.includes(hotter)) return [];
    return [hold(hotter.id, 'stay-put', `Inspection: hub, ${hotter.site}: ${judged.why}.`)];
  });
}

function provenSince({ id, at }: InspectionItem, { said }: Pick<PlanState, 'said'>): boolean {
  const line = said.get(itemLine(id));
  return line?.done !== undefined && line.proven?.outcome === 'held' && line.proven.at > at;
}

function milderOf(a: Verdict, b: Verdict): Verdict {
  return VERDICTS.indexOf(a) >= VERDICTS.indexOf(b) ? a : b;
}

function hold(of: string, verdict: Verdict, because: string): InspectionHold {
  return { of, verdict, because, doNow: DO_NOW[verdict] };
}
