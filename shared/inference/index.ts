export { evidenceOf, LEANING, resultWeights, type Evidence } from './evidence.ts';
export type { Finding, FindingValue } from './finding.ts';
export { decibansOf, evidenceLedger, indexOfMax, type Ledger, type LedgerLine } from './ledger.ts';
export { outlook, type Outlook } from './lookahead.ts';
export { beliefModel, DAMPING, FLOOR, mutualInformation, type BeliefModel, type CheckTable } from './model.ts';
export { normalCdf } from '../measuring/normal.ts';
export { posterior, softmax, type Posterior } from './posterior.ts';
export { readBands, ReadingError, type BandReading } from './reading.ts';
export { inHundred, wordsForDecibans, wordsForShare } from './words.ts';
