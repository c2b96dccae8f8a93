import {
  buildUpFromMarks,
  lossOver,
  READING_UNCERTAINTY_PSI,
  requiredReservoir,
  reserveAfterApplication,
} from '../../../../shared/measuring/index.ts';
import { CHAMBER_TYPES, TANK_AXLES } from '../build-up.ts';
import { digits, shown } from '../figure-kinds.ts';
import { refused, type BenchForm } from '../form.ts';
import { differenceInUnits, heldView } from '../held.ts';
import { Given, source, type Asked, type Sheet } from '../sheet.ts';

const BUILD_UP: readonly Asked[] = [
  {
    ask: 'figure',
    name: 'marks.from',
    label: 'Gauge when the watch started',
    kind: 'pressure',
    where: 'The lower needle of the dash gauge, engine at governed speed, as the watch starts. About 85 psi.',
    typical: [80, 95],
  },
  {
    ask: 'figure',
    name: 'marks.to',
    label: 'Gauge when it stopped',
    kind: 'pressure',
    where: 'The same needle as the watch stops. About 100 psi, and below cut-out.',
    typical: [95, 108],
  },
  {
    ask: 'figure',
    name: 'marks.time',
    label: 'Time between the two',
    kind: 'seconds',
    where: 'A stop-watch or the telephone, started and stopped by the needle.',
    typical: [10, 180],
  },
  {
    ask: 'figure',
    name: 'build.fitted',
    label: 'Tank volume fitted, if known',
    kind: 'volume',
    where: 'Plates on the tanks, added up; else length and girth of each. Without it the time stays as measured.',
    typical: [3000, 9000],
    optional: true,
  },
];

/** Twelve times the chambers chosen on the page; null where none was. */
function requiredIn3(form: BenchForm): number | null {
  const types = TANK_AXLES.flatMap((axle) => {
    const type = form.choice(`build.axle${axle}`);
    return CHAMBER_TYPES.includes(type) ? [Number(type), Number(type)] : [];
  });
  const found = types.length === 0 ? null : requiredReservoir(types);
  return found?.ok ? found.requiredIn3 : null;
}

export const BUILD_UP_SHEET: Sheet = {
  id: 'build-marks',
  heading: 'Build-up from marks on the gauge',
  lead: 'Any two marks near 85 and 100 psi; larger tanks than required are taken out of the time.',
  fields: BUILD_UP,
  answer(form) {
    const given = new Given(form, BUILD_UP);
    if (given.trouble) return given.trouble;
    const fitted = given.maybe('build.fitted');
    const required = requiredIn3(form);
    const scaled = fitted !== null && required !== null;
    const found = buildUpFromMarks({
      fromPsi: given.figure('marks.from'),
      toPsi: given.figure('marks.to'),
      seconds: given.figure('marks.time'),
      lookPsi: READING_UNCERTAINTY_PSI,
      ...(scaled ? { tankRatio: fitted / required } : {}),
    });
    if (!found.ok) return refused(found);
    return {
      kind: 'shown',
      figures: [
        { words: 'From 85 to 100 psi', figure: `${digits(found.value, 1)} s` },
        { words: 'Give or take', figure: `${digits(2 * found.uncertainty, 1)} s` },
      ],
      notes: [
        scaled
          ? `Brought to the required tanks: ${shown(fitted, 'volume', form.system)} are fitted, ${shown(required, 'volume', form.system)} required.`
          : 'As measured, on the tanks that are fitted. Larger tanks than required take longer and are no fault.',
      ],
      sources: [source('time goes with volume and pressure, ideal gas', 'practice')],
      worked: { ...found, unit: 's' },
    };
  },
};

const OVERNIGHT: readonly Asked[] = [
  {
    ask: 'figure',
    name: 'night.before',
    label: 'Gauge in the evening',
    kind: 'pressure',
    where:
      'The worse needle, engine stopped, after it has stood ten minutes: air that cools loses pressure without a leak.',
    typical: [85, 130],
  },
  {
    ask: 'figure',
    name: 'night.after',
    label: 'The same needle in the morning',
    kind: 'pressure',
    where: 'Key on, engine not yet started.',
    typical: [0, 130],
  },
  {
    ask: 'figure',
    name: 'night.hours',
    label: 'Hours between',
    kind: 'hours',
    where: 'The clock. Six hours or more; a short test counts for less.',
    typical: [6, 16],
  },
];

export const OVERNIGHT_SHEET: Sheet = {
  id: 'air-overnight',
  heading: 'Loss overnight',
  fields: OVERNIGHT,
  answer(form) {
    const given = new Given(form, OVERNIGHT);
    if (given.trouble) return given.trouble;
    const hours = given.figure('night.hours');
    const found = lossOver(
      given.figure('night.before'),
      given.figure('night.after'),
      hours,
      12,
      READING_UNCERTAINTY_PSI,
      'psi',
    );
    if (!found.ok) return refused(found);
    return {
      kind: 'shown',
      figures: [
        { words: 'Lost in 12 hours', figure: differenceInUnits(found.value, 'psi', form.system) },
        { words: 'Give or take', figure: differenceInUnits(2 * found.uncertainty, 'psi', form.system) },
      ],
      notes: [
        ...(found.atMost ? [`Read after ${digits(hours, 1)} h: in 12 hours it is that at the most.`] : []),
        'A night that cools by 20 °F takes some 5 psi without any leak (ideal gas, from 110 psi).',
      ],
      sources: [source('straight in time, never scaled down')],
      worked: { ...found, unit: 'psi' },
    };
  },
};

const RESERVE: readonly Asked[] = [
  {
    ask: 'figure',
    name: 'reserve.before',
    label: 'Gauge before the pedal',
    kind: 'pressure',
    where: 'Tanks full, engine stopped, parking brake released, wheels chocked.',
    typical: [100, 130],
  },
  {
    ask: 'figure',
    name: 'reserve.after',
    label: 'Gauge after one full application',
    kind: 'pressure',
    where: 'Pedal fully down once, then released; read when the needle stands.',
    typical: [70, 120],
  },
];

export const RESERVE_SHEET: Sheet = {
  id: 'air-reserve',
  heading: 'What one full application leaves',
  cautions: [
    'Chock wheels at the front and at the back, on level ground, before the parking brake is released: it can roll.',
    'Engine stopped. Nobody under the coach or at a wheel: pushrods move.',
    'One stays at the pedal until the parking brake is set again.',
  ],
  fields: RESERVE,
  answer(form) {
    const given = new Given(form, RESERVE);
    if (given.trouble) return given.trouble;
    const found = reserveAfterApplication(
      given.figure('reserve.before'),
      given.figure('reserve.after'),
      READING_UNCERTAINTY_PSI,
    );
    if (!found.ok) return refused(found);
    return {
      kind: 'shown',
      held: [{ of: '', view: heldView(found.leftPercent, found.uncertainty, found.judgement, form.system) }],
      notes: [
        found.adviceMet
          ? 'It also keeps the stricter 80 % that some States ask for.'
          : 'It does not keep the stricter 80 % that some States ask for.',
      ],
      sources: [source('80 %: 49 CFR 570.57', 'memory')],
    };
  },
};
