import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { shippedTrees } from '../../shipped-trees.ts';
import { evidenceLedger, inHundred, posterior } from '../../../shared/inference/index.ts';
import { withNames, type Check, type Tree } from '../../../shared/knowledge/index.ts';
import { assess, beliefNow } from '../../../shared/planning/index.ts';
import { convert, formatOnRule, formatQuantity, unitOf, unitsLike } from '../../../shared/units/index.ts';
import {
  convertedReading,
  effectiveEvents,
  minutesWords,
  planOf,
  replay,
  situationOf,
  type PinnedTree,
  type RecordedValue,
  type VisitEvent,
  type VisitEventBody,
} from '../../../shared/visit/index.ts';
import { handOver, textAt, type HandOverInput, type Line, type Origin } from '../../../shared/handover/index.ts';
import { linesOf } from '../../unit/handover/as-text.ts';
import { PINNED } from '../../unit/handover/invented-tree.ts';
import { BODIES, CLOCK, inventedInput, logOf, PLAN } from '../../unit/handover/invented-visit.ts';

const IDS = ['growl-through-floor-at-speed', 'air-leaks-when-brake-held'] as const;
const HASHES: Readonly<Record<string, string>> = { [IDS[0]]: 'a'.repeat(64), [IDS[1]]: 'b'.repeat(64) };
let shipped: ReadonlyMap<string, PinnedTree>;
beforeAll(async () => {
  const { trees, vocabulary } = await shippedTrees(...IDS);
  shipped = new Map(
    IDS.map((id) => {
      const tree = trees.get(id)?.value;
      if (!tree || !vocabulary) throw new Error(`The shipped tree "${id}" cannot be read.`);
      return [HASHES[id]!, { tree, vocabulary }];
    }),
  );
});

/** Figures in a text: digits with what joins them, thousands and decimals apart from a full stop at the end. */
function figures(text: string): string[] {
  return text.match(/\d+(?:[.,:/]\d+)*/g) ?? [];
}

type EventsById = ReadonlyMap<string, VisitEvent>;

/** Everything that the origins of a line allow it to say in figures. */
function allowed(
  line: Line,
  input: HandOverInput,
  events: EventsById,
  worked: ReadonlySet<string>,
): ReadonlySet<string> {
  const texts = line.from.flatMap((origin) => textsOf(origin, input, events));
  const reckons = line.from.some(({ kind }) => kind === 'reckoned');
  return new Set([...texts.flatMap(figures), ...(reckons ? worked : [])]);
}

function textsOf(origin: Origin, input: HandOverInput, events: EventsById): string[] {
  switch (origin.kind) {
    case 'wording':
      return [];
    case 'tree':
      return [textAt(input.trees.get(origin.hash)!, origin.field) ?? ''];
    case 'reckoned':
      return origin.what === 'plan' ? [JSON.stringify(input.plan)] : [];
    case 'event': {
      const event = events.get(origin.event);
      return event === undefined
        ? []
        : [JSON.stringify(event), CLOCK.day(event.at), CLOCK.time(event.at), ...readingsIn(event), ...minutesIn(event)];
    }
  }
}

/** The minutes of an event as hours. */
function minutesIn(event: VisitEvent): string[] {
  return 'minutes' in event && typeof event.minutes === 'number' ? [minutesWords(event.minutes)] : [];
}

/** A reading of an event in every unit that it may be shown in. */
function readingsIn(event: VisitEvent): string[] {
  if (event.kind !== 'finding.recorded' && event.kind !== 'finding.changed') return [];
  if (event.value.kind !== 'reading') return [];
  const { value, unit } = event.value.reading;
  return unitsLike(unit).flatMap(({ id }) => [
    formatQuantity(convert(value, unit, id), id),
    ...(unitOf(id).quantity === 'length'
      ? ([8, 16, 32, 64] as const).map((n) => formatOnRule(value, unit, n, 'us'))
      : []),
  ]);
}

/** Every figure that belief, weight, count and instrument give, worked out here from the log cut off at every correction. */
function workedOut(input: HandOverInput): ReadonlySet<string> {
  const found = new Set<string>();
  const cuts = input.events.flatMap((event, i) => (event.kind === 'correction.done' ? [i] : []));
  for (const end of [...cuts, input.events.length]) {
    const visit = replay(input.events.slice(0, end), input.trees);
    for (const complaint of visit.complaints) {
      const { tree, vocabulary } = input.trees.get(complaint.treeHash)!;
      const situation = situationOf(visit, complaint, tree, vocabulary);
      const { model, findings, excluded, now } = beliefNow(situation);
      const shares = [...posterior(model, [], excluded).probability, ...now.probability];
      for (const cause of model.causeIds.filter((id) => !excluded.has(id)))
        for (const { decibans, without } of evidenceLedger(model, findings, cause, excluded).lines) {
          figures(decibans.toFixed(1)).forEach((each) => found.add(each));
          shares.push(without);
        }
      shares.forEach((share) => figures(inHundred(share)).forEach((each) => found.add(each)));
      found.add('100');
      const { options, verdict, leading } = assess(situation);
      // At most all checks were not made.
      for (let n = 1; n <= options.length; n++) found.add(String(n));
      for (const text of [verdict.because, verdict.doNow, leading.caution])
        figures(text).forEach((each) => found.add(each));
      for (const { check: id, value } of complaint.trail) {
        const check = tree.checks.find((each) => each.id === id);
        if (value.kind !== 'reading' || !check?.measure) continue;
        try {
          const { uncertainty } = convertedReading(check, value.reading, vocabulary);
          const give =
            convert(2 * uncertainty, check.measure.unit, value.reading.unit) -
            convert(0, check.measure.unit, value.reading.unit);
          figures(formatQuantity(give, value.reading.unit)).forEach((each) => found.add(each));
        } catch {
          // A unit that the check does not take gives no figure to allow.
          continue;
        }
      }
    }
  }
  return found;
}

