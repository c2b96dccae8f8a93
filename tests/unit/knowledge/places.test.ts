import { describe, expect, it } from 'vitest';
import {
  CYLINDER_COUNTS,
  cylindersOf,
  PLACES,
  placesOn,
  SITE_KINDS,
  takesIn,
} from '../../../shared/knowledge/index.ts';

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
  it('are as many cylinders as somebody said, eight while nobody did or what is said is no count', () => {
    expect(placesOn('cylinder', { cylinders: '6' })).toEqual(PLACES.cylinder.slice(0, 6));
    expect(placesOn('cylinder', { cylinders: '12' }).at(-1)).toBe('cylinder 12');
    expect(placesOn('bank', { cylinders: '6' })).toEqual(PLACES.bank);
    for (const count of CYLINDER_COUNTS) expect(cylindersOf({ cylinders: String(count) })).toBe(count);
    for (const said of ['', '0', '-6', '6.5', 'six', '17', true, ['6', '8']])
      expect(placesOn('cylinder', { cylinders: said })).toHaveLength(said instanceof Array ? 6 : 8);
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
