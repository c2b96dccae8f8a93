import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  handOver,
  leavingOut,
  shortText,
  type HandOverInput,
  type Report,
  type Section,
} from '../../../shared/handover/index.ts';
import { learnedOdds, type ClosedCase } from '../../../shared/inference/index.ts';
import { replay, roundEvents, type VisitEventBody } from '../../../shared/visit/index.ts';
import { asText, linesOf } from './as-text.ts';
import { HASH, PINNED } from './invented-tree.ts';
import { BODIES, CLOCK, INSPECTION, inventedInput, logOf, PHOTO, PLAN } from './invented-visit.ts';

const file = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8');
const section = (report: Report, part: string, id: string): Section | undefined =>
  report.parts.find((each) => each.id === part)?.sections.find((each) => each.id === id);
const words = (value: unknown): string => JSON.stringify(value);

/** A visit of one complaint, as far as the bodies take it. */
function only(bodies: readonly VisitEventBody[], more: Partial<HandOverInput> = {}): HandOverInput {
  const events = logOf([
    { kind: 'visit.opened', coach: 'Invented coach 12', demo: false },
    { kind: 'person.set', who: 'mechanic' },
    { kind: 'complaint.opened', complaint: 'c', tree: 'growl', treeHash: HASH, words: 'hum' },
    { kind: 'stop.answered', complaint: 'c', rule: 'hot-hub', answer: 'no' },
    ...bodies,
  ]);
  return { visit: replay(events, PINNED), events, trees: PINNED, reader: 'owner', units: 'us', clock: CLOCK, ...more };
}
const gritty: VisitEventBody = {
  kind: 'finding.recorded',
  complaint: 'c',
  finding: 'f',
  check: 'spin',
  value: { kind: 'result', result: 'gritty' },
  site: 'left front',
};
const round = (found: Readonly<Record<string, string>>): VisitEventBody[] =>
  roundEvents(
    { complaint: 'c', check: 'spin', round: 'r' },
    Object.entries(found).map(([place, result]) => ({ place, value: { kind: 'result', result } })),
    'left front',
  );
const corrected = (cause: string): VisitEventBody => ({
  kind: 'correction.done',
  complaint: 'c',
  cause,
  partSeen: 'good',
  parts: [],
  alsoRenewed: [],
});

describe('[HAN-4] the whole document', () => {
  // The expected documents were read line by line against the invented job before they were kept.
  it.each(['owner', 'mechanic'] as const)('for the %s is the expected one', (reader) => {
    expect(asText(handOver(inventedInput(reader)))).toBe(file(`expected-${reader}.txt`));
  });

  it('[HAN-17] a round is one row with its places, and so is its weight; the cause has the odd place', () => {
    const rest = Object.fromEntries(
      ['right front', 'left drive', 'right drive', 'left tag', 'right tag'].map((place) => [place, 'smooth']),
    );
    for (const reader of ['owner', 'mechanic'] as const) {
      const report = handOver(only(round({ ...rest, 'left front': 'gritty' }), { reader }));
      const found = section(report, 'c', 'found')?.blocks.find((block) => block.kind === 'table');
      expect(found?.kind === 'table' ? found.rows.map((row) => row.slice(0, 2).map(({ text }) => text)) : []).toEqual([
        ['Raised, spun by hand', 'Left front: gritty; the other five: smooth'],
      ]);
      const weights = section(report, 'c', 'why')?.blocks.find((block) => block.kind === 'weights');
      expect(weights?.kind === 'weights' ? weights.rows.map(({ finding }) => finding.text) : []).toEqual([
        'Raised, spun by hand: left front: gritty; the other five: smooth',
      ]);
      expect(words(section(report, 'c', 'cause'))).toContain('Where the findings point: left front.');
    }
    // Some wheels were not looked at: those that were are named.
    const some = handOver(only(round({ 'left front': 'gritty', 'right front': 'smooth', 'left drive': 'smooth' })));
    expect(words(section(some, 'c', 'found'))).toContain('Left front: gritty; right front and left drive: smooth');
  });

  it('[HAN-18] the short version names the place that stands out, as the cause does; places that are all alike are none', () => {
    const wheels = ['left front', 'right front', 'left drive', 'right drive', 'left tag', 'right tag'];
    const all = (at: (place: string) => string): VisitEventBody[] =>
      round(Object.fromEntries(wheels.map((place) => [place, at(place)])));
    const short = (bodies: readonly VisitEventBody[]): string => shortText(handOver(only(bodies)).short);
    const odd = all((place) => (place === 'left drive' ? 'gritty' : 'smooth'));
    expect(short([gritty])).toContain('bearing rough. Where the findings point: left front. Likeliest so far');
    expect(short(odd)).toContain('bearing rough. Where the findings point: left drive. Likeliest so far');
    expect(short(all(() => 'gritty'))).toMatch(/bearing rough\. Likeliest so far/);
    expect(short([gritty, { kind: 'conclusion.accepted', complaint: 'c', cause: 'bearing' }])).toContain(
      'Where the findings point: left front. Taken as the probable cause',
    );
    // Another cause was taken than the one that the place speaks for.
    expect(short([gritty, { kind: 'conclusion.accepted', complaint: 'c', cause: 'bushing' }])).not.toContain('point');
    // Read after the correction, another place says nothing about where the cause was.
    const later: VisitEventBody = { ...gritty, finding: 'f-2', site: 'right tag' };
    const done = [
      ...odd,
      { kind: 'correction.started', complaint: 'c', cause: 'bearing' } as const,
      corrected('bearing'),
    ];
    expect(short([...done, later])).toContain(
      'Where the findings pointed: left drive. Corrected; the proof is still open',
    );
  });

  it('puts complaint before cause before correction', () => {
    const { parts } = handOver(inventedInput('owner'));
    const order = parts[0]!.sections
      .map(({ id }) => id)
      .filter((id) => ['complaint', 'cause', 'correction'].includes(id));
    expect(order).toEqual(['complaint', 'cause', 'correction']);
  });
});

