/** Arrival, air test and road test as the hand-over lists them. */
import type { OtherFinding, OtherWork } from '../../shared/handover/index.ts';
import { STATUS_SAID } from '../../shared/knowledge/index.ts';
import { formatQuantity, type UnitSystem } from '../../shared/units/index.ts';
import {
  AIR_STEPS,
  DRIP_COLOURS,
  DRIP_FEELS,
  DRIP_PLACES,
  TRIP_TRAITS,
  WALK_ROUND,
  WORK_AREAS,
  wordsOf,
  type AirTestState,
  type ArrivalState,
  type RoadDrive,
  type VisitState,
} from '../../shared/visit/index.ts';
import { airTestView } from './air-test-view.ts';
import { driveTime, entryWords } from './road/road-sheet.ts';

/** What was recorded outside of the complaints; a subject of which nothing was recorded has no findings. */
export function otherWorkOf({ arrival, airTest, road }: VisitState, system: UnitSystem): readonly OtherWork[] {
  return [
    { id: 'arrival', findings: arrivalFindings(arrival) },
    { id: 'air-test', findings: airFindings(airTest, system) },
    { id: 'road-test', findings: road.drives.flatMap((drive) => roadFindings(drive, system)) },
  ];
}

function arrivalFindings({ work, trip, spots }: ArrivalState): readonly OtherFinding[] {
  return [
    ...work.map((told): OtherFinding => ({
      id: told.work,
      what: `Done lately, as told: ${wordsOf(WORK_AREAS, told.area)}`,
      result: [told.what, told.when].filter(Boolean).join(', '),
      at: told.at,
      by: told.by,
    })),
    ...(trip
      ? [
          {
            id: trip.id,
            what: 'The trip ahead, as told',
            result: [
              trip.where,
              trip.distance ? `${trip.distance.value} ${trip.distance.unit}` : '',
              ...trip.traits.map((trait) => wordsOf(TRIP_TRAITS, trait)),
            ]
              .filter(Boolean)
              .join(', '),
            at: trip.at,
            by: trip.by,
          },
        ]
      : []),
    ...spots.map((spot): OtherFinding => ({
      id: spot.spot,
      what: `Spot on the drip sheet: ${wordsOf(DRIP_PLACES, spot.place)}`,
      result: `${wordsOf(DRIP_COLOURS, spot.colour)}, ${wordsOf(DRIP_FEELS, spot.feel)}`,
      ...(spot.note.trim() === '' ? {} : { note: spot.note }),
      ...(spot.photo === undefined ? {} : { photos: [spot.photo] }),
      at: spot.at,
      by: spot.by,
    })),
  ];
}

function airFindings(air: AirTestState, system: UnitSystem): readonly OtherFinding[] {
  const { steps, walk } = airTestView(air, null);
  const tested = steps.flatMap(({ id, words, standing }): OtherFinding[] => {
    const record = air.records[id];
    const step = AIR_STEPS.find((each) => each.id === id);
    if (!record || !step) return [];
    const read = step.figures.flatMap((figure) => {
      const reading = record.readings[figure.id];
      return reading ? [`${figure.words} ${formatQuantity(reading.value, reading.unit, system)}`] : [];
    });
    return [
      {
        id,
        what: words,
        result: [standing, ...read].join(', '),
        heldAgainst: `${step.source} (${STATUS_SAID[step.status]})`,
        ...(record.note === undefined ? {} : { note: record.note }),
        at: record.at,
        by: record.by,
      },
    ];
  });
  const walked = walk.flatMap(({ id, words, standing }): OtherFinding[] => {
    const record = air.walk[id];
    const item = WALK_ROUND.find((each) => each.id === id);
    if (!record || !item) return [];
    const { note, at, by } = record;
    const result = record.state === 'wrong' ? item.wrong : standing;
    return [{ id, what: `Walk-round: ${words}`, result, ...(note === undefined ? {} : { note }), at, by }];
  });
  return [...tested, ...walked];
}

function roadFindings(drive: RoadDrive, system: UnitSystem): readonly OtherFinding[] {
  return drive.notes.map(({ id, entry, at, seconds }): OtherFinding => {
    const followed = entry.kind === 'sign' ? drive.followed[entry.sign] : undefined;
    return {
      id,
      what: `${driveTime(seconds)} into the drive`,
      result: entryWords(entry, system),
      ...(followed === undefined ? {} : { note: followed }),
      at,
      by: drive.writer,
    };
  });
}
