import {
  builtUnderAirBrakeStandard,
  judgeGovernor,
  judgeParkingKnob,
  judgeWarning,
} from '../../../shared/measuring/index.ts';
import { shown } from './figure-kinds.ts';
import { FormReader, refused, type BenchForm, type Shown } from './form.ts';
import { heldView, type HeldView } from './held.ts';

export const BANDS_CAUTIONS: readonly string[] = [
  'Wheels chocked at the front and at the back before the pedal is pumped: at low pressure the coach may be held by nothing, or by springs alone.',
  'Engine off, key on, so that the warning works. Nobody under the coach.',
];

/** A dash gauge: judgement. */
const GAUGE_PSI = 3;

export interface GovernorView {
  readonly cutIn: HeldView;
  readonly cutOut: HeldView;
  readonly span: string;
  readonly note: string | null;
}

export function governorView(form: BenchForm): Shown<GovernorView> {
  const read = new FormReader(form);
  const cutIn = read.figure('bands.cutIn', 'cut-in pressure', 'pressure');
  const cutOut = read.figure('bands.cutOut', 'cut-out pressure', 'pressure');
  const trouble = read.trouble();
  if (trouble) return trouble;
  const found = judgeGovernor(cutIn, cutOut, GAUGE_PSI);
  if (!found.ok) return refused(found);
  return {
    kind: 'shown',
    cutIn: heldView(cutIn, GAUGE_PSI, found.cutIn, form.system),
    cutOut: heldView(cutOut, GAUGE_PSI, found.cutOut, form.system),
    span: shown(found.spanPsi, 'pressure', form.system),
    note: found.note,
  };
}

/** The low-pressure warning by year of build. */
export function warningView(form: BenchForm): Shown<{ readonly held: HeldView; readonly rule: string }> {
  const read = new FormReader(form);
  const on = read.figure('bands.warning', 'pressure at which the warning came on', 'pressure');
  const year = read.figure('bands.year', 'year of build', 'plain');
  const month = read.optional('bands.month', 'month of build', 'plain');
  const cutOut = read.optional('bands.cutOut', 'cut-out pressure', 'pressure');
  const trouble = read.trouble();
  if (trouble) return trouble;
  const built = month === null ? { year } : { year, month };
  if (!builtUnderAirBrakeStandard(built) && cutOut === null)
    return { kind: 'waiting', words: 'Before March 1975 half of the cut-out pressure counts: type the cut-out above.' };
  const found = judgeWarning(on, GAUGE_PSI, built, cutOut ?? 120);
  return found.ok
    ? {
        kind: 'shown',
        held: heldView(on, GAUGE_PSI, found.judgement, form.system),
        rule: builtUnderAirBrakeStandard(built)
          ? `Built under the air-brake standard of March 1975${month === null && year === 1975 ? ' (month not known: the stricter rule)' : ''}.`
          : 'Built before the air-brake standard of March 1975.',
      }
    : refused(found);
}

export interface KnobView {
  readonly low: HeldView;
  readonly high: HeldView;
  readonly note: string | null;
}

/** The pressure at which the parking-brake knob pops. */
export function knobView(form: BenchForm): Shown<KnobView> {
  const springs = form.choice('bands.springs') !== 'no';
  const read = new FormReader(form);
  const popped = read.figure('bands.knob', 'pressure at which the knob popped', 'pressure');
  // The test does not exist for other parking brakes: that is said before a figure is asked for.
  const trouble = springs ? read.trouble() : null;
  if (trouble) return trouble;
  const found = judgeParkingKnob(popped, GAUGE_PSI, springs);
  return found.ok
    ? {
        kind: 'shown',
        low: heldView(popped, GAUGE_PSI, found.low, form.system),
        high: heldView(popped, GAUGE_PSI, found.high, form.system),
        note: found.note,
      }
    : refused(found);
}
