/**
 * Open area of a barrel: a cylinder of diameter B that turns across the bore and has a hole of the bore's own
 * diameter D through it. Turned by f from open, hole and bore leave a window at either side of it, in strips
 * along the barrel's axis z as wide as the chord 2 (B/2) sin(a - f/2), a = asin(c / (B/2)), c the half chord of
 * the bore at z. Their sum, with b = B/D, s = sin(f/2), h^2 = b^2 - 1, Z = sqrt(1 - b^2 s^2):
 *
 *   4 A/(pi D^2) = (2/pi) (cos(f/2) asin(Z) - h^2 s asinh(Z/h))
 *
 * Shut at f = 2 asin(1/b), to which the lever's travel is in proportion. A gap g leaves pi D g of what is covered.
 * Source: geometry, exact; shut at 82.5 deg b is 1.52, Weisbach's cock (from memory).
 */
import { circleArea } from '../duct/profile.ts';
import { asin, cos, sin } from '../elementary/angles.ts';
import { log } from '../elementary/powers.ts';
import { opened, type Travelling } from './travel.ts';

export interface BarrelGeometry extends Travelling {
  /** Diameter of the barrel [m], more than the bore. */
  barrelDiameter: number;
}

/** How far a barrel turns from open to shut [rad]. */
export function barrelTravel({ bore, barrelDiameter }: BarrelGeometry): number {
  return 2 * asin(bore / barrelDiameter);
}

/** Open area [m^2] of each of its two windows with its lever at `angle` [deg], 90 being wide open. */
export function barrelOpenArea(barrel: BarrelGeometry, angle: number): number {
  const half = 0.5 * barrelTravel(barrel) * (1 - opened(barrel, angle));
  const b = barrel.barrelDiameter / barrel.bore;
  const s = sin(half);
  const h = Math.sqrt(b * b - 1);
  const z = Math.sqrt(Math.max(1 - b * b * s * s, 0));
  const window = (2 / Math.PI) * (cos(half) * asin(z) - h * h * s * asinh(z / h));
  const share = Math.min(Math.max(window, 0), 1);
  return circleArea(barrel.bore) * share + Math.PI * barrel.bore * barrel.rimGap * (1 - share);
}

const asinh = (x: number) => log(x + Math.sqrt(1 + x * x));
