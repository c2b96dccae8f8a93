import {
  judgeBuildUp,
  judgeGovernor,
  judgeLeakDown,
  judgeParkingKnob,
  judgeWarning,
  worstOf,
  type Judgement,
} from '../../measuring/index.ts';
import { readingIn } from '../reading-in.ts';
import type { AirTestSetup } from './events.ts';
import type { AirRecord } from './state.ts';
import { airStep, type AirStep } from './steps.ts';

/** One figure of a step held against its limit. */
export interface AirJudged {
  readonly words: string;
  /** In the unit of the limit. */
  readonly value: number;
  /** One standard uncertainty, in the unit of the limit. */
  readonly uncertainty: number;
  readonly judgement: Judgement;
}

export type AirOutcome =
  /** Nothing recorded yet, or a figure is missing. */
  | { readonly kind: 'open' }
  | { readonly kind: 'cant-do' }
  /** `note` is what has to be read beside it. */
  | {
      readonly kind: 'judged';
      readonly decision: 'meets' | 'too-close' | 'fails';
      readonly judged: readonly AirJudged[];
      readonly note: string;
    }
  /** The figures give no answer; `message` says why and what to do. */
  | { readonly kind: 'refused'; readonly message: string };

/** Cut-out taken for the warning of an older coach when the governor step gave none: the stricter figure follows from it. */
const CUT_OUT_OTHERWISE = 120;

/**
 * What a record of a step means, by the published limits of `shared/measuring`. A figure so near its limit that the gauge
 * cannot tell is `too-close`, which counts against driving (MEA-2).
 *
 * @param cutOutPsi  governor cut-out as read, for the warning of coaches built before 1975; undefined = 120 psi.
 */
export function judgeAirStep(
  step: AirStep,
  record: AirRecord | undefined,
  setup: AirTestSetup,
  cutOutPsi: number = CUT_OUT_OTHERWISE,
): AirOutcome {
  if (!record) return { kind: 'open' };
  if (record.answer === 'cant-do') return { kind: 'cant-do' };
  if (step.figures.length === 0) {
    if (record.answer === undefined) return { kind: 'open' };
    return { kind: 'judged', decision: record.answer === 'right' ? 'meets' : 'fails', judged: [], note: '' };
  }
  const values = new Map<string, number>();
  for (const { id, unit, otherwise } of step.figures) {
    const reading = record.readings[id] ?? (otherwise === undefined ? undefined : { value: otherwise, unit });
    if (!reading) return { kind: 'open' };
    const value = readingIn(reading, unit);
    if (value === null) {
      return { kind: 'refused', message: `"${reading.unit}" is no unit for this figure. Enter it in ${unit}.` };
    }
    values.set(id, value);
  }
  const uncertainty = step.figures[0]!.uncertainty;
  const at = (id: string): number => values.get(id)!;
  switch (step.id) {
    case 'governor-cut-out': {
      const found = judgeGovernor(at('cut-in'), at('cut-out'), uncertainty);
      if (!found.ok) return refusal(found.message);
      return judged(
        [
          { words: 'cut-in', value: at('cut-in'), uncertainty, judgement: found.cutIn },
          { words: 'cut-out', value: at('cut-out'), uncertainty, judgement: found.cutOut },
        ],
        found.note ?? '',
      );
    }
    case 'released-leak':
    case 'applied-leak': {
      const found = judgeLeakDown({
        marks: [
          { timeS: 0, pressurePsi: at('start') },
          { timeS: at('watched'), pressurePsi: at('end') },
        ],
        brake: step.id === 'released-leak' ? 'released' : 'held',
        airBrakedTowedUnits: setup.towedUnits,
      });
      if (!found.ok) return refusal(found.message);
      const { ratePsiPerMin: value, uncertaintyPsiPerMin } = found.rate;
      return judged(
        [{ words: 'loss a minute', value, uncertainty: uncertaintyPsiPerMin, judgement: found.judgement }],
        'A minute tells a loss near the limit only roughly. Watched for three minutes it is told better.',
      );
    }
    case 'low-air-warning': {
      const built = { year: setup.builtYear, ...(setup.builtMonth === undefined ? {} : { month: setup.builtMonth }) };
      const found = judgeWarning(at('came-on'), uncertainty, built, cutOutPsi);
      if (!found.ok) return refusal(found.message);
      return judged([{ words: 'warning came on', value: at('came-on'), uncertainty, judgement: found.judgement }]);
    }
    case 'parking-valve': {
      const found = judgeParkingKnob(at('popped'), uncertainty, setup.springBrakes);
      if (!found.ok) return refusal(found.message);
      return judged(
        [
          { words: 'knob came out, not below', value: at('popped'), uncertainty, judgement: found.low },
          { words: 'knob came out, not above', value: at('popped'), uncertainty, judgement: found.high },
        ],
        found.note ?? '',
      );
    }
    default: {
      const test = step.id === 'build-up-single' ? 'single-idle' : 'dual-operating-speed';
      const found = judgeBuildUp({ test, seconds: at('seconds'), uncertaintyS: uncertainty });
      if (!found.ok) return refusal(found.message);
      return judged(
        [{ words: 'build-up', value: at('seconds'), uncertainty, judgement: found.judgement }],
        'Larger tanks than the smallest allowed may take longer; the maker’s figure then decides.',
      );
    }
  }
}

function judged(all: readonly AirJudged[], note = ''): AirOutcome {
  return { kind: 'judged', decision: worstOf(all.map(({ judgement }) => judgement.decision)), judged: all, note };
}

function refusal(message: string): AirOutcome {
  return { kind: 'refused', message };
}

/** Governor cut-out as read in this test, psi; undefined when it was not read. */
export function cutOutRead(records: Readonly<Record<string, AirRecord>>): number | undefined {
  const reading = airStep('governor-cut-out') && records['governor-cut-out']?.readings['cut-out'];
  const value = reading ? readingIn(reading, 'psi') : null;
  return value ?? undefined;
}
