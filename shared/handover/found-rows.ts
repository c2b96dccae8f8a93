import { readBands, ReadingError } from '../inference/index.ts';
import { placesOn, STATUS_SAID, type Check } from '../knowledge/index.ts';
import { convertDifference, formatQuantity, UnitError } from '../units/index.ts';
import {
  convertedReading,
  placesBy,
  readingWords,
  trailLines,
  valueWords,
  type Reading,
  type TrailFinding,
  type TrailLine,
} from '../visit/index.ts';
import type { ComplaintCase } from './complaint-case.ts';
import type { Line } from './document.ts';
import type { HandOverInput } from './input.ts';
import type { LogIndex } from './log-index.ts';
import { capital, joined, reckoned, say } from './say.ts';

/** Events that make a finding what it is. */
const FINDING = ['finding.recorded', 'finding.changed'];

/** Name of the check and place of a finding. */
export function checkLine({ texts }: ComplaintCase, finding: TrailFinding, log: LogIndex): Line {
  return joined(
    [
      texts.at(`checks.${finding.check}.name`),
      finding.site === undefined ? null : log.said(finding.site, finding.id, FINDING),
    ],
    ', ',
  );
}

/** Name of the check of a line, with the place of its one finding; the places of several stand with their results. */
export function lineCheck(one: ComplaintCase, { findings, check }: TrailLine, log: LogIndex): Line {
  return findings.length === 1 ? checkLine(one, findings[0]!, log) : one.texts.at(`checks.${check}.name`);
}

/** What a line came to; of several places "left front: hot; the other five: cool". */
export function lineResult(one: ComplaintCase, line: TrailLine, log: LogIndex, input: HandOverInput): Line {
  if (line.findings.length === 1) return resultLine(one, line.findings[0]!, log, input);
  const site = one.texts.pinned.tree.checks.find(({ id }) => id === line.check)?.site;
  const groups = placesBy(
    line,
    (finding) => {
      const words = resultLine(one, finding, log, input);
      return { key: words.text, words };
    },
    site === undefined ? [] : placesOn(site, one.situation.layout),
  );
  return joined(
    groups.map(({ places, words, findings }) => {
      const from = findings.flatMap(({ id }) => log.naming(id, FINDING));
      return say({ text: places, from }, ': ', { text: words.text, from: [...words.from, ...from] });
    }),
    '; ',
  );
}

/** The line of a trail that a finding stands on. */
export function lineOf(one: ComplaintCase, finding: string): TrailLine | undefined {
  return trailLines(one.complaint.trail).find(({ findings }) => findings.some(({ id }) => id === finding));
}

/** The findings of a complaint as the rows of a table: check, result, what it was held against, who. */
export function foundRows(one: ComplaintCase, log: LogIndex, input: HandOverInput): Line[][] {
  return trailLines(one.complaint.trail).map((line) => {
    const [first] = line.findings;
    return [
      lineCheck(one, line, log),
      joined(
        [
          capital(lineResult(one, line, log, input)),
          ...line.findings.flatMap((finding) => [...workedLines(finding, log), ...noteLines(finding, log)]),
        ],
        ' ',
      ),
      heldLine(one, first!, input.reader),
      byLine(first!, log, input),
    ];
  });
}

/** What a check came to: the result in the words of the tree, or the reading and the band that it fell into. */
export function resultLine(one: ComplaintCase, finding: TrailFinding, log: LogIndex, input: HandOverInput): Line {
  const { value } = finding;
  const check = one.texts.pinned.tree.checks.find(({ id }) => id === finding.check);
  const { vocabulary } = one.texts.pinned;
  const words = (text: string): Line => log.said(text, finding.id, FINDING);
  const label = (result: string): Line => one.texts.at(`checks.${finding.check}.results.${result}.label`);
  switch (value.kind) {
    case 'result':
      return say(words(''), label(value.result));
    case 'not-sure':
      return value.leaning === undefined
        ? words('Not sure')
        : say(words('Not sure'), ', looks like: ', label(value.leaning));
    case 'cant-do':
      return joined([words('Could not be done'), value.why ? words(value.why) : null], ': ');
    case 'reading': {
      const figure = words(
        input.reader === 'mechanic'
          ? bothUnits(value.reading)
          : valueWords(check, value, input.units, vocabulary).replace(/\u00a0/g, ' '),
      );
      const band = check && bandOf(one, check, value.reading);
      return joined([figure, band ?? null], ', ');
    }
  }
}

