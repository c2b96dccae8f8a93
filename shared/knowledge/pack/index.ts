export { PACK_LIMITS } from './pack-limits.ts';
export { packError, type PackProblem } from './pack-problem.ts';
export { unsafePath } from './pack-paths.ts';
export {
  fileTooLarge,
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
