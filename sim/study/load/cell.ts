/** Cells of a table of load, and the air of one. */
import { sweptVolume } from '../../cylinder/crank.ts';
import type { Step } from '../../decision/loadGrid.ts';
import { moistAirDensity } from '../../gas/atmosphere.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';

export interface Grid {
  /** Plate angles [deg] and speeds [rpm], rising. */
  angles: number[];
  speeds: number[];
  /** [angle][speed] */
  outcomes: PointOutcome[][];
  /** Steps of angle and of speed with what straight lines are estimated to err [-]. */
  angleSteps: Step[];
  speedSteps: Step[];
}

export function withAngle(engine: EngineSpecification, angle: number): EngineSpecification {
  const throttle = { ...engine.intake.throttle, angle };
  return { ...engine, intake: { ...engine.intake, throttle } };
}

/** Filling, to which the air of a cycle is in proportion; NaN where the point failed. */
export const airOf = (outcome: PointOutcome) =>
  isFailure(outcome) ? Number.NaN : outcome.volumetricEfficiency;

/** Air of one cylinder and cycle [kg]; undefined where the point failed. */
export function airMass(engine: EngineSpecification, outcome: PointOutcome): number | undefined {
  if (isFailure(outcome)) return undefined;
  return outcome.volumetricEfficiency * fullAir(engine);
}

/** Air that fills the swept volume at the density outside [kg]. */
export function fullAir({ ambient, cylinder }: EngineSpecification): number {
  const { pressure, temperature, relativeHumidity } = ambient;
  return moistAirDensity(pressure, temperature, relativeHumidity) * sweptVolume(cylinder);
}
