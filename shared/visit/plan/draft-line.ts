import type { AccessState } from '../../knowledge/vocabulary.ts';
import type { LineProof, Meanwhile, PlanLine, Span } from './plan.ts';

/** A line as its source knows it, before access, cost and what people said of it are joined. */
export interface DraftLine extends Pick<
  PlanLine,
  'id' | 'from' | 'title' | 'plain' | 'asked' | 'place' | 'why' | 'hazard' | 'danger' | 'ifLeft' | 'urgency'
> {
  readonly parts: readonly string[];
  readonly minutes: Span;
  /** The minutes above include opening and closing, as the hours of a tree do. */
  readonly accessIncluded: boolean;
  /** State in which it is done; absent when nobody says. */
  readonly access?: string;
  /** States that the access is one of. */
  readonly states: readonly AccessState[];
  readonly alsoWhileOpen: readonly string[];
  /** What the trade says about rebuilding; empty when nothing. */
  readonly rebuildWords: string;
  readonly meanwhile: Meanwhile;
  readonly proof: LineProof;
  /** Complaint whose tree it comes from; its id. */
  readonly tree?: string;
}
