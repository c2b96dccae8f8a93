/**
 * How large a pack may be. The trees that come with the program (sixteen, with 119 drawings) are 4 MB in 145 files: a pack
 * may be about twice that. Judgement.
 */
export const PACK_LIMITS = {
  files: 400,
  /** Bytes of the zip itself. */
  zipBytes: 6 * 1024 * 1024,
  /** Bytes of all files together, unpacked. */
  unpackedBytes: 8 * 1024 * 1024,
  /** Bytes of one file. */
  fileBytes: 1024 * 1024,
  trees: 40,
} as const;