describe('[HAN-5] naming a cause', () => {
  it('names none while nothing found speaks for one', () => {
    const report = handOver(only([]));
    expect(words(section(report, 'c', 'cause'))).toContain('Nothing that was found speaks for a cause yet.');
    expect(words(report)).not.toContain('tyre worn');
    expect(section(report, 'c', 'why')).toBeUndefined();
  });

  it('says of the likeliest that it is not settled, of the taken that it is not corrected, of the corrected that the proof is open', () => {
    const heading = (bodies: readonly VisitEventBody[]): string | undefined =>
      section(handOver(only(bodies)), 'c', 'cause')?.heading;
    expect(heading([gritty])).toBe('Cause: not settled');
    expect(heading([gritty, { kind: 'conclusion.accepted', complaint: 'c', cause: 'bearing' }])).toBe(
      'Probable cause, not corrected',
    );
    const open = only([gritty, { kind: 'correction.started', complaint: 'c', cause: 'bearing' }, corrected('bearing')]);
    expect(section(handOver(open), 'c', 'cause')?.heading).toBe('Cause, corrected but not proven');
    expect(handOver(open).cautions.map(({ text }) => text)).toEqual([
      'Not proven yet: left front wheel bearing rough. It was corrected; whether the complaint is gone has not been recorded.',
    ]);
    expect(words(section(handOver(open), 'c', 'cause'))).toContain('looked good');
  });

  it('goes back to what is likeliest now when a correction was in vain, and says so of the correction', () => {
    const report = handOver(
      only([
        gritty,
        { kind: 'correction.started', complaint: 'c', cause: 'bearing' },
        corrected('bearing'),
        { kind: 'proof.recorded', complaint: 'c', outcome: 'still-there' },
      ]),
    );
    expect(section(report, 'c', 'cause')?.heading).toBe('Cause: not settled');
    expect(words(section(report, 'c', 'cause'))).not.toContain('bearing rough');
    expect(words(section(report, 'c', 'correction'))).toContain('The complaint was still there after.');
    expect(words(section(report, 'c', 'proof'))).toContain('Complaint still there');
  });

  it('[HAN-19] says how likely a cause is that was not corrected, and below even odds that it is more likely something else', () => {
    const rear: VisitEventBody = {
      kind: 'finding.recorded',
      complaint: 'c',
      finding: 'f-w',
      check: 'where',
      value: { kind: 'result', result: 'rear' },
    };
    const weak = handOver(only([rear]));
    const said = /it would be this in (\d+), on judged odds: more likely something else than this\./.exec(
      words(section(weak, 'c', 'cause')),
    );
    expect(Number(said?.[1])).toBeGreaterThan(33);
    expect(Number(said?.[1])).toBeLessThan(50);
    expect(shortText(weak.short)).toContain(said?.[0]);
    expect(words(section(weak, 'c', 'why'))).toContain(
      `after them ${said?.[1]}: about as likely as not, so more likely something else than this.`,
    );
    const strong = handOver(only([gritty, { kind: 'conclusion.accepted', complaint: 'c', cause: 'bearing' }]));
    expect(words(section(strong, 'c', 'cause'))).toMatch(/this in \d+, on judged odds: (likely|very likely)\./);
    const done = only([gritty, { kind: 'correction.started', complaint: 'c', cause: 'bearing' }, corrected('bearing')]);
    expect(words(section(handOver(done), 'c', 'cause'))).not.toContain('judged odds');
  });

  it('says that a complaint closed as gone without a correction was not proven', () => {
    const report = handOver(only([gritty, { kind: 'complaint.closed', complaint: 'c', how: 'cured' }]));
    expect(words(section(report, 'c', 'cause'))).toContain('Closed as gone, without a proven correction.');
  });
});

