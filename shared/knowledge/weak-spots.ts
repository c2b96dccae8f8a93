import { separates } from './separates.ts';
import { ROLES, type Cause, type Check, type Role, type Tree } from './tree.ts';

/** A place where a tree hangs by a thread. It is no fault: its author decides whether to live with it. */
export type WeakSpot =
  /** Nobody but who may do this one check tells the two apart. */
  | { readonly kind: 'one-check-apart'; readonly causes: readonly [Cause, Cause]; readonly check: Check }
  /** People can be hurt by this cause, and nothing that an owner without tools may do tells it from these. */
  | { readonly kind: 'danger-hidden-from-owner'; readonly cause: Cause; readonly from: readonly Cause[] }
  /** No check ends the argument for this cause, and its author does not call it one of exclusion. */
  | { readonly kind: 'nothing-settles'; readonly cause: Cause };

/** Weak spots of a tree: dangers first, then pairs by how far the one check is from an owner, then what nothing settles. */
export function weakSpots(tree: Tree): readonly WeakSpot[] {
  const { causes, checks } = tree;
  const hidden = causes.flatMap((cause, i): WeakSpot[] => {
    if (cause.hazard !== 'danger') return [];
    const mine = checks.filter(({ who }) => who === 'owner-no-tools');
    const from = causes.filter(
      (other, j) => other.hazard !== 'danger' && !mine.some((check) => separates(check, i, j)),
    );
    return from.length > 0 ? [{ kind: 'danger-hidden-from-owner', cause, from }] : [];
  });
  const pairs: { readonly spot: WeakSpot; readonly who: Role }[] = [];
  causes.forEach((a, i) => {
    for (let j = i + 1; j < causes.length; j++) {
      const apart = checks.filter((check) => separates(check, i, j));
      if (apart.length === 1)
        pairs.push({
          spot: { kind: 'one-check-apart', causes: [a, causes[j]!], check: apart[0]! },
          who: apart[0]!.who,
        });
    }
  });
  pairs.sort((a, b) => ROLES.indexOf(b.who) - ROLES.indexOf(a.who));
  const unsettled = causes.flatMap((cause): WeakSpot[] =>
    cause.byExclusion || checks.some(({ settles }) => settles.includes(cause.id))
      ? []
      : [{ kind: 'nothing-settles', cause }],
  );
  return [...hidden, ...pairs.map(({ spot }) => spot), ...unsettled];
}
