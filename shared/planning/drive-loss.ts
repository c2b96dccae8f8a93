import type { BeliefModel } from '../inference/index.ts';
import type { Tree, Verdict } from '../knowledge/tree.ts';
import type { Costs } from './situation.ts';
import { strictestGuard } from './verdict.ts';

/** Share of the loss of driving on that is left when creeping, for a cause that must not move, and for the others. Judgement. */
const CREEP_MUST_NOT_MOVE = 0.1;
const CREEP_MAY_CREEP = 0.005;

/** Expected-loss table of the three drive decisions, one number a cause of the model. */
export function driveLosses(tree: Tree, model: BeliefModel, costs: Costs): Readonly<Record<Verdict, Float64Array>> {
  const causes = model.causeIds.map((id) => tree.causes.find((cause) => cause.id === id));
  const per = (loss: (hazard: string, id: string) => number): Float64Array =>
    Float64Array.from(causes, (cause, c) => loss(cause?.hazard ?? 'none', model.causeIds[c]!));
  return {
    'stay-put': per(() => costs.tow),
    'creep-to-safe-place': per(
      (hazard, id) =>
        costs.creep +
        (hazard === 'danger'
          ? costs.missDanger * (strictestGuard(tree, id) === 'stay-put' ? CREEP_MUST_NOT_MOVE : CREEP_MAY_CREEP)
          : 0),
    ),
    'drive-and-book': per((hazard) =>
      hazard === 'danger' ? costs.missDanger : hazard === 'damage' ? costs.missDamage : 0,
    ),
  };
}
