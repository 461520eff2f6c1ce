/** Pressure at the one station of a trace over an even cycle. */
import { SAMPLES } from '../../acoustics/barReading.ts';
import type { Trace } from '../../engine/trace.ts';
import { interpolateLinear } from '../../interpolation.ts';

/** Pressure at the one station of a trace, every degree from 0 on [Pa]. */
export function historyOf({ crankAngle, stations }: Trace): number[] {
  const { pressure } = stations[0]!;
  const last = crankAngle.length - 1;
  const angles = [crankAngle[last]! - SAMPLES, ...crankAngle, crankAngle[0]! + SAMPLES];
  const values = [pressure[last]!, ...pressure, pressure[0]!];
  return Array.from({ length: SAMPLES }, (_, angle) => interpolateLinear(angles, values, angle));
}
