import {
  coldStart,
  isoGrade,
  saeGrade,
  viscosityAt,
  viscosityIndex,
  type OilPoints,
} from '../../../../shared/measuring/index.ts';
import { convert, formatQuantity } from '../../../../shared/units/index.ts';
import { digits, grouped } from '../figure-kinds.ts';
import { refused, type BenchForm } from '../form.ts';
import { Given, source, type Answer, type Asked, type Sheet } from '../sheet.ts';
import { bandPlot } from '../band-plot.ts';

/** Fluids with usual figures of their grade; a data sheet comes first. @source mid-grade by ISO 3448 and SAE J300; index by common practice. */
const USUAL: readonly (readonly [id: string, words: string, at40: number, at100: number])[] = [
  ['vg32', 'Hydraulic oil ISO VG 32', 32, 5.4],
  ['vg46', 'Hydraulic oil ISO VG 46', 46, 6.8],
  ['vg68', 'Hydraulic oil ISO VG 68', 68, 8.7],
  ['atf', 'Older automatic transmission fluid', 38, 7.4],
  ['15w40', 'Engine oil 15W-40', 110, 14.5],
  ['40', 'Engine oil SAE 40, single grade', 130, 14.5],
];

const OIL: readonly Asked[] = [
  {
    ask: 'choice',
    name: 'oil.kind',
    label: 'Fluid',
    options: [['', 'As typed below'], ...USUAL],
    otherwise: '',
    where: 'The can, the profile of the coach, or the last invoice. A usual figure of the grade is taken.',
  },
  {
    ask: 'figure',
    name: 'oil.at40',
    label: 'Viscosity at 40 °C',
    kind: 'viscosity',
    where: 'The data sheet of the fluid: “kinematic viscosity at 40 °C”, in mm²/s or cSt, which are the same.',
    typical: [20, 250],
    optional: true,
  },
  {
    ask: 'figure',
    name: 'oil.at100',
    label: 'Viscosity at 100 °C',
    kind: 'viscosity',
    where: 'The same data sheet.',
    typical: [4, 26],
    optional: true,
  },
  {
    ask: 'figure',
    name: 'oil.temperature',
    label: 'Temperature of the fluid',
    kind: 'temperature',
    where: 'Cold: the air of the night. Warm: an infrared thermometer at the tank.',
    typical: [-20, 230],
  },
  {
    ask: 'choice',
    name: 'oil.use',
    label: 'What it has to do',
    options: [
      ['steering', 'Steering pump, vane kind'],
      ['crank', 'Engine oil, cranking'],
    ],
    otherwise: 'steering',
    where: 'Which unit is complained of.',
  },
];

/** A vane pump at the start, most and least, mm²/s: handbooks, from memory. The chart that warns above 500 was read. */
const VANE_START = 860;
const CHART_WARNS = 500;
const LEAST = 13;
const WINDOW: readonly [number, number] = [16, 100];

function pointsOf(form: BenchForm): OilPoints | string {
  const usual = USUAL.find(([id]) => id === form.choice('oil.kind'));
  const given = new Given(form, OIL);
  const at40 = given.maybe('oil.at40') ?? usual?.[2] ?? null;
  const at100 = given.maybe('oil.at100') ?? usual?.[3] ?? null;
  return at40 === null || at100 === null
    ? 'Choose the fluid, or type its viscosity at 40 and at 100 °C.'
    : { at40, at100 };
}

function temperatureWords(celsius: number, form: BenchForm): string {
  return formatQuantity(celsius, 'degC', form.system);
}

/** The temperature at which the fluid is just thin enough; null where no start from −40 to 60 °C is too thick. */
function thinFrom(points: OilPoints, most: number): number | null {
  for (let celsius = -40; celsius <= 60; celsius++) {
    const found = viscosityAt(points, celsius);
    if (found.ok && found.viscosity <= most) return celsius === -40 ? null : celsius;
  }
  return 60;
}

export const VISCOSITY_SHEET: Sheet = {
  id: 'fluid-viscosity',
  heading: 'How thick is it now',
  fields: OIL,
  answer(form) {
    const given = new Given(form, OIL);
    if (given.trouble) return given.trouble;
    const points = pointsOf(form);
    if (typeof points === 'string') return { kind: 'waiting', words: points };
    const celsius = convert(given.figure('oil.temperature'), 'degF', 'degC');
    const found = viscosityAt(points, celsius);
    if (!found.ok) return refused(found);
    const steering = given.choice('oil.use') === 'steering';
    return {
      kind: 'shown',
      figures: [
        { words: `At ${temperatureWords(celsius, form)}`, figure: viscosityWords(found.viscosity) },
        ...(steering ? steeringFigures(points, form) : []),
      ],
      plot: plotOf(points, celsius, found.viscosity, steering, form),
      notes: [
        ...(steering ? steeringNotes(found.viscosity, celsius) : crankNotes(found.viscosity)),
        ...(found.estimate
          ? ['Below freezing the formula does not know wax and thickeners: the real oil may be half as thick again.']
          : []),
      ],
      sources: [
        source('ASTM D341', 'memory'),
        ...(steering
          ? [source('860 mm²/s: pump handbooks', 'memory'), source('window 16 to 100 mm²/s: trade article', 'seen')]
          : [source('SAE J300 cranking limits', 'seen'), source('3,000 and 7,000 mm²/s')]),
      ],
    };
  },
};

