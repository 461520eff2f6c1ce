/**
 * The solver's main tuned peak against the linear induction cycle (transfer matrices, reflection
 * function; geometry, valves and losses of its own, no code shared), within 5 % of speed. What is left between them: the linear model has no
 * exhaust, no flow that carries the waves (Mach 0.1 to 0.2) and no steepening.
 */
import { expect, it } from 'vitest';
import { linearPeak, solverPeakNear } from '../prove/cases/tunedPeak.ts';

it.each([0.09, 0.18, 0.26])('agrees on the main peak of the hill-climb four at %f m', (length) => {
  const linear = linearPeak(length);
  const solver = solverPeakNear(length, linear);
  console.info(
    `${length * 1e3} mm: linear ${linear.toFixed(0)} rpm, solver ${solver.toFixed(0)} rpm`,
  );
  expect(Math.abs(solver / linear - 1)).toBeLessThan(0.05);
});
