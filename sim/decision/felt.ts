/**
 * What of a curve can be felt: no driver holds a single speed, so its mean over some speeds to either
 * side,
 *
 *   y_felt(n) = int y dn' / (n2 - n1),   n' from n1 = n - 50 to n2 = n + 50 rpm, within the curve,
 *
 * y straight between its points. How wide: common practice, no source.
 */
import { firstAbove, interpolateLinear } from '../interpolation.ts';

/** To either side [rpm]. */
export const FELT = 50;

/** The mean about a speed [rpm] of a curve at rising speeds. */
export function feltAt(speeds: readonly number[], values: readonly number[], at: number): number {
  const [from, to] = [Math.max(at - FELT, speeds[0]!), Math.min(at + FELT, speeds.at(-1)!)];
  if (!(to > from)) return interpolateLinear(speeds, values, at);
  let area = 0;
  let [x, y] = [from, interpolateLinear(speeds, values, from)];
  const on = (speed: number, value: number) => {
    area += 0.5 * (y + value) * (speed - x);
    [x, y] = [speed, value];
  };
  for (let i = firstAbove(speeds, from); speeds[i]! < to; i++) on(speeds[i]!, values[i]!);
  on(to, interpolateLinear(speeds, values, to));
  return area / (to - from);
}
