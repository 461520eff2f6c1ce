/** Lengths in the builder's own unit: how round a figure may be, and what it is called. */

/** Unit that the file gives the trumpet in. */
export type LengthUnit = 'mm' | 'in';

/** One of it [m]. */
export const METRES: Record<LengthUnit, number> = { mm: 1e-3, in: 25.4e-3 };

/** Round steps that a rule shows, in the unit; tenths and twentieths of an inch. */
const STEPS: Record<LengthUnit, readonly number[]> = {
  mm: [1, 2, 5, 10],
  in: [0.05, 0.1, 0.2, 0.5],
};

/** Steps that a flat top is wide at least; the best is then met within a tenth of it. */
const STEPS_A_TOP = 5;

/** The roundest step [m] for a best that is flat over some width [m]. */
export function justifiedStep(width: number, unit: LengthUnit): number {
  const [finest, ...rounder] = STEPS[unit].map((step) => step * METRES[unit]);
  return rounder.reduce((best, step) => (step * STEPS_A_TOP <= width ? step : best), finest!);
}
