/** Parts that an inspection goes through, and where on the coach they are. */
import type { Verdict } from '../../knowledge/tree.ts';

/** The wheel ends in pairs, front to rear; words as the findings of the trees have them. */
export const WHEEL_AXLES = ['front', 'drive', 'tag'] as const;
export type WheelAxle = (typeof WHEEL_AXLES)[number];
export const SIDES = ['left', 'right'] as const;
export type WheelSide = (typeof SIDES)[number];

export const AXLE_WORDS: Readonly<Record<WheelAxle, string>> = { front: 'Steer', drive: 'Drive', tag: 'Tag' };

/** A wheel end in words: "left front". */
export function wheelSite(side: WheelSide, axle: WheelAxle): string {
  return `${side} ${axle}`;
}

/** A kind of part. */
export interface InspectionPart {
  readonly item: string;
  readonly words: string;
  /** `wheel-end`: at each of the six; else at these places. */
  readonly sites: 'wheel-end' | readonly string[];
  /** What good, watch and bad look like, for who looks. */
  readonly good: string;
  readonly watch: string;
  readonly bad: string;
  /** Cannot be seen before something is opened or taken off. */
  readonly closed: boolean;
  /** What it holds the coach to while it is bad; judgement on the source, as for the walk-round. */
  readonly holds: Verdict;
  /** Where the words come from. */
  readonly source: string;
}

const CORNERS = ['left front', 'right front', 'left drive', 'right drive', 'left tag', 'right tag'] as const;

