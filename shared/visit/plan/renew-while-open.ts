import { replaceOrWait, type LifeModel, type NeighbourPart, type ReplaceOrWait } from '../../measuring/index.ts';
import { inspectedWork } from './inspected-work.ts';
import type { InspectedItem } from './inspected.ts';
import { samePlace } from '../../knowledge/places.ts';
import type { Input, RenewProposal } from './plan.ts';
import { judgedLife, renewRule } from './renew-kinds.ts';
import type { Figures } from './state.ts';

/** What a proposal is reckoned from, beside its own figures. */
export interface RenewSetting {
  /** Minutes to open and close the place again; null when the tree does not say what is opened. */
  readonly accessMinutes: number | null;
  readonly bases: ReadonlyMap<string, number>;
  readonly items: readonly InspectedItem[];
  readonly place: string | null;
}

/**
 * A neighbour of a correction while its place is open: renew, look, hold to its limit, or weigh. Weighed over half, once and
 * twice the judged life, since that is a guess; with the age unknown only bounds come out.
 */
export function renewProposal(what: string, figures: Figures, setting: RenewSetting): RenewProposal {
  const seen = setting.items.find(
    ({ item, site, state }) =>
      (state === 'bad' || state === 'good') &&
      setting.place !== null &&
      samePlace(site, setting.place) &&
      inspectedWork(item).partOf.test(what.toLowerCase()),
  );
  const base = { what, inputs: [], weighed: [], bounds: [] } as const;
  if (seen?.state === 'bad')
    return { ...base, rule: 'renew', because: 'The inspection found it bad here: it is part of the job.' };
  const { rule, because } = renewRule(what);
  if (rule !== 'weigh')
    return { ...base, rule, because: seen ? `${because} The inspection found it good here.` : because };
  return weighed(what, because, figures, setting);
}

function weighed(
  what: string,
  because: string,
  figures: Figures,
  { accessMinutes, bases }: RenewSetting,
): RenewProposal {
  const judged = judgedLife(what);
  const unit = judged?.unit ?? 'thousand miles';
  const given = (id: string, words: string, value: number | undefined, of: string): Input => ({
    id,
    words,
    value: value ?? null,
    unit: of,
    from: 'given',
  });
  const accessHours = figures['access-hours'] ?? (accessMinutes === null ? undefined : accessMinutes / 60);
  const scale = figures.life ?? judged?.scale;
  const horizon = bases.get(unit === 'years' ? 'horizon-years' : 'horizon-miles');
  const inputs: Input[] = [
    given('part-cost', 'price of the part', figures['part-cost'], ''),
    given('open-hours', 'hours while it is open anyway', figures['open-hours'], 'h'),
    {
      ...given('access-hours', 'hours to get there again', accessHours, 'h'),
      from: figures['access-hours'] === undefined ? 'access-tree' : 'given',
    },
    given('labour-rate', 'labour rate an hour', bases.get('labour-rate'), ''),
    given('roadside', 'tow and what comes with it', bases.get('roadside'), ''),
    given('horizon', 'still to be used', figures.horizon ?? horizon, unit),
    given('age', 'age of the part', figures.age, unit),
    {
      ...given('life', 'age by which 63 in 100 have failed', scale, unit),
      from: figures.life === undefined ? 'judged' : 'given',
    },
    {
      id: 'shape',
      words: `shape, ${judged?.mechanism ?? 'wear'}`,
      value: judged?.shape ?? 2.5,
      unit: '',
      from: 'judged',
    },
  ];
  const value = (id: string): number | null => inputs.find((input) => input.id === id)?.value ?? null;
  const lacking = inputs.filter((input) => input.value === null && input.id !== 'age').map(({ words }) => words);
  const proposal = { what, rule: 'weigh' as const, because, inputs, weighed: [], bounds: [] };
  if (lacking.length > 0) return { ...proposal, missing: `To weigh it: ${lacking.join(', ')}.` };
  const model: LifeModel = { shape: value('shape')!, scale: value('life')! };
  const part: Omit<NeighbourPart, 'age' | 'life'> = {
    safetyPart: false,
    horizon: value('horizon')!,
    partCost: value('part-cost')!,
    openHours: value('open-hours')!,
    accessHours: value('access-hours')!,
    ratePerHour: value('labour-rate')!,
    roadsideCost: value('roadside')!,
  };
  const age = value('age');
  if (age === null) {
    const bounds = [0, model.scale].map((at) => ({
      age: at,
      result: replaceOrWait({ ...part, life: model, age: at }),
    }));
    const failed = bounds.find(({ result }) => !result.ok)?.result;
    if (failed && !failed.ok) return { ...proposal, missing: failed.message };
    return {
      ...proposal,
      bounds: bounds.flatMap(({ age: at, result }) => (result.ok ? [{ age: at, result }] : [])),
      missing: 'The age is not known: here is what comes out for a new part and for one at its judged life.',
    };
  }
  const results = [0.5, 1, 2].map((factor) => {
    const life = { ...model, scale: model.scale * factor };
    return { life, result: replaceOrWait({ ...part, life, age }) };
  });
  const refused = results.find(({ result }) => !result.ok)?.result;
  if (refused && !refused.ok) return { ...proposal, missing: refused.message };
  const good = results.flatMap(({ life, result }) => (result.ok ? [{ life, result }] : []));
  return { ...proposal, weighed: good, advice: adviceOf(good.map(({ result }) => result)) };
}

function adviceOf(results: readonly ReplaceOrWait[]): NonNullable<RenewProposal['advice']> {
  const first = results[0]!.cheaper;
  return results.every(({ cheaper }) => cheaper === first) ? first : 'depends';
}
