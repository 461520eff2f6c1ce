/**
 * A flare as a duct, steeper than any an engine has: a quarter ellipse of axial depth a and radial
 * overhang b that ends tangent to the bore,
 *
 *   r(x) = r_bore + b (1 - sqrt(1 - (1 - x/a)^2)),   x from the rim plane inwards [m].
 */
import type { Station } from '../sim/duct/profile.ts';

/** Stations per flare, closer together at the rim where the wall turns outwards. */
const STATIONS = 24;

/** Stations of the flare from the rim (x = 0) to the bore (x = depth). */
export function bellmouthProfile(bore: number, depth: number, overhang: number): Station[] {
  if (depth <= 0) return [];
  return Array.from({ length: STATIONS + 1 }, (_, i) => {
    const angle = ((Math.PI / 2) * i) / STATIONS;
    return {
      x: depth * (1 - Math.cos(angle)),
      diameter: bore + 2 * overhang * (1 - Math.sin(angle)),
    };
  });
}