describe('[HAN-6] evidence and proof', () => {
  it('weighs what was known before the correction, and shows the reading after it as proof', () => {
    const report = handOver(inventedInput('mechanic'));
    const weights = section(report, 'c-1', 'why')?.blocks.find(({ kind }) => kind === 'weights');
    expect(weights?.kind === 'weights' && weights.rows.map(({ finding }) => finding.text)).toEqual([
      'Where it is loudest: at the front',
      'End play by dial gauge, left front: 0.011 in (0.279 mm), give or take 0.001 in (dial gauge): loose',
      'Raised, spun by hand, left front: gritty',
    ]);
    const again = section(report, 'c-1', 'proof')?.blocks.find(({ kind }) => kind === 'rereads');
    expect(again?.kind === 'rereads' && again.figures[0]?.points.map(({ value }) => value)).toEqual([0.011, 0.003]);
  });
});

describe('[HAN-7] [HAN-8] verdict and cautions', () => {
  it('takes the strictest of complaints and plan', () => {
    expect(handOver(inventedInput('owner')).verdict?.verdict).toBe('stay-put');
    const { meanwhile } = PLAN;
    expect(meanwhile?.verdict).toBe('stay-put');
    expect(handOver(inventedInput('owner', { plan: { ...PLAN, meanwhile: null } })).verdict?.verdict).toBe(
      'creep-to-safe-place',
    );
    expect(
      handOver(only([{ kind: 'stop.answered', complaint: 'c', rule: 'hot-hub', answer: 'yes' }])).verdict?.verdict,
    ).toBe('stay-put');
  });

  it('has the last word of licensed help in the document and in the short version', () => {
    const report = handOver(only([]));
    expect(report.lastWord.text).toMatch(/licensed mechanic or inspector has the last word.*local law/);
    expect(shortText(report.short)).toContain(report.lastWord.text);
    expect(words(report)).not.toMatch(/\bis safe\b/i);
  });

  it('says a declined danger in the words of the record, and one put off without them', () => {
    expect(handOver(inventedInput('owner')).cautions[0]?.text).toMatch(
      /^Ada was told .* can burst, and declined its renewal\.$/,
    );
    const [line] = PLAN.lines;
    const putOff = {
      ...PLAN,
      lines: [
        { ...line!, decision: { decision: 'deferred' as const, at: '2026-05-16T08:18:00.000Z', by: 'Ada', words: '' } },
      ],
    };
    expect(handOver(inventedInput('owner', { plan: putOff })).cautions[0]?.text).toBe(
      'Renew brake hose, right drive, a danger, was not agreed to.',
    );
    const agreed = {
      ...PLAN,
      lines: [
        { ...line!, decision: { decision: 'agreed' as const, at: '2026-05-16T08:18:00.000Z', by: 'Ada', words: '' } },
      ],
    };
    expect(
      handOver(inventedInput('owner', { plan: agreed }))
        .cautions.map(({ text }) => text)
        .join(' '),
    ).not.toContain('hose');
  });
});