/** What is wrong with the origins of a report; nothing when every statement can be traced. */
function faults(input: HandOverInput): string[] {
  const known: EventsById = new Map(effectiveEvents(input.events).map((event) => [event.id, event]));
  const worked = workedOut(input);
  const places = new Set([
    ...input.visit.complaints.map(({ id }) => id),
    ...(input.plan?.lines ?? []).map(({ id }) => id),
    ...(input.plan?.parts.rows ?? []).map(({ key }) => key),
    'plan',
    'meanwhile',
    'photos',
  ]);
  return linesOf(handOver(input)).flatMap((line) => {
    const wrong: string[] = [];
    if (line.from.length === 0) wrong.push('has no origin');
    for (const origin of line.from) {
      if (origin.kind === 'event' && !known.has(origin.event))
        wrong.push(`names the event ${origin.event}, which does not count`);
      if (origin.kind === 'reckoned' && !places.has(origin.of))
        wrong.push(`was worked out for "${origin.of}", which is not there`);
      if (origin.kind !== 'tree') continue;
      const pinned = input.trees.get(origin.hash);
      const text = pinned && textAt(pinned, origin.field);
      if (!pinned || text === undefined) wrong.push(`names the field ${origin.field}, which is not there`);
      else if (!contains(line.text, text, pinned)) wrong.push(`names the field ${origin.field}, but does not say it`);
    }
    const may = allowed(line, input, known, worked);
    for (const figure of figures(line.text))
      if (!may.has(figure)) wrong.push(`says ${figure}, which none of its origins says`);
    return wrong.map((what) => `“${line.text}” ${what}`);
  });
}

/** Whether a line says the text of a field, its first letter and its end apart. */
function contains(line: string, text: string, { tree }: PinnedTree): boolean {
  const nameOf = (id: string): string =>
    [...tree.causes, ...tree.checks].find((each) => each.id === id)?.name ?? id.replaceAll('-', ' ');
  return line.toLowerCase().includes(withNames(text.trim(), nameOf).toLowerCase());
}

function inputOf(
  bodies: readonly VisitEventBody[],
  reader: HandOverInput['reader'],
  units: 'us' | 'metric',
): HandOverInput {
  const events = logOf(bodies);
  const visit = replay(events, shipped);
  return { visit, events, trees: shipped, reader, units, clock: CLOCK, plan: planOf(visit, shipped) };
}

describe('[HAN-1] [HAN-2] [HAN-3] where a report comes from', () => {
  it('every statement and every figure of the invented job can be traced, for both readers', () => {
    expect(faults(inventedInput('owner'))).toEqual([]);
    expect(faults(inventedInput('mechanic', { units: 'metric' }))).toEqual([]);
  });

  it('the tracing finds what it is for: a figure, a field or an event that nothing stands behind', () => {
    const invented = inventedInput('owner');
    const without = { ...invented, events: invented.events.filter(({ id }) => id !== invented.events[7]?.id) };
    expect(faults({ ...without, visit: replay(invented.events, PINNED) }).join('\n')).toMatch(
      /0\.011 in.*has no origin/,
    );
    const planned = { ...PLAN, reminders: [{ id: 'nobody-set-it', what: 'Look again', dueMiles: 4321 }] };
    expect(faults({ ...invented, plan: planned }).join('\n')).toMatch(/Look again.*has no origin/);
    expect(faults({ ...invented, plan: planned }).join('\n')).toMatch(/says 4321/);
  });

  it('whatever is found, corrected, proven and taken back, in any order, in two shipped trees', () => {
    fc.assert(
      fc.property(fc.array(step(), { maxLength: 14 }), fc.boolean(), fc.boolean(), (steps, owner, us) => {
        const bodies = bodiesOf(steps);
        expect(faults(inputOf(bodies, owner ? 'owner' : 'mechanic', us ? 'us' : 'metric'))).toEqual([]);
      }),
      { numRuns: 15, seed: 20260514 },
    );
  });
});

