/** A function of crank angle, tabulated once and read by straight lines between entries. */
import { CYCLE } from '../cylinder/valveLift.ts';

/** Entries per degree; a valve's area between them is straight to within 1e-6 of its greatest. */
const PER_DEGREE = 8;

/** `f` of crank angle [deg] over 0 to 720, read at any 0 <= angle < 720. */
export function angleTable(f: (crankAngle: number) => number): (crankAngle: number) => number {
  const table = Float64Array.from({ length: CYCLE * PER_DEGREE + 2 }, (_, i) =>
    f((i / PER_DEGREE) % CYCLE),
  );
  return (angle) => {
    const at = angle * PER_DEGREE;
    const i = at | 0;
    return table[i]! + (at - i) * (table[i + 1]! - table[i]!);
  };
}
