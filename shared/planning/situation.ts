/** Everything that decides what to advise: input of `assess`. No clock, no file. */
import type { Finding } from '../inference/finding.ts';
import type { Layout } from '../knowledge/layout.ts';
import type { Role, Tree, Verdict } from '../knowledge/tree.ts';
import type { Vocabulary } from '../knowledge/vocabulary.ts';

export type StopAnswer = 'yes' | 'no' | 'not-sure';

/** A correction that was done, and what its proof showed. */
export interface CorrectionDone {
  readonly cause: string;
  /** Was the removed or corrected part seen to be bad? */
  readonly partSeen: 'bad' | 'good' | 'unknown';
  readonly proof: 'pending' | 'gone' | 'still-there';
  /** Findings made before this correction; ids. They are asked again before they count once it did not end the complaint. */
  readonly findingsBefore: readonly string[];
}

/** What things cost the person who decides, in minutes or their money's worth. All judgement, all changeable. */
export interface Costs {
  /** Flat cost of giving the job to someone else (call-out, second diagnosis, waiting). */
  readonly handOver: number;
  /** Added to a correction that did not end it: trust, a part that may not go back. */
  readonly wrongPart: number;
  /** A complaint that comes back on the road after a proof that seemed fine. */
  readonly comeBack: number;
  /** Owner: being towed when it was not needed. */
  readonly tow: number;
  /** Owner: creeping to a safe place and calling from there when it was not needed. */
  readonly creep: number;
  /** Owner: what driving on with a danger cause is set to cost. */
  readonly missDanger: number;
  /** Owner: what driving on with a damage cause is set to cost. */
  readonly missDamage: number;
}

/** What holds the coach whatever the complaint says: a sheet of the visit, such as the air test. */
export interface Hold {
  readonly verdict: Verdict;
  /** One sentence: what was found. */
  readonly because: string;
  /** What to do now, in the user's words. */
  readonly doNow: string;
}

export interface Situation {
  readonly tree: Tree;
  readonly vocabulary: Vocabulary;
  readonly who: Role;
  /** Tool kinds at hand (ids of the vocabulary); undefined = whatever the role usually has. */
  readonly tools?: readonly string[];
  readonly layout: Layout;
  /** Features of the layout that nobody here knows: not worth asking. */
  readonly layoutNotKnown?: readonly string[];
  /** Findings that stand, oldest first; at most one a check and site (the latest). */
  readonly findings: readonly Finding[];
  readonly stopAnswers: Readonly<Record<string, StopAnswer>>;
  readonly corrections: readonly CorrectionDone[];
  /** Open access states, ids; empty = parked and closed. */
  readonly access: readonly string[];
  readonly costs: Costs;
  /** The verdict is at least as strict as this. */
  readonly hold?: Hold;
}