describe('[HAN-9] what was not looked at', () => {
  const everything = new Set(['c-1', 'c-2', 'coach', 'next', 'c-1/open', 'next/unsettled']);

  it('stays when everything else is left out', () => {
    const report = leavingOut(handOver(inventedInput('owner')), everything);
    expect(report.parts.map(({ id, sections }) => [id, sections.map((each) => each.id)])).toEqual([
      ['c-1', ['open']],
      ['c-2', ['open']],
      ['next', ['unsettled']],
    ]);
    expect(report.cautions).toEqual(handOver(inventedInput('owner')).cautions);
  });

  it('leaves out one section by its name', () => {
    const report = leavingOut(handOver(inventedInput('owner')), new Set(['c-1/why']));
    expect(section(report, 'c-1', 'why')).toBeUndefined();
    expect(section(report, 'c-1', 'found')).toBeDefined();
  });

  it('names items not opened, checks that could not be done, readings too close to call, questions open or unsure', () => {
    expect(words(section(handOver(inventedInput('owner')), 'next', 'unsettled'))).toContain(
      'Not opened: Hub, left drive.',
    );
    const close: VisitEventBody = {
      kind: 'finding.recorded',
      complaint: 'c',
      finding: 'f-close',
      check: 'end-play',
      value: { kind: 'reading', reading: { value: 0.006, unit: 'in' } },
    };
    const unsure: VisitEventBody = { kind: 'stop.answered', complaint: 'c', rule: 'hot-hub', answer: 'not-sure' };
    const open = words(section(handOver(only([close, unsure])), 'c', 'open'));
    expect(open).toContain('too close to call');
    expect(open).toContain('Safety question answered “not sure”: Is any hub too hot to touch?');
    expect(words(section(handOver(inventedInput('owner')), 'c-2', 'open'))).toContain('Safety question not answered');
  });

  it('says what of the log could not be used, a complaint without its tree with its words', () => {
    const input = only([
      { kind: 'complaint.opened', complaint: 'lost', tree: 'lost', treeHash: 'c'.repeat(64), words: 'it whistles' },
      { kind: 'proof.recorded', complaint: 'c', outcome: 'gone' },
    ]);
    const text = words(section(handOver(input), 'next', 'unsettled'));
    expect(text).toContain('“it whistles” could not be used');
    expect(text).toContain('proof.recorded');
  });
});

describe('[HAN-10] two readers', () => {
  it('gives decibans, both units, sources and how the coach is built to the mechanic alone', () => {
    const owner = asText(handOver(inventedInput('owner')));
    const mechanic = asText(handOver(inventedInput('mechanic')));
    for (const mark of ['decibans', '0.279 mm', 'How the coach is built', 'Safety questions', '3 h 30 min']) {
      expect(mechanic).toContain(mark);
      expect(owner).not.toContain(mark);
    }
  });

  it('[KNO-30] says how many cylinders there are where somebody said so', () => {
    const events = logOf([...BODIES, { kind: 'layout.set', feature: 'cylinders', value: '6' }]);
    const report = handOver({ ...inventedInput('mechanic'), events, visit: replay(events, PINNED) });
    expect(words(section(report, 'coach', 'layout'))).toContain('Cylinders of the diesel');
    expect(asText(report)).toContain('Cylinders of the diesel | 6');
    expect(asText(handOver(inventedInput('mechanic')))).not.toContain('Cylinders of the diesel');
  });

  it('shows the owner the units that they read', () => {
    expect(asText(handOver(inventedInput('owner', { units: 'metric' })))).toContain('0.011 in (0.279 mm)');
  });
});

describe('starting odds that learn', () => {
  it('are said to have been moved, and by how many cures, when they were', () => {
    const { tree } = PINNED.get(HASH)!;
    const cure = (id: string): ClosedCase => ({
      id,
      complaint: 'growl',
      layout: {},
      corrections: [{ cause: 'bearing', partSeen: 'bad', proof: 'gone' }],
    });
    const odds = learnedOdds(tree, {}, [cure('v-7/c-1'), cure('v-8/c-1')], { on: true, takenOut: new Set() });
    expect(odds.data).toBe(2);
    const learned = new Map([['c-1', odds]]);
    const text = asText(handOver(inventedInput('owner', { learned })));
    expect(text).toContain('Starting odds moved by 2 proven cures of this workshop');
    expect(text).not.toContain('Before any check 29 in 100');
    expect(asText(handOver(inventedInput('owner')))).not.toContain('Starting odds moved');
  });
});

describe('[HAN-13] photos', () => {
  it('are shown once and numbered in the order of the report', () => {
    const inspection = [{ ...INSPECTION[0]!, photos: [PHOTO, `${'2e'.repeat(32)}.png`] }];
    const report = handOver(inventedInput('owner', { inspection }));
    const captions = linesOf(report).filter(({ text }) => text.startsWith('Photo '));
    expect(captions.map(({ text }) => text.split(':')[0])).toEqual(['Photo 1', 'Photo 2']);
    expect(words(report).split(PHOTO).length - 1).toBe(1);
  });
});

describe('[HAN-11] a visit with next to nothing in it', () => {
  it('has a report without a verdict, and says that nothing was looked at', () => {
    const events = logOf(BODIES.slice(0, 1));
    const report = handOver({
      ...inventedInput('owner'),
      events,
      visit: replay(events, PINNED),
      inspection: [],
      others: [],
    });
    expect(handOver({ ...only([]), events, visit: replay(events, PINNED) })).toMatchObject({
      verdict: null,
      parts: [],
    });
    expect(report.coach.text).toBe('Invented coach 12');
    expect(words(section(handOver(only([])), 'c', 'found'))).toContain('Nothing was looked at.');
  });
});