describe('[HAN-11] the same report', () => {
  it('from the same events, in whatever order the files of two writers were read', () => {
    const input = inventedInput('mechanic');
    const turned = [...input.events].reverse();
    expect(handOver({ ...input, events: turned, visit: replay(turned, PINNED) })).toEqual(handOver(input));
  });

  it('taking something back and putting it back gives the same statements', () => {
    const input = inventedInput('owner');
    const proof = input.events.find(({ kind }) => kind === 'proof.recorded')!;
    const events = logOf([
      ...BODIES,
      { kind: 'event.taken-back', event: proof.id },
      { kind: 'event.put-back', event: proof.id },
    ]);
    expect(handOver({ ...input, events, visit: replay(events, PINNED) }).parts).toEqual(handOver(input).parts);
  });
});

interface Step {
  readonly act: 'find' | 'measure' | 'correct' | 'prove' | 'answer' | 'close' | 'decide' | 'remind' | 'undo';
  readonly complaint: 0 | 1;
  readonly pick: number;
  readonly which: number;
}

function step(): fc.Arbitrary<Step> {
  return fc.record({
    act: fc.constantFrom(
      'find',
      'find',
      'find',
      'measure',
      'measure',
      'correct',
      'prove',
      'answer',
      'close',
      'decide',
      'remind',
      'undo',
    ),
    complaint: fc.constantFrom(0, 1),
    pick: fc.nat(1000),
    which: fc.nat(1000),
  });
}

/** Steps as events; what does not fit is left out by replay, and stands in the report as such. */
function bodiesOf(steps: readonly Step[]): readonly VisitEventBody[] {
  const opened: VisitEventBody[] = [
    { kind: 'visit.opened', coach: 'Invented coach 7', demo: false },
    { kind: 'person.set', who: 'mechanic' },
    ...IDS.map((id, i): VisitEventBody => ({
      kind: 'complaint.opened',
      complaint: `c-${i}`,
      tree: id,
      treeHash: HASHES[id]!,
      words: `complaint ${i}`,
    })),
    ...IDS.flatMap((id, i) =>
      shipped.get(HASHES[id]!)!.tree.stopRules.map((rule): VisitEventBody => ({
        kind: 'stop.answered',
        complaint: `c-${i}`,
        rule: rule.id,
        answer: 'no',
      })),
    ),
  ];
  return steps.reduce<readonly VisitEventBody[]>((bodies, each, n) => {
    const { tree } = shipped.get(HASHES[IDS[each.complaint]]!)!;
    return [...bodies, bodyOf(each, n, tree, bodies)];
  }, opened);
}

function bodyOf(
  { act, complaint: number, pick, which }: Step,
  n: number,
  tree: Tree,
  before: readonly VisitEventBody[],
): VisitEventBody {
  const complaint = `c-${number}`;
  const checks = act === 'measure' ? tree.checks.filter(({ measure }) => measure) : tree.checks;
  const check = checks[pick % checks.length]!;
  const cause = tree.causes[pick % tree.causes.length]!.id;
  switch (act) {
    case 'find':
    case 'measure':
      return {
        kind: 'finding.recorded',
        complaint,
        finding: `f-${n}`,
        check: check.id,
        value: valueOf(check, which),
        note: `seen ${which} times`,
        ...(which % 2 ? { site: 'left front' } : {}),
      };
    case 'correct':
      return {
        kind: 'correction.done',
        complaint,
        cause,
        partSeen: (['bad', 'good', 'unknown'] as const)[which % 3]!,
        parts: ['a part'],
        alsoRenewed: [],
        minutes: which,
      };
    case 'prove':
      return { kind: 'proof.recorded', complaint, outcome: which % 2 ? 'gone' : 'still-there' };
    case 'answer':
      return {
        kind: 'stop.answered',
        complaint,
        rule: tree.stopRules[pick % tree.stopRules.length]!.id,
        answer: (['yes', 'no', 'not-sure'] as const)[which % 3]!,
      };
    case 'close':
      return { kind: 'complaint.closed', complaint, how: (['cured', 'handed-over', 'left-open'] as const)[which % 3]! };
    case 'decide':
      return {
        kind: 'plan.decided',
        line: `complaint:${complaint}:${cause}`,
        decision: (['agreed', 'declined', 'deferred'] as const)[which % 3]!,
        who: 'Ada',
        words: `said at ${which}`,
      };
    case 'remind':
      return { kind: 'reminder.set', reminder: `r-${n}`, what: 'Try the nuts', dueMiles: which };
    case 'undo':
      return { kind: 'event.taken-back', event: logOf(before).at(-1)!.id };
  }
}

function valueOf(check: Check, which: number): RecordedValue {
  const result = check.results[which % check.results.length]!;
  if (which % 7 === 0) return { kind: 'cant-do', why: 'no jack here' };
  if (which % 5 === 0) return { kind: 'not-sure', leaning: result.id };
  if (!check.measure || !result.range) return { kind: 'result', result: result.id };
  const [low, high] = result.range;
  const value = low !== null && high !== null ? (low + high) / 2 : (low ?? high ?? 0);
  const units = unitsLike(check.measure.unit);
  const unit = units[which % units.length]!.id;
  return { kind: 'reading', reading: { value: Number(convert(value, check.measure.unit, unit).toPrecision(4)), unit } };
}
