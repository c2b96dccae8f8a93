/** What has to be measured or read before a part is ordered. Common practice, no source. */

interface AskedOf {
  readonly part: RegExp;
  readonly asks: readonly { readonly id: string; readonly ask: string; readonly kind: 'length' | 'text' }[];
}

const ASKED: readonly AskedOf[] = [
  {
    part: /\b(hub|wheel|axle|pinion|front|rear|output|shaft) seal\b|^seal\b|wear (sleeve|ring)/,
    asks: [
      { id: 'shaft-diameter', ask: 'Shaft diameter beside the groove that the old seal has worn', kind: 'length' },
      { id: 'bore-diameter', ask: 'Bore that the seal is pressed into', kind: 'length' },
    ],
  },
  {
    part: /\bdrums?\b/,
    asks: [
      { id: 'drum-diameter', ask: 'Nominal inside diameter of the drum, as cast or stamped', kind: 'length' },
      { id: 'lining-width', ask: 'Width of the lining that runs in it', kind: 'length' },
    ],
  },
  {
    part: /\b(lining|lined shoes?|shoes?|pad)\b/,
    asks: [
      { id: 'drum-diameter', ask: 'Nominal inside diameter of the drum, as cast or stamped', kind: 'length' },
      { id: 'lining-width', ask: 'Width of the lining', kind: 'length' },
      { id: 'edge-code', ask: 'Edge code on the lining of the other side', kind: 'text' },
    ],
  },
  {
    part: /\b(chambers?|diaphragm|spring half|clamp ring|clamp bands?|clamp and bolts)\b/,
    asks: [
      { id: 'chamber-type', ask: 'Type of the chamber as stamped: size, long or standard stroke', kind: 'text' },
      { id: 'rod-length', ask: 'Length of the pushrod from chamber face to clevis pin', kind: 'length' },
    ],
  },
  {
    part: /\bslack adjusters?\b/,
    asks: [
      { id: 'spline', ask: 'Splines of the camshaft: number and diameter', kind: 'text' },
      { id: 'arm-length', ask: 'Arm length, hole in use', kind: 'length' },
    ],
  },
  {
    part: /\b(bearings?|bearing set|cups?|cones?)\b/,
    asks: [{ id: 'bearing-number', ask: 'Numbers on cup and cone', kind: 'text' }],
  },
  {
    part: /\b(studs?|nuts?|U-bolts?|centre bolt)\b/i,
    asks: [{ id: 'thread', ask: 'Thread and length; left-hand or right-hand', kind: 'text' }],
  },
  {
    part: /\b(hoses?|lines?|tubes?|fittings?)\b/,
    asks: [
      { id: 'thread', ask: 'Thread or size of both ends', kind: 'text' },
      { id: 'length', ask: 'Length between the ends', kind: 'length' },
    ],
  },
  {
    part: /\b(air springs?|bellows|air bags?)\b/,
    asks: [{ id: 'number', ask: 'Number moulded into the rubber, and the stud spacing', kind: 'text' }],
  },
  { part: /\btyres?\b/, asks: [{ id: 'tyre-size', ask: 'Size, load index and date code', kind: 'text' }] },
  {
    part: /\b(bush\w*|kingpins?|king-pins?|pins)\b/,
    asks: [{ id: 'pin-diameter', ask: 'Pin diameter where it is not worn', kind: 'length' }],
  },
  {
    part: /\bbelts?\b/,
    asks: [{ id: 'belt-number', ask: 'Number on the belt, or its length and section', kind: 'text' }],
  },
  {
    part: /\b(cross and bearing|universal joints?|joint kit)\b/,
    asks: [{ id: 'cap-diameter', ask: 'Cap diameter and span over the caps', kind: 'text' }],
  },
];

/** What is asked of a part by its name; empty when nothing decides it. */
export function identityAsked(name: string): AskedOf['asks'] {
  const words = name.toLowerCase();
  return ASKED.find(({ part }) => part.test(words))?.asks ?? [];
}
