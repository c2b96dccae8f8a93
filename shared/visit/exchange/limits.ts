/**
 * How large an exchange may be. Judgement: a visit with two hundred photos at the largest size that is kept (12 MB each, but
 * usually a third of it) has to go through, and everything of a workshop as a backup.
 */
export interface ExchangeLimits {
  readonly zipBytes: number;
  readonly unpackedBytes: number;
  readonly fileBytes: number;
  readonly files: number;
}

const MB = 1024 * 1024;

export const VISIT_LIMITS: ExchangeLimits = {
  zipBytes: 600 * MB,
  unpackedBytes: 640 * MB,
  fileBytes: 12 * MB,
  files: 4000,
};

/** A plain zip holds at most 65,535 entries and 4 GB; half of that leaves room for what is written around them. */
export const BACKUP_LIMITS: ExchangeLimits = {
  zipBytes: 2000 * MB,
  unpackedBytes: 2000 * MB,
  fileBytes: 12 * MB,
  files: 60_000,
};

/** Bytes of one entry of a log: a text of the log may have 10,000 letters, four bytes each at most. */
export const LINE_BYTES = 128 * 1024;
/** How deep an entry may be nested. */
export const DEEPEST = 20;
/** Letters of a text file of a tree, a pack or a draft. */
export const TEXT_BYTES = MB;
/** Width times height of a photo: a 12 MB file can claim far more than any screen or memory holds. */
export const MOST_PIXELS = 120_000_000;
/** Width or height of a photo. */
export const LONGEST_SIDE = 20_000;