/** In the order in which a wheel end is taken apart, then what hangs beside it. Words of the trade in our own. */
export const INSPECTION_PARTS: readonly InspectionPart[] = [
  {
    item: 'hub',
    words: 'Hub',
    sites: 'wheel-end',
    good: 'dry, oil at its mark and clear, warm like its mate',
    watch: 'damp film with dust, or warmer than its mate',
    bad: 'oil thrown out, cap open, smoke, or far hotter than its mate',
    closed: false,
    holds: 'stay-put',
    source: 'common practice; open cap and smoke: a state reprint of the out-of-service list (second hand)',
  },
  {
    item: 'drum',
    words: 'Drum or disc',
    sites: 'wheel-end',
    good: 'smooth, fine checks all over at most, under its cast figure',
    watch: 'blue, checks in patches, near its cast figure',
    bad: 'a crack to the edge or through, hard spots, over its cast figure',
    closed: true,
    holds: 'stay-put',
    source: 'Appendix A to Part 396, 1.c, second hand; trade article on drums',
  },
  {
    item: 'lining',
    words: 'Lining or pad',
    sites: 'wheel-end',
    good: 'dry, even, well over its limit',
    watch: 'less than 3/8 in left, glazed, uneven',
    bad: 'soaked in oil, loose, cracked to a rivet, under its limit',
    closed: true,
    holds: 'stay-put',
    source: '49 CFR 393.47(d), Appendix A to Part 396, 1.a(6); the 3/8 in is a band of this program (judgement)',
  },
  {
    item: 'seal',
    words: 'Hub seal',
    sites: 'wheel-end',
    good: 'dry behind the drum, ring smooth',
    watch: 'damp film with dust, nothing on the lining',
    bad: 'wet and running, or oil on lining or drum; ring grooved so that a nail catches',
    closed: true,
    holds: 'stay-put',
    source: 'common practice; wet lining: Appendix A to Part 396, 1.a(6)(b)',
  },
  {
    item: 'bearing',
    words: 'Bearings',
    sites: 'wheel-end',
    good: 'bright rollers and cups, right lubricant, end play in its band',
    watch: 'straw colour, light marks, end play near its band',
    bad: 'pitted, flaked, blue, turned in the hub, dry or burnt',
    closed: true,
    holds: 'stay-put',
    source: 'damage names after ISO 15243; signs are common practice',
  },
  {
    item: 'chamber',
    words: 'Brake chamber and pushrod',
    sites: 'wheel-end',
    good: 'stroke well inside its limit, rod straight, no hiss',
    watch: 'stroke near its limit or unlike its mate',
    bad: 'over its limit, hisses, clamp or bracket loose',
    closed: false,
    holds: 'stay-put',
    source: '49 CFR 393.47(e); Appendix A to Part 396, 1.a(3) to (5)',
  },
  {
    item: 'hose',
    words: 'Brake hose',
    sites: 'wheel-end',
    good: 'whole, supported, rubs nowhere',
    watch: 'outer cover cracked or scuffed, no cord in sight',
    bad: 'cord showing, bulge, leak, kink, or a spliced piece',
    closed: false,
    holds: 'stay-put',
    source: 'Appendix A to Part 396, 1.d, second hand',
  },
  {
    item: 'tyre',
    words: 'Tyre and wheel',
    sites: 'wheel-end',
    good: 'even wear, sound walls, all nuts tight',
    watch: 'uneven wear, fine cracks, old date code',
    bad: 'cord, bulge, leak, under its tread limit, loose or missing nut, cracked wheel',
    closed: false,
    holds: 'stay-put',
    source: '49 CFR 393.75, 393.205',
  },
  {
    item: 'air-spring',
    words: 'Air spring',
    sites: CORNERS,
    good: 'holds air, fine weather checks at most, both sides alike',
    watch: 'cracks in the cover, old by its date',
    bad: 'cord showing, blister, bubbles, worn through at the piston',
    closed: false,
    holds: 'creep-to-safe-place',
    source: 'common practice; 49 CFR 393.207(f) from memory',
  },
  {
    item: 'bushing',
    words: 'Radius-rod bushing',
    sites: [
      'front, left',
      'front, right',
      'front, upper',
      'rear, left',
      'rear, right',
      'rear, upper left',
      'rear, upper right',
    ],
    good: 'rubber whole, no movement by bar',
    watch: 'rubber cracked at the edge, hardly moves',
    bad: 'torn, pressed out, metal to metal, over 1/8 in by bar; rod or bracket cracked',
    closed: false,
    holds: 'creep-to-safe-place',
    source: '49 CFR 570.61(a), read; the 1/8 in is common practice',
  },
  {
    item: 'damper',
    words: 'Shock absorber',
    sites: CORNERS,
    good: 'dry, tight, warm after a drive',
    watch: 'damp, or colder than its mate',
    bad: 'oil on its body',
    closed: false,
    holds: 'drive-and-book',
    source: '49 CFR 570.61(b), read; warm or cold by hand: a field manual, second hand',
  },
  {
    item: 'damper-mount',
    words: 'Shock absorber mount',
    sites: CORNERS,
    good: 'eyes and brackets tight, rubber whole',
    watch: 'rubber of an eye worn, no movement yet',
    bad: 'loose eye, cracked or broken bracket, hanging free',
    closed: false,
    holds: 'creep-to-safe-place',
    source: '49 CFR 570.61(b), read; what it holds to is judgement',
  },
  {
    item: 'steering-joint',
    words: 'Steering joint',
    sites: ['drag link', 'tie rod, left', 'tie rod, right', 'king pin, left', 'king pin, right', 'steering gear'],
    good: 'no play by hand, boots whole',
    watch: 'boot torn, no play yet',
    bad: 'over 1/8 in by hand, nut or clamp moves, crack',
    closed: false,
    holds: 'stay-put',
    source: 'Appendix A to Part 396, 7.g and h, from memory',
  },
];

/** Where a part is looked at. */
export function sitesOf(part: InspectionPart): readonly string[] {
  return part.sites === 'wheel-end' ? CORNERS : part.sites;
}

/** A part in words within a sentence; the person's own word, or an id as words, for a kind that nobody described. */
export function partWords(item: string): string {
  return (INSPECTION_PARTS.find((each) => each.item === item)?.words ?? item.replaceAll('-', ' ')).toLowerCase();
}

/** Id of the entry for a part at a place. */
export function entryId(item: string, site: string): string {
  return `${item}@${site}`;
}

/** What a part of a kind holds the coach to while it is bad; a kind that nobody described holds as "creep" (judgement). */
export function heldWhileBad(item: string): Verdict {
  return INSPECTION_PARTS.find((each) => each.item === item)?.holds ?? 'creep-to-safe-place';
}
