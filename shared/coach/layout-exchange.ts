/** What profile and visit tell each other about the build of the coach. */
import type { Layout, LayoutFeature, LayoutValue } from '../knowledge/index.ts';
import type { VisitEventBody } from '../visit/index.ts';
import type { CoachEventBody } from './events.ts';
import { LAYOUT_PREFIX } from './field.ts';
import type { CoachProfile } from './profile.ts';

/** The layout as the profile knows it: answers that the vocabulary has. */
export function layoutOf(profile: CoachProfile, features: readonly LayoutFeature[]): Layout {
  return Object.fromEntries(
    features.flatMap(({ id, values }): [string, LayoutValue][] => {
      const known = profile.values[`${LAYOUT_PREFIX}${id}`]?.value;
      const found = values.find(({ value }) => value === known);
      return found ? [[id, found.value]] : [];
    }),
  );
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
  readonly value: LayoutValue;
  /** What the profile says, when that is something else. */
  readonly was?: LayoutValue;
}

/** What a visit says of the layout and the profile does not, in the order of the vocabulary. */
export function learnedInVisit(
  profile: CoachProfile,
  visit: Layout,
  features: readonly LayoutFeature[],
): readonly Learned[] {
  const known = layoutOf(profile, features);
  return features.flatMap(({ id, values }): Learned[] => {
    const value = visit[id];
    const was = known[id];
    if (value === undefined || value === was || !values.some((each) => each.value === value)) return [];
    return [{ feature: id, value, ...(was === undefined ? {} : { was }) }];
  });
}

/** What is learned, as the profile takes it. */
export function learnedBodies(learned: readonly Learned[]): readonly CoachEventBody[] {
  return learned.map(({ feature, value }) => ({ kind: 'coach.set', field: `${LAYOUT_PREFIX}${feature}`, value }));
}
