/**
 * What a dyno at the flywheel would read: indicated torque less friction, and the power of that.
 *
 *   T_b = T_i - p_f V / (4 pi),   P_b = 2 pi T_b N / 60
 *
 *   T  torque [N m]   p_f  friction mean effective pressure [Pa], cylinder/friction.ts
 *   V  swept volume of the engine [m^3]   P  power [W]   N  speed [rpm]
 *
 * Indicated torque has the gas exchange in it, so friction leaves pumping out. Four-stroke. Source:
 * definition of mean effective pressure, Heywood (1988) sec. 2.7 (from memory).
 */
import { sweptVolume } from '../cylinder/crank.ts';
import { FRICTION_SPREAD, friction } from '../cylinder/friction.ts';
import type { PointResult } from '../engine/point.ts';
import type { EngineSpecification } from '../specification.ts';

export interface Brake {
  /** Torque at the flywheel [N m]; its standard uncertainty from friction alone. */
  torque: number;
  torqueDeviation: number;
  /** Torque that friction takes [N m]. */
  frictionTorque: number;
  /** Power at the flywheel [W]. */
  power: number;
  /** Brake over indicated torque [-]. */
  mechanicalEfficiency: number;
}

/** Brake torque and power of a computed point. */
export function brakeTorque(
  { speed, indicatedTorque }: Pick<PointResult, 'speed' | 'indicatedTorque'>,
  engine: EngineSpecification,
): Brake {
  const swept = engine.cylinder.count * sweptVolume(engine.cylinder);
  const frictionTorque = (friction(engine, speed).total * swept) / (4 * Math.PI);
  const torque = indicatedTorque - frictionTorque;
  return {
    torque,
    torqueDeviation: FRICTION_SPREAD * frictionTorque,
    frictionTorque,
    power: (torque * 2 * Math.PI * speed) / 60,
    mechanicalEfficiency: torque / indicatedTorque,
  };
}
