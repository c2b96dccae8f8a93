/** What profile and visit tell each other about the build of the coach. */
import {
  answerOf,
  CYLINDERS,
  cylindersOf,
  isAnswerTo,
  isSameAnswer,
  valuesOf,
  type Layout,
  type LayoutAnswer,
  type LayoutFeature,
} from '../knowledge/index.ts';
import type { VisitEventBody } from '../visit/index.ts';
import type { CoachEventBody } from './events.ts';
import { LAYOUT_PREFIX } from './field.ts';
import type { CoachProfile } from './profile.ts';

/** The figure of the profile that a visit keeps with its layout. */
const CYLINDER_FIELD = 'engine.cylinders';

/** The layout as the profile knows it: answers that the vocabulary has, and how many cylinders there are. */
export function layoutOf(profile: CoachProfile, features: readonly LayoutFeature[]): Layout {
  const cylinders = profile.values[CYLINDER_FIELD]?.value;
  const answers = Object.fromEntries(
    features.flatMap((feature): [string, LayoutAnswer][] => {
      const known = profile.values[`${LAYOUT_PREFIX}${feature.id}`]?.value;
      if (known === undefined || typeof known === 'number' || !isAnswerTo(feature, known)) return [];
      return [[feature.id, answerOf(feature, valuesOf(known)) ?? known]];
    }),
  );
  return typeof cylinders === 'number' ? { ...answers, [CYLINDERS]: String(cylinders) } : answers;
}

/** What a new visit begins with: an answer for each feature that the profile knows and the visit does not. */
export function layoutForVisit(
  profile: CoachProfile,
  features: readonly LayoutFeature[],
  already: Layout = {},
): readonly Extract<VisitEventBody, { kind: 'layout.set' }>[] {
  return Object.entries(layoutOf(profile, features)).flatMap(([feature, value]) =>
    already[feature] === undefined ? [{ kind: 'layout.set', feature, value } as const] : [],
  );
}

/** An answer of the visit that the profile lacks or contradicts. */
export interface Learned {
  readonly feature: string;
  readonly value: LayoutAnswer;
  /** What the profile says, when that is something else. */
  readonly was?: LayoutAnswer;
}

/** What a visit says of the layout and the profile does not, in the order of the vocabulary, the cylinders last. */
export function learnedInVisit(
  profile: CoachProfile,
  visit: Layout,
  features: readonly LayoutFeature[],
): readonly Learned[] {
  const known = layoutOf(profile, features);
  const learned = features.flatMap((feature): Learned[] => {
    const value = visit[feature.id];
    const was = known[feature.id];
    if (value === undefined || isSameAnswer(value, was) || !isAnswerTo(feature, value)) return [];
    return [{ feature: feature.id, value, ...(was === undefined ? {} : { was }) }];
  });
  const count = cylindersOf(visit);
  const was = known[CYLINDERS];
  if (count === null || isSameAnswer(String(count), was)) return learned;
  return [...learned, { feature: CYLINDERS, value: String(count), ...(was === undefined ? {} : { was }) }];
}

/** What was asked where something was learned. */
export function askOf(feature: string, features: readonly LayoutFeature[]): string {
  if (feature === CYLINDERS) return 'How many cylinders has the diesel?';
  return features.find(({ id }) => id === feature)?.ask ?? feature;
}

/** What is learned, as the profile takes it. */
export function learnedBodies(learned: readonly Learned[]): readonly CoachEventBody[] {
  return learned.map(({ feature, value }) =>
    feature === CYLINDERS
      ? { kind: 'coach.set', field: CYLINDER_FIELD, value: Number(value) }
      : { kind: 'coach.set', field: `${LAYOUT_PREFIX}${feature}`, value },
  );
}
