/**
 * Effective area of a throttle body [m^2] at a plate angle. Half shut, the plate is an orifice of
 * its open area (butterfly.ts) times a discharge coefficient. Wide open, gas follows plate and shaft
 * and recovers, and the stated loss K counts, A_e = A / sqrt(1 + K). Between the two, resistances
 * 1/A_e^2 differ by a constant:
 *
 *   1/A_e^2 = 1/(Cd A_open)^2 + (1 + K)/A^2 - 1/(Cd A_open,wide)^2
 *
 * so that both ends are met and the area rises with the angle. The way between is our own, no source.
 */

import { circleArea } from '../duct/profile.ts';
import { square } from '../elementary/powers.ts';
import type { ThrottleSpecification } from '../specification.ts';
import { butterflyOpenArea } from './butterfly.ts';

const WIDE_OPEN = 90;

export function throttleArea(throttle: ThrottleSpecification, angle = throttle.angle): number {
  const resistance = (at: number) =>
    1 / square(throttle.dischargeCoefficient * butterflyOpenArea(throttle, at));
  const wide = (1 + throttle.openLoss) / square(circleArea(throttle.bore));
  return 1 / Math.sqrt(resistance(angle) + wide - resistance(WIDE_OPEN));
}
