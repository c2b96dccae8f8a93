import type { CauseHazard } from '../../knowledge/tree.ts';
import type { AccessState } from '../../knowledge/vocabulary.ts';
import type { Urgency } from './events.ts';
import type { LineOrigin, LineProof, Meanwhile, Reason, Span } from './plan.ts';

/** A line as its source knows it, before access, cost and what people said of it are joined. */
export interface DraftLine {
  readonly id: string;
  readonly from: LineOrigin;
  readonly title: string;
  readonly plain: string;
  readonly asked: string;
  readonly place: string | null;
  readonly why: readonly Reason[];
  readonly hazard: CauseHazard;
  readonly danger: boolean;
  readonly ifLeft: string;
  readonly urgency: Urgency;
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
