import type { FigureKind } from './figure-kinds.ts';
import { FormReader, type BenchForm, type Shown } from './form.ts';

/** One field in the unit of the calculations, or why there is no figure. */
export function read(
  form: BenchForm,
  name: string,
  label: string,
  kind: FigureKind,
): Shown<{ readonly value: number }> {
  const reader = new FormReader(form);
  const value = reader.figure(name, label, kind);
  return reader.trouble() ?? { kind: 'shown', value };
}
