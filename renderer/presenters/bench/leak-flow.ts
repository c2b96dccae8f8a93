import { equivalentHole, freeAirFlow, timeToWarningS } from '../../../shared/measuring/index.ts';
import { digits, minutesAndSeconds, shown } from './figure-kinds.ts';
import { FormReader, refused, type BenchForm, type Shown } from './form.ts';

export interface FlowView {
  readonly flow: string;
  readonly give: string | null;
  readonly hole: string;
}

/** A share of the tank volume that is not known, since lines and chambers belong to it: judgement. */
const VOLUME_SHARE = 0.1;

/** The leak as free air and as the hole that would lose it. */
export function flowView(form: BenchForm): Shown<FlowView> {
  const read = new FormReader(form);
  const volume = read.figure('flow.volume', 'tank volume', 'volume');
  const rate = read.figure('flow.rate', 'leak rate', 'pressure-rate');
  const spread = read.optional('flow.spread', 'give or take of the rate', 'pressure-rate');
  const pressure = read.figure('flow.pressure', 'mean pressure of the test', 'pressure');
  const trouble = read.trouble();
  if (trouble) return trouble;
  const flow = freeAirFlow(
    volume,
    rate,
    spread === null ? undefined : { volumeIn3: VOLUME_SHARE * volume, ratePsiPerMin: spread / 2 },
  );
  if (!flow.ok) return refused(flow);
  const hole = equivalentHole(flow.litresPerMin, pressure);
  if (!hole.ok) return refused(hole);
  const inUs = form.system === 'us';
  const amount = inUs ? flow.cubicFeetPerMin : flow.litresPerMin;
  const unit = inUs ? 'ft³ a minute' : 'L a minute';
  return {
    kind: 'shown',
    flow: `${digits(amount, inUs ? 2 : 1)} ${unit} of free air`,
    give:
      flow.relativeUncertainty === null
        ? null
        : `${digits(2 * flow.relativeUncertainty * amount, inUs ? 2 : 1)} ${unit}, with the volume known to one part in ten (judgement)`,
    hole: inUs
      ? `${digits(hole.diameterMm / 25.4, 3)} in (${digits(hole.diameterMm, 1)} mm)`
      : `${digits(hole.diameterMm, 2)} mm`,
  };
}

/** How long a standing coach keeps its air. */
export function timeLeftView(form: BenchForm): Shown<{ readonly time: string; readonly from: string }> {
  const read = new FormReader(form);
  const start = read.figure('flow.start', 'pressure now', 'pressure');
  const warning = read.figure('flow.warning', 'pressure of the warning', 'pressure');
  const rate = read.figure('flow.rate', 'leak rate', 'pressure-rate');
  const pressure = read.figure('flow.pressure', 'mean pressure of the test', 'pressure');
  const trouble = read.trouble();
  if (trouble) return trouble;
  const found = timeToWarningS(start, warning, rate, pressure);
  return found.ok
    ? {
        kind: 'shown',
        time: minutesAndSeconds(found.seconds),
        from: `from ${shown(start, 'pressure', form.system)} to ${shown(warning, 'pressure', form.system)}, standing, engine off, no pedal use`,
      }
    : refused(found);
}
