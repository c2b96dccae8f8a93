import {
  defectiveShare,
  judgeStroke,
  STROKE_UNCERTAINTY_IN,
  strokeLimit,
  type BoltSize,
  type Chamber,
  type DefectiveShare,
  type ServiceBrake,
  type WorkedFigure,
} from '../../../shared/measuring/index.ts';
import type { Observation } from '../../../shared/visit/index.ts';
import { STROKE_CLASSES } from '../../../shared/coach/index.ts';
import { digits, shown } from './figure-kinds.ts';
import { FormReader, refused, type BenchForm, type NoFigure, type Shown } from './form.ts';
import { heldView, limitView, type HeldView, type LimitView } from './held.ts';
import { axleName, SIDES, type Side } from './wheel-ends.ts';

export const STROKE_CAUTIONS: readonly string[] = [
  'Wheels chocked at the front and at the back; the parking brake is released for this, and the coach can roll.',
  'Engine off, key out. Nobody touches the pedal without the word of the one who is underneath.',
  'Never put fingers between pushrod, clevis and slack adjuster: the rod moves with hundreds of pounds.',
  'Never open a spring-brake chamber. The spring inside can kill.',
];

export const STROKE_STEPS: readonly string[] = [
  'Tanks at 90 to 100 psi, engine off, parking brake released, wheels chocked.',
  'Mark each pushrod where it leaves the chamber.',
  'A second person presses the pedal fully and holds it.',
  'Measure how far each mark moved. Read the chamber’s size and its stroke marks (square ports or a trapezoid tag: long stroke).',
];

/** What is known of a brake beside its stroke. */
export const BRAKE_STATES: readonly (readonly [string, string])[] = [
  ['', 'Acts'],
  ['dead', 'Dead, broken or soaked in oil'],
];

const BOLTS: readonly BoltSize[] = ['A', 'B', 'C', 'D', 'E', 'F', 'G'];

/** The chamber chosen for an axle; null when none was. */
export function chamberOf(form: BenchForm, axle: number): Chamber | null {
  const [kind, size] = form.choice(`stroke.${axle}.chamber`).split(' ');
  switch (kind) {
    case 'clamp':
      return {
        kind,
        size: Number(size),
        strokeClass: STROKE_CLASSES.find(([id]) => id === form.choice(`stroke.${axle}.class`))?.[0] ?? 'unknown',
      };
    case 'bolt': {
      const bolt = BOLTS.find((each) => each === size);
      return bolt ? { kind, size: bolt } : null;
    }
    case 'rotochamber':
      return { kind, size: Number(size) };
    case 'double-diaphragm':
      return { kind };
    default:
      return null;
  }
}

export interface StrokeEnd {
  readonly axle: number;
  readonly side: Side;
  readonly name: string;
  readonly shown: Shown<{ readonly held: HeldView; readonly stroke: string }>;
  /** For the drawing: what is written at the wheel. */
  readonly words: string;
  readonly mark: 'tick' | 'straddle' | 'cross' | null;
}

export interface StrokesView {
  readonly ends: readonly StrokeEnd[];
  readonly limits: readonly { readonly axle: string; readonly limit: LimitView }[];
  readonly share: Shown<{ readonly words: string; readonly rule: string; readonly stop: boolean }>;
}

/** The wheel ends as the sites of a check name them: steer, drive and tag. */
export function siteOf(axle: number, side: Side): string {
  return `${side} ${axle === 1 ? 'front' : axle === 2 ? 'drive' : 'tag'}`;
}

/** The stroke that lies worst against its limit, as inches past it; what was read at every end beside it. */
export function worstStroke(
  form: BenchForm,
): Shown<
  WorkedFigure & { readonly unit: string; readonly site: string; readonly observations: readonly Observation[] }
> {
  const axles = axlesOf(form, 'stroke.axles');
  const read = new FormReader(form);
  const reservoirPsi = read.figure('stroke.pressure', 'tank pressure during the application', 'pressure');
  const ends: { readonly past: number; readonly site: string; readonly observation: Observation }[] = [];
  for (let axle = 1; axle <= axles; axle++) {
    const chamber = chamberOf(form, axle);
    for (const side of SIDES) {
      const strokeIn = read.optional(`stroke.${axle}.${side}`, `stroke, ${axleName(axle)} ${side}`, 'length');
      if (strokeIn === null) continue;
      if (!chamber) return { kind: 'waiting', words: `Choose the chamber of the ${axleName(axle).toLowerCase()}.` };
      const found = judgeStroke({ chamber, strokeIn, reservoirPsi });
      if (!found.ok) return read.trouble() ?? refused(found);
      ends.push({
        past: -found.judgement.margin,
        site: siteOf(axle, side),
        observation: {
          what: `${axleName(axle)}, ${side}`,
          said: `${shown(strokeIn, 'length', form.system)}, limit ${shown(found.judgement.limit.value, 'length', form.system)}`,
        },
      });
    }
  }
  const trouble = read.trouble();
  if (trouble) return trouble;
  if (ends.length === 0) return { kind: 'waiting', words: 'Type the stroke of at least one wheel end.' };
  const worst = ends.reduce((a, b) => (b.past > a.past ? b : a));
  return {
    kind: 'shown',
    value: worst.past,
    uncertainty: STROKE_UNCERTAINTY_IN,
    unit: 'in',
    site: worst.site,
    observations: [
      { what: 'Tank pressure', said: shown(reservoirPsi, 'pressure', form.system) },
      ...ends.map(({ observation }) => observation),
    ],
  };
}

