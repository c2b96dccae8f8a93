import type { FieldHelp } from './sheet.ts';

/**
 * Where each figure of the older pages is found, by the name of its field: a `*` stands for an axle, an `@` for a side.
 * Spans are what is usual on a coach, in the unit of the calculations: judgement, and no limits.
 */
const HELP: Readonly<Record<string, FieldHelp>> = {
  'leak.now': {
    where: 'The worse needle of the dash gauge, or a test gauge at a tank, as it stands at this moment.',
    typical: [60, 135],
  },
  'leak.handTime': {
    where: 'Minutes on the watch since the start; 1.5 or 1 1/2 is a minute and a half.',
    typical: [0, 30],
  },
  'leak.handPressure': { where: 'What the needle showed at that time.', typical: [40, 135] },
  'leak.towed': { where: 'Only what has air brakes of its own counts.' },
  'leak.gauge': { where: 'How finely the needle can be read. Half of the smallest division at best.' },
  'build.test': {
    where: 'What was done: which marks, which engine speed, which kind of coach. Each has its own limit.',
  },
  'build.time': { where: 'A watch, from one mark of the needle to the other.', typical: [10, 180] },
  'build.fitted': {
    where: 'Plates on the tanks, added up; else length and girth of each tank.',
    typical: [3000, 9000],
  },
  'build.axle*': { where: 'A figure cast or stamped on the clamp or the body of the chamber: 16, 24, 30.' },
  'bands.cutIn': {
    where: 'Engine running, pedal pumped: the pressure at which the needle begins to rise again.',
    typical: [85, 110],
  },
  'bands.cutOut': {
    where: 'Engine running: the pressure at which the needle stops and the dryer blows off.',
    typical: [105, 135],
  },
  'bands.warning': {
    where: 'Engine off, key on, pedal pumped: the pressure at which buzzer or lamp comes.',
    typical: [55, 75],
  },
  'bands.year': { where: 'The plate at the driver’s door or the front bulkhead.', typical: [1950, 2030] },
  'bands.month': { where: 'The same plate; only 1975 needs it.', typical: [1, 12] },
  'bands.springs': {
    where: 'A chamber with two stacked housings has a spring; a lever or a drum on the shaft is another kind.',
  },
  'bands.knob': {
    where: 'Engine off, pedal pumped on: the pressure at which the yellow knob jumps out.',
    typical: [20, 45],
  },
  'flow.volume': { where: 'Plates of the tanks that lose pressure, added up.', typical: [1500, 9000] },
  'flow.rate': { where: 'The rate of the air leak-down.', typical: [0.2, 10] },
  'flow.spread': { where: 'Give or take of the same leak-down.', typical: [0.1, 2] },
  'flow.pressure': { where: 'The middle between first and last mark.', typical: [60, 130] },
  'flow.start': { where: 'The dash gauge now.', typical: [60, 135] },
  'flow.warning': { where: 'The pressure of the low-air warning, as tested on this coach.', typical: [55, 75] },
  'stroke.axles': { where: 'Count the axles of the coach alone.' },
  'stroke.pressure': {
    where: 'Tank gauge, engine off, before the pedal goes down: 90 to 100 psi.',
    typical: [80, 105],
  },
  'stroke.*.chamber': { where: 'The figure on the clamp or body; bolted ones have none and are told by their width.' },
  'stroke.*.class': { where: 'Square ports or a trapezoid tag: long stroke. Cannot be told: leave it unknown.' },
  'stroke.*.@': {
    where: 'How far the mark on the rod moved from the chamber’s face, pedal fully down.',
    typical: [0.5, 2.75],
  },
  'stroke.*.@.state': { where: 'Dead: the rod does not move, or lining or spring is broken or soaked.' },
  'heat.axles': { where: 'Count the axles of the coach alone.' },
  'heat.minutes': { where: 'The watch, from the first wheel end that was read to the last.', typical: [2, 10] },
  'heat.surface': { where: 'What the beam falls on. A strip of tape makes bright metal readable.' },
  'heat.spot': { where: 'The same part of every hub: all caps, or all flanges.' },
  'heat.braked': { where: 'Any hard or long braking in the last twenty minutes.' },
  'heat.*.@': { where: 'Infrared thermometer a hand’s breadth from hub cap or flange.', typical: [60, 250] },
  'lining.axle': { where: 'The steering axle has its own limit.' },
  'lining.kind': { where: 'Look through the dust shield or the wheel: blocks, strip or pad.' },
  'lining.way': { where: 'A rule held against it, or a caliper with the drum off.' },
  'lining.oily': { where: 'Dark and shiny, or wet to the finger.' },
  'lining.thickness': {
    where: 'The thinnest place of the worst lining, shoe or back plate not counted.',
    typical: [0.15, 0.9],
  },
  'drum.nominal': {
    where: 'Cast on the drum, or from the parts book: 15 or 16 1/2 in on most coaches.',
    typical: [14, 18],
  },
  'drum.diameter': {
    where: 'Drum gauge at several places round and across the face; the largest counts.',
    typical: [14, 18.2],
  },
  'drum.cast': { where: '“MAX DIA” cast at the outer rim of the drum.', typical: [14.1, 18.3] },
  'drum.turned': { where: 'Only when it comes from the lathe today.' },
  'drum.sign': { where: 'Lamp and wire brush on the braking face, inside and at the edge.' },
  'wear.direction': { where: 'Linings and treads get thinner, drums larger.' },
  'wear.limit': { where: 'The limit of that part, from the pages above or the book.' },
  'wear.give': { where: 'How closely a reading can be read: a thirty-second for a rule.', typical: [0.001, 0.06] },
  'wear.firstAt': { where: 'Odometer on the invoice or in the history of the coach.', typical: [1000, 2000000] },
  'wear.first': { where: 'The size that was written down then.' },
  'wear.secondAt': { where: 'Odometer now.', typical: [1000, 2000000] },
  'wear.second': { where: 'The size now, read in the same way.' },
  'wear.yearly': { where: 'Odometer now less that of a year ago.', typical: [2000, 60000] },
  'wear.day': { where: 'The day of the second reading, as 2026-05-13.' },
  'nut.spindle': { where: 'Which axle the hub is on.' },
  'nut.nut': { where: 'Two nuts with a lock washer between, or one nut with a pin.' },
  'nut.threads': { where: 'A thread gauge, or count the threads along one inch of the spindle.' },
  'nut.washer': { where: 'A dowel washer has one pin that drops into the nut; a tang washer is bent over its flats.' },
  'nut.size': { where: 'Caliper across the threads of the spindle.', typical: [1.5, 4] },
  'nut.used': { where: 'What the torque wrench was set to.', typical: [50, 450] },
  'orders.speed': { where: 'A satellite receiver, called out by the passenger.', typical: [30, 75] },
  'orders.source': { where: 'A speedometer may be a tenth off, a satellite receiver half a mile an hour.' },
  'orders.steady': { where: 'The largest change while it was felt or recorded.' },
  'orders.revs': { where: '“Revs per mile” on the tyre’s data sheet; about 500 on a coach.', typical: [440, 560] },
  'orders.free': { where: 'The data sheet; or tape across the raised wheel.', typical: [38, 46] },
  'orders.loaded': {
    where: 'The data sheet; or tape from the ground to the middle of the loaded wheel.',
    typical: [17, 22],
  },
  'orders.axle': {
    where: 'Plate on the axle, the profile, or turns of the shaft for one of the wheel.',
    typical: [2.5, 6],
  },
  'orders.gear': { where: 'The gearbox plate or book; the top gear is often 1 or 0.7.', typical: [0.5, 5] },
  'orders.locked': { where: 'Closed: the tachometer falls with the road speed when you lift off.' },
  'orders.rpm': { where: 'The tachometer, at the same moment as the speed.', typical: [600, 2300] },
  'orders.cylinders': { where: 'Count injectors or exhaust ports; the plate of the engine.', typical: [4, 12] },
  'orders.strokes': { where: 'The engine’s plate or book. Two-strokes have a blower at the side.' },
  'orders.accessory': { where: 'Diameter of the crank pulley divided by that of the driven one.', typical: [0.5, 4] },
  'orders.beat': {
    where: 'A telephone with an acceleration meter, or the line of “Sound and shake”.',
    typical: [3, 200],
  },
  'orders.width': { where: 'One beat over the seconds that were recorded; 1 Hz by feel.', typical: [0.05, 2] },
  'orders.nextGear': { where: 'The gearbox plate or book, the gear next to the one that is held.', typical: [0.5, 5] },
  'sound.span': { where: 'Wheels and shafts lie below 120 Hz; firing and gears above.' },
  'sound.envelope': { where: 'Where the bearing rings: knock on the hub and look, or leave it as it is.' },
};

/** The help of a field; undefined where its sheet says it itself. */
export function fieldHelp(name: string): FieldHelp | undefined {
  return HELP[
    name
      .replace(/\.\d+(?=\.|$)/g, '.*')
      .replace(/(?<=axle)\d+$/, '*')
      .replace(/\.(?:left|right)(?=\.|$)/, '.@')
  ];
}
