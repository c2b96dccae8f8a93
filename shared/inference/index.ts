export { conflictIn, type Conflict } from './conflict.ts';
export { evidenceOf, LEANING, resultWeights, type Evidence } from './evidence.ts';
export type { Finding, FindingValue } from './finding.ts';
export { decibansOf, evidenceLedger, indexOfMax, type Ledger, type LedgerLine } from './ledger.ts';
export { outlook, type Outlook } from './lookahead.ts';
export {
  beliefModel,
  DAMPING,
  entropyOf,
  FLOOR,
  mutualInformation,
  type BeliefModel,
  type CheckTable,
} from './model.ts';
export { normalCdf } from '../measuring/normal.ts';
export { pairBelief, type FaultPair, type PairBelief } from './pairs.ts';
export { posterior, softmax, type Posterior } from './posterior.ts';
export { readBands, ReadingError, type BandReading } from './reading.ts';
export { inHundred, meansForShare, shareInWords, wordsForDecibans, wordsForShare } from './words.ts';
export {
  factorWords,
  firmnessOf,
  NO_NUMBER,
  WEIGHT_RANGE,
  type Deviation,
  type Firmness,
  type JudgedNumber,
} from './firmness.ts';
export {
  learnedOdds,
  OPINION,
  verifiedCause,
  withOdds,
  type ClosedCase,
  type LearnedOdds,
  type LearningOptions,
} from './learning.ts';
export { combined, crossingOf, linesThrough, shareAt, type Line } from './one-way.ts';
export { sideBySide, type SideBySide, type SideBySideLine } from './weight-of-evidence.ts';
export { standingOut, type StandingOut } from './standing-out.ts';
