import { judge, type Judgement, type Limit, type LimitStatus } from './limit.ts';
import { outOfRange, type Outcome, type OutOfRange } from './outcome.ts';

export interface DrumReading {
  readonly nominalIn: number;
  /** The largest of several readings round the drum. */
  readonly diameterIn: number;
  /** One standard uncertainty; 0.003 in by drum gauge (judgement). */
  readonly uncertaintyIn: number;
  /** The maximum cast on the drum; null when it cannot be read. */
  readonly castMaximumIn: number | null;
  /** True for a drum just turned, which must leave some wear. */
  readonly justTurned: boolean;
}

/**
 * A drum's diameter against its maximum.
 *
 * @returns the judgement and whether the limit is the figure on the drum or only the usual one: then ask the maker before
 *   the drum is used.
 * @source The figure cast on the drum, 49 CFR 570.59(b) (seen). Without it: nominal + 0.120 in, turned + 0.080 in for 14 in
 *   and larger, + 0.090 and + 0.060 in for smaller (common practice, no published source).
 */
export function judgeDrum(
  drum: DrumReading,
): Outcome<{ readonly judgement: Judgement; readonly byCastFigure: boolean }, OutOfRange> {
  const bad = outOfRange(
    ['nominal diameter', drum.nominalIn, 9, 20, 'in'],
    ['drum diameter', drum.diameterIn, drum.nominalIn - 0.05, drum.nominalIn + 0.5, 'in'],
    ['uncertainty', drum.uncertaintyIn, 0, 0.1, 'in'],
    ['maximum cast on the drum', drum.castMaximumIn ?? drum.nominalIn, drum.nominalIn, drum.nominalIn + 0.3, 'in'],
  );
  if (bad) return bad;
  const cast = drum.castMaximumIn !== null && !drum.justTurned;
  const limit: Limit = cast
    ? limitOf('drum-cast-maximum', drum.castMaximumIn, 'maximum cast on the drum, 49 CFR 570.59(b)', 'seen')
    : usual(drum);
  return {
    ok: true,
    judgement: judge(drum.diameterIn, drum.uncertaintyIn, limit),
    byCastFigure: cast,
  };
}

function usual(drum: DrumReading): Limit {
  const large = drum.nominalIn >= 14;
  const growth = drum.justTurned ? (large ? 0.08 : 0.06) : large ? 0.12 : 0.09;
  const id = drum.justTurned ? 'drum-usual-turned' : 'drum-usual-discard';
  // Turned drums keep 0.040 in (small ones 0.030 in) of wear below the figure cast on them.
  const fromCast = drum.castMaximumIn === null ? Infinity : drum.castMaximumIn - (large ? 0.04 : 0.03);
  return limitOf(id, Math.min(drum.nominalIn + growth, fromCast), 'common practice, no published source', 'practice');
}

function limitOf(id: string, value: number, source: string, status: LimitStatus): Limit {
  return { id, value, unit: 'in', side: 'at-most', atLimit: 'passes', source, status };
}

export type DrumSign =
  | 'fine-checks-all-over'
  | 'fine-checks-in-patches'
  | 'long-or-deep-crack'
  | 'crack-to-open-edge'
  | 'crack-from-outside'
  | 'crack-opens-when-applied'
  | 'blue-band'
  | 'hard-spots'
  | 'piece-missing';

export interface DrumSignRule {
  readonly verdict: 'may-stay' | 'look-further' | 'replace' | 'do-not-drive';
  readonly why: string;
  readonly source: string;
  readonly status: LimitStatus;
}

/** What a sign on the drum means. Cracks are judged by kind, not by a length that nobody has published. */
export const DRUM_SIGNS: Readonly<Record<DrumSign, DrumSignRule>> = {
  'fine-checks-all-over': {
    verdict: 'may-stay',
    why: 'short hairlines over the whole face and circle come from heat in normal work',
    source: 'trade article on drum inspection',
    status: 'second-hand',
  },
  'fine-checks-in-patches': {
    verdict: 'look-further',
    why: 'hairlines in one place only mean that the shoe does not touch all round: measure roundness and contact',
    source: 'trade article on drum inspection',
    status: 'second-hand',
  },
  'long-or-deep-crack': {
    verdict: 'replace',
    why: 'a crack across most of the width, or deep, goes on growing',
    source: 'trade article on drum inspection; width as a measure is common practice',
    status: 'practice',
  },
  'crack-to-open-edge': {
    verdict: 'do-not-drive',
    why: 'the drum can open at the edge',
    source: 'common practice',
    status: 'practice',
  },
  'crack-from-outside': {
    verdict: 'do-not-drive',
    why: 'a crack seen outside has gone through',
    source: 'Appendix A to Part 396, 1.c(1), as a school-bus list repeats it',
    status: 'second-hand',
  },
  'crack-opens-when-applied': {
    verdict: 'do-not-drive',
    why: 'the drum is already giving way',
    source: 'Appendix A to Part 396, 1.c(1), as a school-bus list repeats it',
    status: 'second-hand',
  },
  'blue-band': {
    verdict: 'look-further',
    why: 'the drum was overheated: find the dragging brake, measure it, look for hard spots',
    source: 'trade article on drum inspection',
    status: 'second-hand',
  },
  'hard-spots': {
    verdict: 'replace',
    why: 'shiny hard spots are changed metal; turning does not take them out',
    source: 'trade article on drum inspection',
    status: 'second-hand',
  },
  'piece-missing': {
    verdict: 'do-not-drive',
    why: 'a piece is missing or about to fall away',
    source: 'Appendix A to Part 396, 1.c(2)',
    status: 'memory',
  },
};