export function axlesOf(form: BenchForm, name: string): number {
  return Number(form.choice(name) || '3');
}

/** Every wheel end with its stroke against the limit, and the share of defective brakes. */
export function strokesView(form: BenchForm): StrokesView {
  const axles = axlesOf(form, 'stroke.axles');
  const numbers = Array.from({ length: axles }, (_, i) => i + 1);
  const brakes: (ServiceBrake | NoFigure)[] = [];
  const ends = numbers.flatMap((axle) =>
    SIDES.map((side) => {
      const { end, brake } = endOf(form, axle, side);
      brakes.push(brake);
      return end;
    }),
  );
  const limits = numbers.flatMap((axle) => {
    const chamber = chamberOf(form, axle);
    const found = chamber ? strokeLimit(chamber) : null;
    return found?.ok ? [{ axle: axleName(axle), limit: limitView(found.limit, form.system) }] : [];
  });
  return { ends, limits, share: shareOf(brakes, ends) };
}

function endOf(
  form: BenchForm,
  axle: number,
  side: Side,
): { readonly end: StrokeEnd; readonly brake: ServiceBrake | NoFigure } {
  const name = `${axleName(axle)}, ${side}`;
  const inoperative = form.choice(`stroke.${axle}.${side}.state`) === 'dead';
  const chamber = chamberOf(form, axle);
  const read = new FormReader(form);
  const reservoirPsi = read.figure('stroke.pressure', 'tank pressure during the application', 'pressure');
  const strokeIn = read.figure(`stroke.${axle}.${side}`, 'stroke', 'length');
  const base = { axle, side, name };
  const nothing = (no: NoFigure, words: string): ReturnType<typeof endOf> => ({
    end: { ...base, shown: no, words: inoperative ? 'does not act' : words, mark: inoperative ? 'cross' : null },
    brake: inoperative ? { steeringAxle: axle === 1, beyondIn: 0, inoperative } : no,
  });
  if (!chamber) return nothing({ kind: 'waiting', words: 'Choose the chamber of this axle.' }, 'no chamber');
  const trouble = read.trouble();
  if (trouble) return nothing(trouble, '–');
  const found = judgeStroke({ chamber, strokeIn, reservoirPsi });
  if (!found.ok) return nothing(refused(found), 'refused');
  const held = heldView(strokeIn, STROKE_UNCERTAINTY_IN, found.judgement, form.system);
  return {
    end: {
      ...base,
      shown: { kind: 'shown', held, stroke: shown(strokeIn, 'length', form.system) },
      words: inoperative ? 'does not act' : shown(strokeIn, 'length', form.system),
      mark: inoperative ? 'cross' : held.icon,
    },
    brake: { steeringAxle: axle === 1, beyondIn: found.beyondIn, inoperative },
  };
}

function shareOf(brakes: readonly (ServiceBrake | NoFigure)[], ends: readonly StrokeEnd[]): StrokesView['share'] {
  const known = brakes.filter((brake): brake is ServiceBrake => 'beyondIn' in brake);
  if (known.length < brakes.length)
    return {
      kind: 'waiting',
      words: `The share needs every service brake: ${brakes.length - known.length} of ${brakes.length} are still open.`,
    };
  const found = defectiveShare(known);
  if (!found.ok) return refused(found);
  const close = ends.filter(({ mark }) => mark === 'straddle').length;
  return {
    kind: 'shown',
    stop: found.doNotDrive,
    words: shareWords(found, brakes.length),
    rule: ruleWords(found, close),
  };
}

function shareWords(found: DefectiveShare, of: number): string {
  return `${digits(found.defective, 1)} of ${of} brakes counted defective: ${digits(found.sharePercent, 1)} %.`;
}

function ruleWords(found: DefectiveShare, close: number): string {
  const open =
    close > 0
      ? ` ${close} ${close === 1 ? 'end is' : 'ends are'} too close to call and ${close === 1 ? 'was' : 'were'} counted by the bare figure.`
      : '';
  if (found.steeringOut) return `A brake on the steering axle does not act: stay put, whatever the share.${open}`;
  if (found.tooMany) return `A fifth of the brakes or more: stay put.${open}`;
  return found.defective > 0
    ? `Below a fifth, but each of them is still a defect to mend before the coach goes to work.${open}`
    : `None is counted. That is no statement about the rest of the brakes.${open}`;
}
