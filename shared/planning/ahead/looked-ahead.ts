/** What looking many steps ahead says of a situation. */
export interface LookedAhead {
  /** Expected cost until the cure is proven when this is done next and the program's rule is followed after it. */
  readonly checks: readonly { readonly check: string; readonly cost: number }[];
  /** The same when the best correction, or hand-over, comes next. */
  readonly act: number;
  /** Index into `checks` of the check to do next; −1 = act. */
  readonly best: number;
  /** Every order was worked out: these are the costs of the best plans. */
  readonly exact: boolean;
  /** No plan can cost less: expected cost if the cause were known now. */
  readonly bound: number;
}
