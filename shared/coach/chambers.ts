import type { StrokeClass } from '../measuring/index.ts';

/** Kinds and sizes of brake chambers that can be chosen; what the table of stroke limits lacks is refused there. */
export const CHAMBERS: readonly (readonly [string, string])[] = [
  ...[6, 9, 12, 16, 20, 24, 30, 36].map((size) => [`clamp ${size}`, `Type ${size}, clamp ring`] as const),
  ...(['A', 'B', 'C', 'D', 'E', 'F', 'G'] as const).map(
    (size) => [`bolt ${size}`, `Size ${size}, bolted flange`] as const,
  ),
  ...[9, 12, 16, 20, 24, 30, 36, 50].map((size) => [`rotochamber ${size}`, `Type ${size}, rolling diaphragm`] as const),
  ['double-diaphragm', 'Type 30, double diaphragm, roller lock'],
];

export const STROKE_CLASSES: readonly (readonly [StrokeClass, string])[] = [
  ['unknown', 'Not known: the shorter'],
  ['standard', 'Standard stroke'],
  ['long', 'Long stroke'],
  ['long-3-in', 'Three-inch stroke'],
];
