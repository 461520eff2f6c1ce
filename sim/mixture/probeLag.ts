/**
 * What a probe of first order passes on of a swing that comes round once a cycle:
 *
 *   1 / sqrt(1 + (2 pi f tau)^2),   f = n / 120   four-stroke
 *
 * Source: first-order lag (closed form). tau 0.05 s is the middle of what is said of such probes: common
 * practice, no source.
 */
import { square } from '../elementary/powers.ts';

/** Time constant of a probe in the exhaust [s]; common practice, no source. */
const PROBE_TIME = 0.05;

/** Share of one cylinder's swing that is left in the signal [-] at engine speed [rpm]. */
export function swingLeft(speed: number, time = PROBE_TIME): number {
  return 1 / Math.sqrt(1 + square((2 * Math.PI * speed * time) / 120));
}
