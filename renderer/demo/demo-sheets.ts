/** The sheets of the invented visits: air test, drives and rounds of readings, so that a trend has something to show. */
import { AIR_STEPS, WALK_ROUND, type VisitEventBody } from '../../shared/visit/index.ts';
import { measured } from './demo-entry.ts';

interface Air {
  readonly cutOut: number;
  readonly cutIn: number;
  readonly cameOn: number;
  readonly popped: number;
  readonly seconds: number;
}

/** An air test in which every step was done and nothing failed; the two minutes of loss were watched for five. */
export function demoAirTest({ cutOut, cutIn, cameOn, popped, seconds }: Air): VisitEventBody[] {
  const psi = (value: number) => ({ value, unit: 'psi' });
  const s = (value: number) => ({ value, unit: 's' });
  const read: Readonly<Record<string, Extract<VisitEventBody, { kind: 'air-test.recorded' }>['readings']>> = {
    'governor-cut-out': { 'cut-out': psi(cutOut), 'cut-in': psi(cutIn) },
    'released-leak': { start: psi(cutOut - 2), end: psi(cutOut - 3), watched: s(300) },
    'applied-leak': { start: psi(cutOut - 10), end: psi(cutOut - 13), watched: s(300) },
    'low-air-warning': { 'came-on': psi(cameOn) },
    'parking-valve': { popped: psi(popped) },
    'build-up-dual': { seconds: s(seconds) },
  };
  return [
    { kind: 'air-test.begun', setup: { builtYear: 1987, system: 'dual', springBrakes: true, towedUnits: 0 } },
    ...AIR_STEPS.filter(({ id }) => id !== 'build-up-single').map(({ id }): VisitEventBody => {
      const readings = read[id];
      return readings
        ? { kind: 'air-test.recorded', step: id, readings }
        : { kind: 'air-test.recorded', step: id, answer: 'right' };
    }),
    ...WALK_ROUND.map(({ id }): VisitEventBody => ({ kind: 'walk-round.noted', item: id, state: 'right' })),
  ];
}

/** Gauges at one moment of a drive. */
export function gauges(drive: string, figures: Readonly<Record<string, number>>): VisitEventBody[] {
  const units: Readonly<Record<string, string>> = {
    speed: 'mph',
    'engine-speed': 'rpm',
    oil: 'psi',
    coolant: 'degF',
    air: 'psi',
  };
  return Object.entries(figures).map(([gauge, value]): VisitEventBody => ({
    kind: 'road.noted',
    drive,
    entry: { kind: 'gauge', gauge, reading: { value, unit: units[gauge] ?? '' } },
  }));
}

/** One touch on a row of the sheet. */
export function noted(drive: string, row: string, choice: string): VisitEventBody {
  return { kind: 'road.noted', drive, entry: { kind: 'choice', row, choice } };
}

const SIDES = ['left', 'right'] as const;

/** Hub heat of the six wheel ends in one round, steer, drive, tag, left before right. */
export function hubRound(figures: readonly number[]): VisitEventBody[] {
  const sites = ['front', 'drive', 'tag'].flatMap((axle) => SIDES.map((side) => `${side} ${axle}`));
  return [
    ...sites.map((site, i) => measured('hub', site, 'hub-heat', figures[i]!, 'degF')),
    { kind: 'inspection.round', what: 'hub-heat', minutes: 4, sameSpot: true, emissivity: 0.95 },
  ];
}

/** What is measured at the brakes of the drive axle: stroke, lining and drum, left before right. */
export function driveBrakes(
  stroke: readonly [number, number],
  lining: readonly [number, number],
  drum: readonly [number, number],
): VisitEventBody[] {
  return SIDES.flatMap((side, i) => {
    const site = `${side} drive`;
    return [
      measured(
        'chamber',
        site,
        'stroke',
        stroke[i]!,
        'in',
        { chamber: 'clamp 30', 'stroke-class': 'standard', 'tank-psi': '85' },
        'stroke-limits-by-chamber-type',
      ),
      measured(
        'lining',
        site,
        'lining-left',
        lining[i]!,
        'in',
        { lining: 'drum' },
        'lining-thickness-non-steering-axle-air',
      ),
      measured(
        'drum',
        site,
        'drum-diameter',
        drum[i]!,
        'in',
        { 'nominal-in': '16.5', 'cast-in': '16.62' },
        'drum-diameter',
      ),
    ];
  });
}

/** End play of the steer axle, left before right. */
export function steerPlay(left: number, right: number): VisitEventBody[] {
  const play = (site: string, value: number): VisitEventBody =>
    measured('bearing', site, 'end-play', value, 'in', undefined, 'wheel-bearing-end-play-manually-adjusted');
  return [play('left front', left), play('right front', right)];
}
