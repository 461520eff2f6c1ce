/** The hill-climb four's main tuned peak by the linear induction cycle and by the solver. */

import { runPoint, withLength } from '../../../sim/index.ts';
import type { EngineSpecification } from '../../../sim/specification.ts';
import { linearIntake } from '../../acoustics/linearEstimate.ts';
import { linearTunedPeaks, tunedPeaks } from '../../acoustics/tunedSpeed.ts';
import { hillClimb } from './engine.ts';

/** With a trumpet of this length [m]; a coarse mesh moves a peak by far less than 5 %. */
function engineWith(length: number): EngineSpecification {
  const engine = hillClimb();
  engine.numerics = { ...engine.numerics, intakeCell: 0.02, exhaustCell: 0.05 };
  return withLength(engine, length);
}

/** Linear main peak [rpm] from 3400 to 9000 rpm. */
export function linearPeak(length: number): number {
  const { pipe, cylinder, gas } = linearIntake(engineWith(length));
  const speeds = Array.from({ length: 29 }, (_, i) => (3400 + i * 200) / 60);
  return linearTunedPeaks(pipe, cylinder, gas, speeds)[0]!.speed * 60;
}

/** The solver's highest peak within 12 % of a speed [rpm]; NaN where it has none. */
export function solverPeakNear(length: number, speed: number): number {
  const speeds = Array.from({ length: 9 }, (_, i) => speed * (0.88 + 0.03 * i));
  const curve = speeds.map((n) => runPoint(engineWith(length), n).volumetricEfficiency);
  return tunedPeaks(speeds, curve)[0]?.speed ?? Number.NaN;
}