function viscosityWords(value: number): string {
  return `${value >= 100 ? grouped(value) : digits(value, 1)} mm²/s`;
}

function steeringFigures(points: OilPoints, form: BenchForm): NonNullable<Answer['figures']> {
  const from = thinFrom(points, VANE_START);
  const better = USUAL.filter(([id]) => ['vg32', 'vg46', 'vg68', 'atf'].includes(id))
    .map(([, words, at40, at100]) => ({ words, from: thinFrom({ at40, at100 }, VANE_START) }))
    .map(({ words, from: start }) => ({
      words: `${words}, usual figures`,
      figure: start === null ? 'thin enough at any start' : `thin enough from ${temperatureWords(start, form)}`,
    }));
  return [
    {
      words: 'Thin enough for a vane pump from',
      figure: from === null ? 'any start' : temperatureWords(from, form),
    },
    ...better,
  ];
}

function steeringNotes(viscosity: number, celsius: number): readonly string[] {
  const notes: string[] = [];
  if (viscosity > VANE_START)
    notes.push(
      'Too thick for a vane pump this morning: it starves and whines. Let it idle, do not turn the wheel hard.',
    );
  else if (viscosity > CHART_WARNS)
    notes.push('Below the limit of the handbooks, but above 500 mm²/s, where one chart warns of starving.');
  else if (viscosity < LEAST) notes.push('Too thin: below about 13 mm²/s the pump wears and leaks inside.');
  else if (viscosity < WINDOW[0]) notes.push('Above the floor, below the window of 16 to 100 mm²/s that is best.');
  else notes.push('Thin enough to be drawn in, thick enough to carry. A whine has another cause then.');
  if (celsius > 93) notes.push('Above 200 °F fluid and hoses age fast (common practice).');
  notes.push('The fluid that the maker of the steering names comes first, whatever the figures say.');
  return notes;
}

function crankNotes(viscosity: number): readonly string[] {
  const meaning = coldStart(viscosity);
  if (!meaning.ok) return [meaning.message];
  return [
    {
      usual: 'Usual: the oil does not explain slow cranking.',
      slow: 'Slow cranking is expected of this oil at this temperature.',
      'the-oil-alone-can-explain-it':
        'The oil alone can explain that it hardly turns. Warm it, or change the grade for the season.',
    }[meaning.meaning],
  ];
}

function plotOf(points: OilPoints, celsius: number, viscosity: number, steering: boolean, form: BenchForm) {
  const unit = form.system === 'us' ? 'degF' : 'degC';
  const at = (c: number): number => convert(c, 'degC', unit);
  const curve = Array.from({ length: 29 }, (_, i) => -40 + 5 * i).flatMap((c): [number, number][] => {
    const found = viscosityAt(points, c);
    return found.ok ? [[at(c), Math.log10(found.viscosity)]] : [];
  });
  const [low, high] = [at(-40), at(100)];
  return bandPlot({
    x: { from: low, to: high, unit: unit === 'degF' ? '°F' : '°C' },
    y: { from: 0, to: 5, unit: 'mm²/s', words: (power) => grouped(10 ** power) },
    bands: steering
      ? [{ from: low, to: high, low: Math.log10(WINDOW[0]), high: Math.log10(WINDOW[1]), words: '16 to 100, working' }]
      : [],
    limits: steering ? [{ at: Math.log10(VANE_START), words: '860, vane pump at the start' }] : [],
    marks: [{ x: at(celsius), y: Math.log10(viscosity), give: 0, open: false, words: viscosityWords(viscosity) }],
    curve,
    spoken: `Viscosity over temperature: ${viscosityWords(viscosity)} at ${temperatureWords(celsius, form)}${steering ? '; a vane pump wants at most 860 mm²/s at the start' : ''}.`,
    caption: 'The scale goes by tens: each line is ten times the one below.',
  });
}

const TWO: readonly Asked[] = OIL.filter(
  ({ name }) => name === 'oil.kind' || name === 'oil.at40' || name === 'oil.at100',
);

export const GRADE_SHEET: Sheet = {
  id: 'fluid-grade',
  heading: 'Index and grade',
  lead: 'From the two viscosities above.',
  fields: [],
  answer(form) {
    const trouble = new Given(form, TWO).trouble;
    if (trouble) return trouble;
    const points = pointsOf(form);
    if (typeof points === 'string') return { kind: 'waiting', words: points };
    const index = viscosityIndex(points.at40, points.at100);
    if (!index.ok) return refused(index);
    const iso = isoGrade(points.at40);
    const sae = saeGrade(points.at100);
    return {
      kind: 'shown',
      figures: [
        { words: 'Viscosity index', figure: digits(index.index, 0) },
        { words: 'ISO grade, by 40 °C', figure: iso === null ? 'between the grades' : `VG ${iso}` },
        { words: 'SAE grade, by 100 °C', figure: sae === null ? 'outside the grades' : `SAE ${sae}` },
      ],
      notes: ['A high index thins less with heat: about 100 for plain oil, 140 and more for multigrade.'],
      sources: [
        source('ASTM D2270', 'second-hand'),
        source('ISO 3448, number give or take 10 %', 'seen'),
        source('SAE J300, 2015', 'seen'),
      ],
    };
  },
};
