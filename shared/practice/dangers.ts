import type { Check } from '../knowledge/tree.ts';
import { idsOf, type AccessGraph, type AccessNeed } from '../planning/access.ts';

export const DANGER_IDS = [
  'road-unasked',
  'road-ruled',
  'no-chocks',
  'no-stands',
  'jack-alone',
  'chamber-open',
] as const;
export type DangerId = (typeof DANGER_IDS)[number];

/** An unsafe choice. It is named so that it can be chosen from a list and never said how it would be done. */
export interface Danger {
  readonly id: DangerId;
  /** The short cut as somebody in a hurry calls it; empty where the choice itself is the short cut. */
  readonly label: string;
  /** What could have happened. */
  readonly couldHave: string;
  /** What is asked instead. */
  readonly instead: string;
  /** No figure is given, so none needs a source beyond this. */
  readonly source: 'common practice';
}

/** What can hurt somebody for a few minutes saved. Common practice of the trade; local law and the maker's book go first. */
export const DANGERS: Readonly<Record<DangerId, Danger>> = {
  'road-unasked': {
    id: 'road-unasked',
    label: '',
    couldHave:
      'The coach went out on the road before anybody had asked whether it may move. A wheel that is coming off, a brake that does not hold or a steering part that lets go is then found out in traffic, by whoever is in front of it.',
    instead: 'Every safety question is answered before a wheel turns.',
    source: 'common practice',
  },
  'road-ruled': {
    id: 'road-ruled',
    label: '',
    couldHave:
      'A safety rule held this coach where it stood, and it was driven. What the rule stands guard over does not wait for the end of the road test: people in the coach and beside it can be killed.',
    instead:
      'A rule in force beats every other reason. What can be looked at standing is looked at standing, or it is handed over.',
    source: 'common practice',
  },
  'no-chocks': {
    id: 'no-chocks',
    label: 'Without chocks, it is only for a minute',
    couldHave:
      'With the parking brake off and nothing under the wheels, a coach of many tonnes rolls on a slope that nobody sees. It takes whoever stands in its way against a wall, or goes over them.',
    instead: 'Wheels are chocked both ways before a brake is released.',
    source: 'common practice',
  },
  'no-stands': {
    id: 'no-stands',
    label: 'Quickly, as the coach stands on its air',
    couldHave:
      'An air spring can lose its air at once, by a burst, a valve or somebody at the switch. The body comes down to its stops, and there is no room for a person between it and the ground.',
    instead: 'The body stands on rated stands before anybody is beneath it; air and jacks hold nothing.',
    source: 'common practice',
  },
  'jack-alone': {
    id: 'jack-alone',
    label: 'On the jack alone, it holds for a moment',
    couldHave:
      'A jack sinks, tips or slides off an axle without any warning. Whoever has a hand or a leg under it is caught.',
    instead: 'The axle stands on rated stands, the other wheels are chocked, before anything is taken off.',
    source: 'common practice',
  },
  'chamber-open': {
    id: 'chamber-open',
    label: 'Open the spring side as it is',
    couldHave:
      'The spring inside a parking brake chamber is held back with more force than a person weighs many times over. Let go, it throws its cover with enough force to kill.',
    instead:
      'Nobody opens a spring chamber here. It is caged by the maker’s own way, or changed whole, by somebody trained for it.',
    source: 'common practice',
  },
};

/** Access states of the vocabulary that keep people from being crushed, each with the short cut that leaves it out. */
const LEFT_OUT: readonly (readonly [string, Check['hazards'][number], DangerId])[] = [
  ['chocked', 'rolls', 'no-chocks'],
  ['chocked-raised', 'lifts', 'jack-alone'],
  ['under-coach', 'under', 'no-stands'],
];

/**
 * Short cuts that somebody in a hurry could take here: what has to be set up first and is not yet, or what the hazards of the
 * check ask for.
 *
 * @param open  access states that are open.
 */
export function shortCuts(
  graph: AccessGraph,
  open: number,
  need: AccessNeed,
  hazards: Check['hazards'],
): readonly DangerId[] {
  const opening = idsOf(graph, need.open & ~open);
  const standing = idsOf(graph, open);
  const cuts = LEFT_OUT.flatMap(([state, hazard, danger]) =>
    opening.includes(state) || (hazards.includes(hazard) && !standing.includes(state)) ? [danger] : [],
  );
  return hazards.includes('spring') ? [...cuts, 'chamber-open'] : cuts;
}
