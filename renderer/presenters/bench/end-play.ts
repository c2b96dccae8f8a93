import { nutProcedure, torqueAgainst, type NutSystem } from '../../../shared/measuring/index.ts';
import { formatQuantity } from '../../../shared/units/index.ts';
import { shown } from './figure-kinds.ts';
import { FormReader, refused, type BenchForm, type Shown } from './form.ts';

export const END_PLAY_CAUTIONS: readonly string[] = [
  'Axle on stands rated for it, the other wheels chocked at the front and at the back. Never under a jack alone.',
  'Release a parking brake on this axle only when the coach cannot roll.',
  'Keep fingers out between hub and stand; the wheel turns.',
];

export const SPINDLES: readonly (readonly [NutSystem['spindle'], string])[] = [
  ['steer', 'Steer'],
  ['drive', 'Drive'],
  ['trailer', 'Trailer kind (some tag axles)'],
];
export const NUTS: readonly (readonly [NutSystem['nut'], string])[] = [
  ['double', 'Two nuts'],
  ['single-with-cotter-pin', 'One nut with a cotter pin'],
];
export const THREADS: readonly (readonly [string, string])[] = ['12', '14', '16', '18'].map(
  (each) => [each, each] as const,
);
export const WASHERS: readonly (readonly [string, string])[] = [
  ['', 'Not known'],
  ['dowel', 'Dowel washer'],
  ['tang', 'Tang washer'],
];

export interface NutView {
  readonly cautions: readonly string[];
  readonly steps: readonly string[];
  readonly travel: string;
  readonly source: string;
  /** The lock torque that was used against its band; null where none was typed or none is asked. */
  readonly used: string | null;
}

const TURNS: readonly (readonly [number, string])[] = [
  [1, 'one whole turn'],
  [1 / 2, 'half a turn'],
  [1 / 3, 'a third of a turn'],
  [1 / 4, 'a quarter of a turn'],
  [1 / 6, 'a sixth of a turn'],
];

export function nutView(form: BenchForm): Shown<NutView> {
  const read = new FormReader(form);
  const size = read.optional('nut.size', 'thread of the nut', 'length');
  const used = read.optional('nut.used', 'lock torque used', 'torque');
  const trouble = read.trouble();
  if (trouble) return trouble;
  const washer = form.choice('nut.washer');
  const found = nutProcedure({
    spindle: SPINDLES.find(([id]) => id === form.choice('nut.spindle'))?.[0] ?? 'steer',
    nut: NUTS.find(([id]) => id === form.choice('nut.nut'))?.[0] ?? 'double',
    threadsPerInch: Number(form.choice('nut.threads') || '12'),
    ...(size === null ? {} : { nutSizeIn: size }),
    ...(washer === 'dowel' || washer === 'tang' ? { washer } : {}),
  });
  if (!found.ok) return refused(found);
  const lock = found.steps[4]?.torqueLbFt ?? null;
  const torque = (value: number): string => formatQuantity(value, 'lb-ft', form.system);
  return {
    kind: 'shown',
    cautions: found.cautions,
    steps: found.steps.map(({ what, torqueLbFt, backOffTurns }) => {
      if (torqueLbFt)
        return torqueLbFt[0] === torqueLbFt[1]
          ? `${what}: ${torque(torqueLbFt[0])}.`
          : `${what}: ${torque(torqueLbFt[0])} to ${torque(torqueLbFt[1])}.`;
      if (backOffTurns !== null)
        return `${what}: ${TURNS.find(([turns]) => Math.abs(turns - backOffTurns) < 1e-9)?.[1] ?? `${backOffTurns} turns`}.`;
      return `${what}.`;
    }),
    travel: shown(found.lastTravelIn, 'length', form.system),
    source: found.source,
    used:
      used === null || lock === null
        ? null
        : {
            below: 'The lock torque used is below its band.',
            inside: 'The lock torque used lies in its band.',
            above: 'The lock torque used is above its band.',
          }[torqueAgainst(used, lock)],
  };
}
