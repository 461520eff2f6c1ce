/**
 * The solver's main tuned peak against the linear induction cycle (transfer matrices, reflection
 * function; no code shared), within 5 % of speed. What is left between them: the linear model has no
 * exhaust, no flow that carries the waves (Mach 0.1 to 0.2) and no steepening.
 */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { linearTunedPeaks, tunedPeaks } from '../../sim/acoustics/tunedSpeed.ts';
import { linearIntake } from '../../sim/engine/linearEstimate.ts';
import { readScenario, runPoint, withLength } from '../../sim/index.ts';

const file = 'scenarios/hill-climb.yaml';
const { engine } = readScenario(readFileSync(file, 'utf8'), file);
// A coarse mesh moves a peak by far less than 5 %.
engine.numerics = { ...engine.numerics, intakeCell: 0.02, exhaustCell: 0.05 };

/** Linear main peak [rpm] from 3400 to 9000 rpm. */
function linearPeak(spec: typeof engine): number {
  const { pipe, cylinder, gas } = linearIntake(spec);
  const speeds = Array.from({ length: 29 }, (_, i) => (3400 + i * 200) / 60);
  return linearTunedPeaks(pipe, cylinder, gas, speeds)[0]!.speed * 60;
}

/** The solver's highest peak within 12 % of a speed [rpm]; undefined where it has none. */
function solverPeakNear(spec: typeof engine, speed: number): number | undefined {
  const speeds = Array.from({ length: 9 }, (_, i) => speed * (0.88 + 0.03 * i));
  const curve = speeds.map((n) => runPoint(spec, n).volumetricEfficiency);
  return tunedPeaks(speeds, curve)[0]?.speed;
}

it.each([0.09, 0.18, 0.26])('agrees on the main peak of the hill-climb four at %f m', (length) => {
  const spec = withLength(engine, length);
  const linear = linearPeak(spec);
  const solver = solverPeakNear(spec, linear);
  console.info(
    `${length * 1e3} mm: linear ${linear.toFixed(0)} rpm, solver ${solver?.toFixed(0)} rpm`,
  );
  expect(solver).toBeDefined();
  expect(Math.abs(solver! / linear - 1)).toBeLessThan(0.05);
});
