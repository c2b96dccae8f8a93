import type { CauseHazard } from '../../knowledge/tree.ts';
import type { Span } from './plan.ts';

/** What is done about an item that the inspection found bad, when no complaint brought it up. */
export interface InspectedWork {
  readonly does: string;
  readonly plain: string;
  readonly hazard: CauseHazard;
  readonly ifLeft: string;
  /** State of the vocabulary. */
  readonly access: string;
  /** Own work without access, minutes. */
  readonly minutes: Span;
  readonly parts: readonly string[];
  readonly alsoWhileOpen: readonly string[];
  readonly rebuild: string;
  /** What shows that it worked. */
  readonly proof: readonly string[];
  /** Words in the parts of another line at the same place that say that it is part of that job already. */
  readonly partOf: RegExp;
}

/** Kinds of items. Minutes and what goes together are judgement of common practice, no source. */
const WORK: Readonly<Record<string, InspectedWork>> = {
  bearing: {
    does: 'Renew inner and outer bearing with cups and seal; set end play by dial gauge',
    plain: 'The bearing that carries the wheel is worn; left alone the hub overheats and the wheel can be lost.',
    hazard: 'danger',
    ifLeft: 'days to weeks, less once it runs hot',
    access: 'hub-open',
    minutes: [60, 180],
    parts: ['inner and outer taper bearings with cups', 'hub seal', 'hub-cap gasket', 'spindle nut lock', 'hub oil'],
    alsoWhileOpen: [
      'seal and wear ring',
      'brake shoes and springs while the drum is off',
      'the other side by inspection',
    ],
    rebuild: 'Replace in complete sets, cup and cone of one make; never a cone alone',
    proof: [
      'Write down end play.',
      'After 20 minutes read hub temperature against its mate.',
      'Next morning look for oil.',
    ],
    partOf: /bearing/,
  },
  hub: {
    does: 'Open the hub, renew what is marked in bearing and seal; set end play by dial gauge',
    plain: 'The hub is not as it has to be; it carries the wheel.',
    hazard: 'danger',
    ifLeft: 'days to weeks, less once it runs hot',
    access: 'hub-open',
    minutes: [45, 180],
    parts: ['bearing set if marked', 'hub seal', 'hub-cap gasket', 'spindle nut lock', 'hub oil'],
    alsoWhileOpen: [
      'seal and wear ring',
      'brake shoes and springs while the drum is off',
      'the other side by inspection',
    ],
    rebuild: 'Reset if bright; cup and cone together once blue or pitted',
    proof: [
      'Write down end play.',
      'After 20 minutes read hub temperature against its mate.',
      'Next morning look for oil.',
    ],
    partOf: /bearing|hub/,
  },
  seal: {
    does: 'Renew the hub seal, look at what it runs on, and clean or renew oiled lining',
    plain: 'The seal lets oil out of the hub: the bearing runs dry and the oil reaches the brake.',
    hazard: 'danger',
    ifLeft: 'hours to weeks, by how much it loses',
    access: 'hub-open',
    minutes: [30, 75],
    parts: ['hub seal', 'wear sleeve if grooved', 'hub-cap gasket', 'hub oil'],
    alsoWhileOpen: [
      'bearings if blue or marked',
      'brake lining if oiled, on both sides of the axle',
      'breather of the axle',
    ],
    rebuild: 'Replace always; the old seal does not go back',
    proof: ['Next morning look for oil at seal and cap.', 'Look again after 50 and after 500 miles.'],
    partOf: /seal/,
  },
  drum: {
    does: 'Renew the brake drum; both of the axle when one is over the limit',
    plain: 'The drum that the brake presses against is past what it may be.',
    hazard: 'danger',
    ifLeft: 'it can crack at a hard stop',
    access: 'wheel-off',
    minutes: [30, 75],
    parts: ['brake drums'],
    alsoWhileOpen: ['springs and rollers', 'cam and bushes', 'wheel seal'],
    rebuild: 'Turning only within the figure cast into the drum, both sides alike',
    proof: ['Drag and stroke on both ends of the axle.', 'After 20 minutes read drum temperatures against each other.'],
    partOf: /drum/,
  },
  lining: {
    does: 'Reline both wheels of the axle; measure the drums',
    plain: 'The brake lining is worn, oiled or torn, and the wheel brakes less than it has to.',
    hazard: 'danger',
    ifLeft: 'it wears to the metal, sooner with every stop',
    access: 'wheel-off',
    minutes: [60, 150],
    parts: ['lined shoe or pad set for the axle', 'hardware kit'],
    alsoWhileOpen: ['drum measurement', 'cam and bushes', 'wheel seal'],
    rebuild: 'Relined exchange shoes of one edge code and age on an axle',
    proof: ['Drag and stroke on both ends of the axle.', 'After 20 minutes read drum temperatures against each other.'],
    partOf: /lin(?:ing|ed)|shoe|pad set/,
  },
  chamber: {
    does: 'Renew the brake chamber, the spring half caged first; the same size on both ends of the axle',
    plain: 'The air chamber that works the brake of this wheel is not fit for use.',
    hazard: 'danger',
    ifLeft: 'it can fail at the next application',
    access: 'under-coach',
    minutes: [45, 120],
    parts: ['brake chamber', 'clevis pin and cotter'],
    alsoWhileOpen: ['hose to the chamber', 'slack adjuster bush', 'chamber on the other end of the axle'],
    rebuild: 'Replace; a spring half is never opened',
    proof: ['Soap test with the brake held.', 'Applied stroke on both ends of the axle.'],
    partOf: /chamber|diaphragm/,
  },
  hose: {
    does: 'Renew the hose with its fittings, and cure what it rubbed on',
    plain: 'The hose is cracked, chafed or swollen, and can burst.',
    hazard: 'danger',
    ifLeft: 'it bursts without more warning; what it carries decides what happens then',
    access: 'under-coach',
    minutes: [20, 60],
    parts: ['hose'],
    alsoWhileOpen: ['all hoses of the same date', 'clips'],
    rebuild: 'Replace',
    proof: ['Pressure up, dry and quiet.', 'Clean it, drive, look again.'],
    partOf: /hose/,
  },
  'air-spring': {
    does: 'Renew the air spring, and cure what killed it; both of the axle if of one age',
    plain: 'The air spring that carries this corner is worn or perished and can burst.',
    hazard: 'danger',
    ifLeft: 'it can burst; the coach then drops onto its stops',
    access: 'wheel-off',
    minutes: [60, 150],
    parts: ['air spring'],
    alsoWhileOpen: ['shock absorber', 'bump stop', 'short delivery line and fitting'],
    rebuild: 'Replace',
    proof: ['Soap test at full height.', 'Height after a night.'],
    partOf: /air spring|bellows/,
  },
  bushing: {
    does: 'Renew the bushes of that axle as a set, tightened at ride height',
    plain: 'The rubber that holds the axle in its place has worn.',
    hazard: 'damage',
    ifLeft: 'months; the axle wanders, the tyres wear and the brackets crack',
    access: 'under-coach',
    minutes: [60, 240],
    parts: ['bushes'],
    alsoWhileOpen: ['bracket crack check with dye', 'shock absorbers', 'alignment'],
    rebuild: 'Replace',
    proof: ['Prise again: no movement.', 'The same road as before.'],
    partOf: /bush/,
  },
  tyre: {
    does: 'Renew the tyre or wheel; both of the axle if they differ in age or size',
    plain: 'The tyre or the wheel is not fit for use: it can burst, or the wheel can come loose.',
    hazard: 'danger',
    ifLeft: 'it can burst, or the wheel can come off, without more warning',
    access: 'wheel-off',
    minutes: [30, 60],
    parts: ['tyre'],
    alsoWhileOpen: ['the mate of a dual pair', 'wheel studs and nuts', 'valve'],
    rebuild: 'Replace',
    proof: ['Nuts at their torque, and again after 50 to 100 miles.', 'Pressures cold, next morning.'],
    partOf: /tyre/,
  },
  damper: {
    does: 'Renew the shock absorbers of that axle as a pair',
    plain: 'The shock absorber no longer holds the wheel down.',
    hazard: 'damage',
    ifLeft: 'weeks to months; tyres wear in patches, the coach floats and takes longer to stop on a rough road',
    access: 'under-coach',
    minutes: [30, 90],
    parts: ['pair of shock absorbers'],
    alsoWhileOpen: ['bushes of their eyes', 'brackets, by eye for cracks'],
    rebuild: 'Replace',
    proof: ['Dry after a week.', 'Warm by hand on both sides after a drive.'],
    partOf: /shock absorber|damper/,
  },
  'damper-mount': {
    does: 'Renew the eye or bracket of the shock absorber',
    plain: 'The shock absorber hangs loose; it can drop or strike a brake hose.',
    hazard: 'danger',
    ifLeft: 'it can come down at any bump; what it strikes is a hose, a pipe or whoever drives behind',
    access: 'under-coach',
    minutes: [45, 120],
    parts: ['eye bushes or bracket of the shock absorber', 'bolt with lock nut'],
    alsoWhileOpen: ['the shock absorber itself', 'bracket on the other side, by eye for cracks'],
    rebuild: '',
    proof: ['Nothing moves by bar.', 'Looked at again after 50 miles.'],
    partOf: /shock absorber mount|bracket of the shock/,
  },
  'steering-joint': {
    does: 'Renew the joint with its nut and pin; align the axle after',
    plain: 'A joint between steering wheel and road wheels has play; it can come apart.',
    hazard: 'danger',
    ifLeft: 'it can come apart without more warning; the wheels then no longer follow',
    access: 'under-coach',
    minutes: [45, 150],
    parts: ['steering joint', 'cotter pin'],
    alsoWhileOpen: ['the joint at the other end', 'boots', 'alignment'],
    rebuild: 'Replace; bent or welded parts are never put back',
    proof: ['No play by hand with the engine running.', 'Straight on the same road as before.'],
    partOf: /joint|tie rod|drag link|king ?pin/,
  },
};

/** An item of a kind that nobody has described: taken as one that can hurt people until somebody says otherwise. */
const OTHER: InspectedWork = {
  does: 'Put right what the inspection found',
  plain: 'The inspection found this not fit for use.',
  hazard: 'danger',
  ifLeft: 'Not known for this kind of part.',
  access: 'parked',
  minutes: [0, 0],
  parts: [],
  alsoWhileOpen: [],
  rebuild: '',
  proof: ['Look at it again the way it was found.'],
  partOf: /(?!)/,
};

/** What is done about an item of a kind. */
export function inspectedWork(kind: string): InspectedWork {
  return Object.hasOwn(WORK, kind) ? WORK[kind]! : OTHER;
}

/** Whether the kind is one of those described here. */
export function isDescribed(kind: string): boolean {
  return Object.hasOwn(WORK, kind);
}
