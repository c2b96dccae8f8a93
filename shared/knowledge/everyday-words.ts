/**
 * Everyday words for the same thing, one family a line: parts, noises and what people do. Judgement, from how owners
 * speak; wrong names for parts are here on purpose. No brand names.
 */
const FAMILIES: readonly string[] = [
  'growl hum drone roar rumble moan howl whirr',
  'hiss blow psst whoosh spit puff',
  'drip leak puddle spot seep weep ooze wet stain trickle',
  'pedal treadle footbrake stand push press step hold foot',
  'brake brakes braking',
  'release let go off free loose unlock',
  'roll move creep budge coast pull stuck held hold drag',
  'parking handbrake park knob spring maxi',
  'engine motor diesel',
  'retarder exhaust compression engine-brake downhill descent hill grade slow-down',
  'weak lazy useless nothing gone poor dead missing',
  'wheel hub tyre tire rim drum',
  'floor aisle underneath under below feet shoes seat',
  'speed highway mph fast faster motorway cruise fifty sixty forty',
  'oil lube grease black fluid',
  'air pressure needle gauge psi tank pounds',
  'buzzer warning alarm lamp',
  'cardboard driveway parking-spot ground concrete garage floor-under tray pan',
  'shake vibrate judder wobble shimmy tremble',
  'whine squeal screech',
  'lean settle sag drop low-side',
  'hot heat overheat boil temperature',
  'smoke fume',
  'coolant water antifreeze radiator',
  'steer steering wander',
  'shift gear change transmission gearbox',
];

/** Words that say nothing about the fault. */
export const STOP_WORDS: ReadonlySet<string> = new Set(
  "a an and any are as at be been but by can could did do does for from get gets got had has have he her him his i if in into is it its just me my of on one or our out she so some that the their them then there these they this to too up us was we were what when where which while who will with would you your coach bus rig motorhome camper she's it's thing like really very quite bit lot about again".split(
    ' ',
  ),
);

/** Root of a word → roots that mean much the same. */
export function familyOf(root: (word: string) => string): ReadonlyMap<string, ReadonlySet<string>> {
  const families = new Map<string, Set<string>>();
  for (const line of FAMILIES) {
    const roots = line.split(' ').map(root);
    for (const each of roots) {
      const known = families.get(each) ?? new Set<string>();
      for (const other of roots) known.add(other);
      families.set(each, known);
    }
  }
  return families;
}
