/**
 * Torque against mixture and spark, and what a spread of mixture between cylinders costs:
 *
 *   T = -181.3 + 379.36 m + 21.91 F - 0.85 F^2 + 0.26 s - 0.0028 s^2 + 0.027 w - 0.000107 w^2
 *       + 0.00048 w s + 2.55 s m - 0.05 s^2 m                                              [N m]
 *
 *   m  air charge of a cylinder [g]   F  air over fuel by mass [-]   s  spark advance [deg]   w  speed [rad/s]
 *
 * A spread of standard deviation d about any mean lowers the mean of a parabola by half its curvature:
 * 0.85 d^2. Source: Crossley & Cook, IEE Conf. Control 91, publ. 332, vol. 2, 921 (coefficients as a
 * general-purpose library of models prints them). One engine, brake torque; holds where all cylinders
 * still burn, about lambda 0.7 to 1.2: common practice, no source.
 */
import { square } from '../elementary/powers.ts';

/** Air over fuel of petrol that is stoichiometric in that surface's terms [-]. */
const STOICHIOMETRIC = 14.6;
const CURVATURE = 0.85;
const GRAMS = 1e3;

/**
 * Torque of the published engine at best spark [N m].
 *
 * @param charge air of one cylinder and cycle [kg]
 * @param speed engine speed [rpm]
 * @param lambda mixture [-]
 */
export function mixtureTorque(charge: number, speed: number, lambda: number): number {
  const m = GRAMS * charge;
  const w = (Math.PI * speed) / 30;
  const F = STOICHIOMETRIC * lambda;
  const s = bestSpark(charge, speed);
  return (
    -181.3 +
    379.36 * m +
    (21.91 - CURVATURE * F) * F +
    (0.26 - 0.0028 * s) * s +
    (0.027 - 0.000107 * w) * w +
    (0.00048 * w + 2.55 * m - 0.05 * s * m) * s
  );
}

/** Advance of most torque [deg], at a charge [kg] and speed [rpm]. */
export function bestSpark(charge: number, speed: number): number {
  const m = GRAMS * charge;
  const w = (Math.PI * speed) / 30;
  return (0.26 + 0.00048 * w + 2.55 * m) / (2 * (0.0028 + 0.05 * m));
}

/** Torque that a spread of lambda with this standard deviation costs the published engine [N m]. */
export function spreadLoss(deviation: number): number {
  return CURVATURE * square(STOICHIOMETRIC * deviation);
}

/** Torque that spark so many degrees after the best costs the published engine [N m]: a parabola, exactly. */
export function retardLoss(charge: number, late: number): number {
  return (0.05 * GRAMS * charge + 0.0028) * square(late);
}
