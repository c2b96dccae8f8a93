/** Which rule decides whether a neighbour is renewed while it is open, and the judged life of those that are weighed. */
import type { LifeModel } from '../../measuring/index.ts';
import type { RenewProposal } from './plan.ts';

interface RuleFor {
  readonly words: RegExp;
  readonly rule: RenewProposal['rule'];
  readonly because: string;
}

/** First match decides. Common practice, no source. */
const RULES: readonly RuleFor[] = [
  {
    words:
      /\b(check|look|looked|inspect\w*|inspection|measure\w*|condition|play|test\w*|tried|for cracks|torque|aim)\b/,
    rule: 'look',
    because: 'By inspection: it is renewed only if it shows something. Common practice.',
  },
  {
    words: /\b(if|when) /,
    rule: 'look',
    because: 'Only if what the words name is found. Common practice.',
  },
  {
    words: /\b(hub seal|wheel seal|seal and wear ring|spindle nut lock|bolts? .*new|every bolt new|locks?)\b|^seals?$/,
    rule: 'renew',
    because: 'Always: the old one does not go back. Common practice.',
  },
  {
    words:
      /\b(brake|lining|linings|shoe|shoes|drum|drums|chamber|chambers|diaphragm|slack|clevis|camshaft|cam|wheel bearings?|bearings|spindle|kingpins?|king pins|steering|tie-rod|drag-link|tyres?|studs|nuts|springs and rollers|return springs|air-bag|bellows|rods?|caliper)\b/,
    rule: 'limit',
    because: 'A brake, steering or wheel-end part is not weighed by cost: past its limit it is renewed.',
  },
];

/** Rule for the words of a proposal; what no rule names is weighed by cost. */
export function renewRule(what: string): Pick<RenewProposal, 'rule' | 'because'> {
  const words = what.toLowerCase();
  const found = RULES.find((each) => each.words.test(words));
  return found
    ? { rule: found.rule, because: found.because }
    : {
        rule: 'weigh',
        because: 'Weighed by cost: renewing it now against the chance that it fails before the next time.',
      };
}

/** A judged life; ages and horizon are in its unit. */
export interface JudgedLife extends LifeModel {
  readonly unit: 'thousand miles' | 'years';
  readonly mechanism: string;
}

/**
 * Shape by how a part fails: wear-out 2.5–3.5, rolling fatigue 1.5, by chance 1.0 (common reliability practice). The
 * characteristic lives are judgement, from memory of no source; they are always shown with their half and their double.
 */
const LIVES: readonly (readonly [words: RegExp, life: JudgedLife])[] = [
  [
    /\b(hoses?|belts?|bush\w*|mounts?|boots?|rubber|grommets?|strap|tube|elbows)\b/,
    life(3, 12, 'years', 'rubber that ages'),
  ],
  [/\b(pump|impeller|compressor|turbo\w*|blower)\b/, life(2.5, 300, 'thousand miles', 'wear')],
  [/\b(seals?|gaskets?|o-rings?|rings)\b/, life(3, 250, 'thousand miles', 'wear')],
  [/\b(bearing|joints?|idler|pulley|tensioner|centre bearing)\b/, life(1.5, 400, 'thousand miles', 'rolling fatigue')],
  [/\b(shock|shocks|thermostats?|coupling|link|links|cap)\b/, life(2.5, 150, 'thousand miles', 'wear')],
  [
    /\b(switch\w*|sender|sensor|solenoids?|valves?|governor|regulator|wiring|lamp)\b/,
    life(1, 20, 'years', 'by chance'),
  ],
];

function life(shape: number, scale: number, unit: JudgedLife['unit'], mechanism: string): JudgedLife {
  return { shape, scale, unit, mechanism };
}

/** Judged life for the words of a proposal; null when nobody has judged one. */
export function judgedLife(what: string): JudgedLife | null {
  const words = what.toLowerCase();
  return LIVES.find(([named]) => named.test(words))?.[1] ?? null;
}