/** A reading in both systems: as typed first. */
export function bothUnits(reading: Reading): string {
  const typed = formatQuantity(reading.value, reading.unit);
  const others = [readingWords(undefined, reading, 'us'), readingWords(undefined, reading, 'metric')].filter(
    (words) => words !== typed,
  );
  return others[0] ?? typed;
}

/** Give or take, and the band that a reading fell into; "too close to call" where the instrument cannot tell. */
function bandOf(one: ComplaintCase, check: Check, reading: Reading): Line | null {
  if (!check.measure) return null;
  const { vocabulary } = one.texts.pinned;
  try {
    const { value, uncertainty, range } = convertedReading(check, reading, vocabulary);
    const { result, tooClose } = readBands(check, value, uncertainty, range);
    const give = formatQuantity(convertDifference(2 * uncertainty, check.measure.unit, reading.unit), reading.unit);
    const instrument = reading.instrument ?? check.measure.instrument;
    const own = reckoned(`give or take ${give}`, 'band', one.complaint.id);
    const by = reading.worked ? own : say(own, ' (', one.texts.at(`instruments.${instrument}.name`), ')');
    const label = one.texts.at(`checks.${check.id}.results.${result}.label`);
    return tooClose ? say(by, ': too close to call, nearest “', label, '”') : say(by, ': ', label);
  } catch (problem) {
    // A reading from another version of the tree is still what was read; it only falls into no band.
    if (problem instanceof ReadingError || problem instanceof UnitError) return null;
    throw problem;
  }
}

/** What a finding was held against: the published limits of its check; else what the bands are. */
function heldLine(one: ComplaintCase, finding: TrailFinding, reader: HandOverInput['reader']): Line {
  const check = one.texts.pinned.tree.checks.find(({ id }) => id === finding.check);
  const limits = (check?.limits ?? []).map((id) => {
    const limit = one.texts.pinned.vocabulary.limits.get(id);
    const how = limit ? STATUS_SAID[limit.status] : '';
    const value = one.texts.at(`limits.${id}.value`);
    return reader === 'owner'
      ? say(value, ` (${how})`)
      : say(value, ` (${how}: `, one.texts.at(`limits.${id}.source`), ')');
  });
  if (limits.length > 0) return joined(limits, '; ');
  return say(check?.measure ? 'bands of this program, judgement' : '–');
}

/** Who found it and when. */
function byLine(
  finding: { readonly id: string; readonly by: string; readonly at: string },
  log: LogIndex,
  input: HandOverInput,
): Line {
  return log.said([finding.by, input.clock.day(finding.at)].filter(Boolean).join(', '), finding.id);
}

/** Notes of a finding, each in quotation marks. */
function noteLines(finding: TrailFinding, log: LogIndex): readonly Line[] {
  return finding.notes.map((note) => log.said(`“${note}”`, finding.id));
}

/** What a reading was worked out of, as it was written down; nothing for one that was read as it is. */
function workedLines(finding: TrailFinding, log: LogIndex): readonly Line[] {
  const worked = finding.value.kind === 'reading' ? finding.value.reading.worked : undefined;
  if (!worked || worked.observations.length === 0) return [];
  const seen = worked.observations.map(({ what, said }) => `${what}: ${said}`).join('; ');
  return [say('(worked out of: ', log.said(seen, finding.id, FINDING), ')')];
}
