/**
 * Minimum geometric flow area of a poppet valve against lift L [m], in three stages:
 *
 *   1  L < w / (sin b cos b)       A = pi L cos b (Dv - 2 w + (L/2) sin 2b)
 *   2  until the port is narrower  A = pi Dm sqrt((L - w tan b)^2 + w^2),  Dm = Dv - w
 *   3  above                       A = (pi/4) (Dp^2 - Ds^2)
 *
 *   b   seat angle from the plane of the head [rad]   w   seat width, radial [m]
 *   Dv  head diameter [m]   Dp  port diameter [m]     Ds  stem diameter [m]
 *
 * Source: Heywood (1988), Internal Combustion Engine Fundamentals, eqs. 6.7-6.9 (from memory).
 * Geometry alone: a discharge coefficient comes on top.
 */
import { circleArea } from '../duct/profile.ts';

/** A poppet valve, lengths in metres. */
export interface PoppetGeometry {
  headDiameter: number;
  seatWidth: number;
  /** From the plane of the head [deg]. */
  seatAngle: number;
  portDiameter: number;
  stemDiameter: number;
}

/** Minimum flow area [m^2] of one valve at a lift [m]. */
export function poppetArea(poppet: PoppetGeometry, lift: number): number {
  const { headDiameter: Dv, seatWidth: w } = poppet;
  const b = (poppet.seatAngle * Math.PI) / 180;
  if (lift <= 0) return 0;
  if (lift < w / (Math.sin(b) * Math.cos(b))) {
    return Math.PI * lift * Math.cos(b) * (Dv - 2 * w + (lift / 2) * Math.sin(2 * b));
  }
  const cone = Math.PI * (Dv - w) * Math.hypot(lift - w * Math.tan(b), w);
  const port = circleArea(poppet.portDiameter) - circleArea(poppet.stemDiameter);
  return Math.min(cone, port);
}
