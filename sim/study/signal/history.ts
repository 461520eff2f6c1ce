/** A pressure of a trace over an even cycle. */
import { SAMPLES } from '../../acoustics/barReading.ts';
import { interpolateLinear } from '../../interpolation.ts';

/** Pressure [Pa] known at rising crank angles [deg], every degree from 0 on. */
export function historyOf(crankAngle: readonly number[], pressure: readonly number[]): number[] {
  const last = crankAngle.length - 1;
  const angles = [crankAngle[last]! - SAMPLES, ...crankAngle, crankAngle[0]! + SAMPLES];
  const values = [pressure[last]!, ...pressure, pressure[0]!];
  return Array.from({ length: SAMPLES }, (_, angle) => interpolateLinear(angles, values, angle));
}
