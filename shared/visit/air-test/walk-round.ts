/** The walk-round before the coach moves, as data. */
import type { Verdict } from '../../knowledge/tree.ts';
import type { LimitStatus } from '../../measuring/index.ts';

export interface WalkItem {
  readonly id: string;
  readonly place: string;
  /** What to look for. */
  readonly look: string;
  /** What is wrong, in words, when it is. */
  readonly wrong: string;
  readonly source: string;
  readonly status: LimitStatus;
  /** What it holds the coach to when it is wrong; judgement on the source. */
  readonly verdict: Verdict;
}

/** Once round, from the door; nobody goes beneath a coach on air. */
export const WALK_ROUND: readonly WalkItem[] = [
  {
    id: 'nuts',
    place: 'Every wheel',
    look: 'All nuts there, no rust streak from a nut, no crack in wheel or rim, no nut that moves by hand.',
    wrong: 'A wheel nut is loose or missing, or a wheel or rim is cracked',
    source: '49 CFR 393.205',
    status: 'memory',
    verdict: 'stay-put',
  },
  {
    id: 'tyres',
    place: 'Every tyre',
    look: 'No bulge, no cord, no leak, nothing between duals; front tread 4/32 in, others 2/32 in.',
    wrong: 'A tyre shows cord or a bulge, leaks, or is worn out',
    source: '49 CFR 393.75',
    status: 'second-hand',
    verdict: 'stay-put',
  },
  {
    id: 'hubs',
    place: 'Every hub and drum',
    look: 'No oil or grease thrown out at the hub, down the tyre or on the brake; hub cap whole.',
    wrong: 'A hub throws out oil or grease, or its cap is open',
    source: 'Appendix A to Part 396, 1.a(6)(b); a state reprint of the out-of-service list',
    status: 'second-hand',
    verdict: 'stay-put',
  },
  {
    id: 'hoses',
    place: 'Hoses and chambers, as far as they show from beside the coach',
    look: 'No hiss, no bulge, no cord, nothing that rubs.',
    wrong: 'An air hose or chamber hisses, bulges or is chafed to the cord',
    source: 'Appendix A to Part 396, 1.a(4) and 1.d',
    status: 'second-hand',
    verdict: 'stay-put',
  },
  {
    id: 'stance',
    place: 'The coach as a whole',
    look: 'Stands level, no bag flat, wheels in the middle of their arches.',
    wrong: 'The body lies on its stops, or an axle stands crooked in its arch',
    source: '49 CFR 393.207',
    status: 'memory',
    verdict: 'stay-put',
  },
  {
    id: 'under',
    place: 'The ground under it',
    look: 'No fuel, no running coolant or oil; old spots told from new ones.',
    wrong: 'Fuel, coolant or oil runs out',
    source: '49 CFR 396.5(b); fuel: Appendix A to Part 396',
    status: 'memory',
    verdict: 'stay-put',
  },
  {
    id: 'lamps',
    place: 'Lamps, mirrors, wipers, horn',
    look: 'They work, from the seat and from behind.',
    wrong: 'A lamp, mirror, wiper or the horn does not work',
    source: '49 CFR 392.7(a)',
    status: 'seen',
    verdict: 'creep-to-safe-place',
  },
  {
    id: 'doors',
    place: 'Doors, bays, what lies loose inside',
    look: 'Bays latched, nothing on the dash or the floor that can fly or roll under a pedal.',
    wrong: 'A door or bay does not latch, or something lies loose',
    source: 'common practice, no source',
    status: 'practice',
    verdict: 'creep-to-safe-place',
  },
];
