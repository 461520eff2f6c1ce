/**
 * Effective area of a throttle body [m^2] at a plate angle: the discharge coefficient times the
 * open area of the plate (butterfly.ts), but no more than the loss at full opening allows,
 * A / sqrt(1 + K).
 */
import { circleArea } from '../duct/profile.ts';
import type { ThrottleSpecification } from '../specification.ts';
import { butterflyOpenArea } from './butterfly.ts';
import { dischargeFromLoss } from './entryLoss.ts';

export function throttleArea(throttle: ThrottleSpecification, angle = throttle.angle): number {
  const most = circleArea(throttle.bore) * dischargeFromLoss(throttle.openLoss);
  return Math.min(most, throttle.dischargeCoefficient * butterflyOpenArea(throttle, angle));
}
