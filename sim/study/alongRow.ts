/** Cylinders in a row along one chamber. */
import type { ChamberSpecification, NumericsSpecification } from '../specification.ts';

/**
 * What they exchange along the chamber dies away slowly: the forest four in a box, 2200 to 2600 rpm, wants 23 to
 * 31 cycles where one volume takes 4. Twice the cycles of the file are allowed.
 */
const PATIENCE = 2;

export function patient(
  numerics: NumericsSpecification,
  row: ChamberSpecification['row'],
): NumericsSpecification {
  if (!row) return numerics;
  return { ...numerics, maximumCycles: PATIENCE * numerics.maximumCycles };
}
