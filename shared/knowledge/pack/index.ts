export { PACK_LIMITS } from './pack-limits.ts';
export { packError, type PackProblem } from './pack-problem.ts';
export { VOCABULARY_NAMES, unsafePathWhy } from './pack-paths.ts';
export { unsafeDrawing } from './unsafe-drawing.ts';
export {
  packTooLarge,
  packHeadText,
  readPack,
  readPackHead,
  type BuiltIn,
  type Pack,
  type PackFile,
  type PackHead,
  type PackRead,
} from './read-pack.ts';
