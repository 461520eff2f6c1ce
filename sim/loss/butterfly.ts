/**
 * Open area of a butterfly plate in a round bore, against plate angle:
 *
 *   4 A/(pi D^2) = 1 - cos psi / cos psi0
 *     + (2/pi) [ (a/cos psi) sqrt(cos^2 psi - a^2 cos^2 psi0) - a sqrt(1 - a^2)
 *                + (cos psi / cos psi0) asin(a cos psi0 / cos psi) - asin a ],   a = d/D
 *
 * psi the plate angle and psi0 the closed one, from the plane across the bore; d the shaft, D the
 * bore. Beyond psi = acos(a cos psi0) the shaft alone is in the way. A gap g all round the rim leaves a
 * ring besides, pi D g cos psi / cos psi0: the shadow of what the plate lacks.
 * Source: Heywood (1988), eq. 7.18, after Harrington and Bolt (1970), SAE 700082 (from memory).
 */

import { circleArea } from '../duct/profile.ts';
import { asin, cos } from '../elementary/angles.ts';

export interface ButterflyGeometry {
  /** Bore at the plate [m]. */
  bore: number;
  /** Shaft diameter [m]. */
  shaftDiameter: number;
  /** Plate angle at which the plate seals [deg]. */
  closedAngle: number;
  /** Gap all round the rim of the shut plate [m]. */
  rimGap: number;
}

const RADIANS = Math.PI / 180;

/** Open area [m^2] at plate angle `angle` [deg], 90 being wide open. */
export function butterflyOpenArea(g: ButterflyGeometry, angle: number): number {
  const a = g.shaftDiameter / g.bore;
  const shut = cos(g.closedAngle * RADIANS);
  const open = cos(Math.max(angle, g.closedAngle) * RADIANS);
  const bore = circleArea(g.bore);
  const shaftOnly = bore * (1 - (2 / Math.PI) * (a * Math.sqrt(1 - a * a) + asin(a)));
  if (open <= a * shut) return shaftOnly;
  const ratio = open / shut;
  const share =
    1 -
    ratio +
    (2 / Math.PI) *
      ((a / open) * Math.sqrt(open * open - a * a * shut * shut) -
        a * Math.sqrt(1 - a * a) +
        ratio * asin(a / ratio) -
        asin(a));
  const ring = Math.PI * g.bore * g.rimGap * ratio;
  return Math.min(bore * Math.max(share, 0) + ring, shaftOnly);
}
