/**
 * Everyday words for the same thing, one family a line: parts, noises and what people do. Judgement, from how owners
 * speak; wrong names for parts are here on purpose. No brand names.
 */
const FAMILIES: readonly string[] = [
  'growl hum drone roar rumble moan howl whirr thrum',
  'grind scrape scratch rub',
  'hiss blow psst whoosh spit puff',
  'leak escape lose',
  'drip leak puddle spot seep weep ooze wet stain trickle drop',
  'dirty greasy oily mess black',
  'pedal treadle footbrake foot-brake foot-valve treadle-valve brake-pedal',
  'stand push press step foot',
  'brake break braking',
  'release let go off free loose unlock',
  'roll move creep budge turn',
  'stuck drag seize lock frozen freeze bind jam',
  'parking handbrake parking-brake park-brake hand-brake park knob spring maxi',
  'engine motor diesel',
  'retarder retardation engine-brake exhaust-brake compression-brake engine-braking auxiliary-brake',
  'descent downhill hill grade mountain pass steep slope',
  'slow decelerate hold',
  'throttle accelerator gas lift',
  'weak lazy useless nothing gone poor dead missing absent faint quiet',
  'wheel hub tyre tire rim',
  'hub drum brake-drum',
  'floor aisle underneath under below feet shoes floorboard',
  'speed highway freeway interstate motorway mph fast faster cruise fifty sixty forty fiftyfive',
  'axle differential diff rear-end',
  'oil lube grease fluid',
  'air pressure needle gauge psi tank pounds',
  'buzzer warning alarm lamp',
  'cardboard driveway ground concrete garage pavement tray',
  'shake vibrate judder wobble shimmy tremble',
  'whine squeal screech',
  'lean settle sag low-side',
  'hot heat overheat boil temperature warm cook',
  'smell smoke fume burn',
  'coolant water antifreeze radiator',
  'steer steering wander',
  'shift gear change transmission gearbox automatic',
  'slam bang thump thud clunk jerk',
  'wander weave drift',
];

/** Words that say nothing about the fault. */
export const STOP_WORDS: ReadonlySet<string> = new Set(
  "a an and any are as at be been but by can could did do does for from get gets got had has have he her him his i if in into is it its just me my of on one or our out she so some that the their them then there these they this to too up us was we were what when where which while who will with would you your coach bus rig motorhome camper she's it's thing like really very quite bit lot about again all over every each only even after than also any more since while still now too until".split(
    ' ',
  ),
);

/** Short forms of "not", with and without the apostrophe; the root of all is "not". */
export const NEGATION =
  /^(not|cannot|refuse[sd]?|(ai|are|ca|could|did|does|do|has|have|is|sha|should|was|were|wo|would)n['’]?t)$/;

/** Root of a word → roots that mean much the same. */
export function familyOf(root: (word: string) => string): ReadonlyMap<string, ReadonlySet<string>> {
  const families = new Map<string, Set<string>>();
  for (const line of FAMILIES) {
    // A hyphen joins words that stand side by side in a text, such as "hand brake".
    const roots = line.split(' ').map((each) => each.split('-').map(root).join(''));
    for (const each of roots) {
      const known = families.get(each) ?? new Set<string>();
      for (const other of roots) known.add(other);
      families.set(each, known);
    }
  }
  return families;
}
