import { describe, expect, it } from 'vitest';
import { PLACES, placesOn, SITE_KINDS, takesIn } from '../../../shared/knowledge/index.ts';

describe('[KNO-30] the places of a check', () => {
  it('are those that the coach has: without a tag axle none of the tag axle', () => {
    const two = { 'tag-axle': false };
    expect(placesOn('wheel-end', two)).toEqual(['left front', 'right front', 'left drive', 'right drive']);
    expect(placesOn('axle', two)).toEqual(['steer axle', 'drive axle']);
    for (const kind of SITE_KINDS) {
      expect(placesOn(kind, {})).toEqual(PLACES[kind]);
      expect(placesOn(kind, { 'tag-axle': true })).toEqual(PLACES[kind]);
    }
    expect(placesOn('cylinder', two)).toHaveLength(8);
  });
  it('take each other in: a wheel end by itself, however it is spelled, and by its axle', () => {
    expect(takesIn('left front', 'left steer')).toBe(true);
    expect(takesIn('steer axle', 'right front')).toBe(true);
    expect(takesIn('right front', 'steer axle')).toBe(false);
    expect(takesIn('right front', 'left front')).toBe(false);
    expect(takesIn('drive axle', 'left front')).toBe(false);
    expect(takesIn('cylinder 1', 'cylinder 2')).toBe(false);
    expect(takesIn('left side', 'left front')).toBe(false);
  });
});
