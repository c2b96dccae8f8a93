import { judge, type Judgement } from './limit.ts';
import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

export interface TreadReading {
  /** On the steering axle of the coach. */
  readonly front: boolean;
  /** Shallowest place of a major groove, in 32nds of an inch; not at tie bars or humps. */
  readonly depth32nds: number;
  readonly uncertainty32nds: number;
  /** Regrooved, recapped or retreaded. */
  readonly retreaded: boolean;
}

/**
 * Tread depth against its limit.
 *
 * @returns refused `retread-in-front`: no depth mends that; `out-of-range`.
 * @source 49 CFR 393.75(b)–(d) (second-hand): front wheels of a bus 4/32 in and no retreads, others 2/32 in.
 */
export function judgeTread(
  tread: TreadReading,
): Outcome<{ readonly judgement: Judgement }, OutOfRange | 'retread-in-front'> {
  if (tread.front && tread.retreaded) {
    return refuse(
      'retread-in-front',
      'Regrooved, recapped or retreaded tyres are forbidden on the front wheels of a bus (49 CFR 393.75(d)). Fit another.',
    );
  }
  const bad = outOfRange(
    ['tread depth', tread.depth32nds, 0, 40, '/32 in'],
    ['uncertainty', tread.uncertainty32nds, 0, 4, '/32 in'],
  );
  if (bad) return bad;
  return {
    ok: true,
    judgement: judge(tread.depth32nds, tread.uncertainty32nds, {
      id: tread.front ? 'tyre-tread-front' : 'tyre-tread-other',
      value: tread.front ? 4 : 2,
      unit: '1/32 in',
      side: 'at-least',
      atLimit: 'passes',
      source: tread.front ? '49 CFR 393.75(b), front wheels of a bus' : '49 CFR 393.75(c)',
      status: 'second-hand',
    }),
  };
}
