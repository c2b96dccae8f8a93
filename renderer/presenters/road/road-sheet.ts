/** The sheet that a passenger works on a road test, and what was noted on it. */
import {
  ROAD_GAUGES,
  ROAD_PANEL_WORDS,
  ROAD_PANELS,
  ROAD_ROWS,
  ROAD_SIGNS,
  type RoadPanel,
} from '../../../shared/knowledge/index.ts';
import { formatQuantity, type UnitSystem } from '../../../shared/units/index.ts';
import type { RoadDrive, RoadEntry, RoadNote } from '../../../shared/visit/index.ts';

export type RoadPanelShown = 'gauges' | RoadPanel;

/** The panels in the order of their keys. */
export const ROAD_TABS: readonly { readonly id: RoadPanelShown; readonly words: string }[] = [
  { id: 'gauges', words: 'Gauges' },
  ...ROAD_PANELS.map((id) => ({ id, words: ROAD_PANEL_WORDS[id] })),
];

/** A figure of a gauge as it stands on its button. */
export function gaugeWords(gauge: string, value: number, system: UnitSystem): string {
  const unit = ROAD_GAUGES.find(({ id }) => id === gauge)?.unit ?? '';
  if (gauge === 'gear') return value === 0 ? 'N' : String(value);
  return unit === '' ? String(value) : formatQuantity(value, unit, system);
}

/** One entry in words: "Pulling: more", "Coolant: 190 °F". */
export function entryWords(entry: RoadEntry, system: UnitSystem): string {
  if (entry.kind === 'sign') return ROAD_SIGNS.find(({ id }) => id === entry.sign)?.words ?? entry.sign;
  if (entry.kind === 'gauge') {
    const gauge = ROAD_GAUGES.find(({ id }) => id === entry.gauge);
    return `${gauge?.words ?? entry.gauge}: ${gaugeWords(entry.gauge, entry.reading.value, system)}`;
  }
  const row = ROAD_ROWS.find(({ id }) => id === entry.row);
  const choice = row?.choices.find(({ id }) => id === entry.choice);
  const of = row && row.panel !== 'at-the-stop' ? `${ROAD_PANEL_WORDS[row.panel]}, ` : '';
  const words = row?.words ?? entry.row;
  return `${of}${of === '' ? words : lower(words)}: ${choice?.words ?? entry.choice}`;
}

/** The choice noted last in each row, and the figure noted last of each gauge. */
export function latestOf(drive: RoadDrive): ReadonlyMap<string, string> {
  return new Map(
    drive.notes.map(({ entry }) =>
      entry.kind === 'choice'
        ? [entry.row, entry.choice]
        : entry.kind === 'gauge'
          ? [entry.gauge, String(entry.reading.value)]
          : ['sign', entry.sign],
    ),
  );
}

/** Time since the start: "4:07". */
export function driveTime(seconds: number): string {
  const whole = Math.floor(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

export interface RoadLine {
  readonly id: string;
  readonly time: string;
  readonly words: string;
}

/** Every note as a line of the table, newest last. */
export function roadLines(notes: readonly RoadNote[], system: UnitSystem): RoadLine[] {
  return notes.map(({ id, entry, seconds }) => ({ id, time: driveTime(seconds), words: entryWords(entry, system) }));
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** Whether the choices of a row are so short that three of them fit beside each other on a phone. */
export function isShort({ choices }: { readonly choices: readonly { readonly words: string }[] }): boolean {
  return choices.length <= 3 && choices.every(({ words }) => words.length <= 14);
}
