/**
 * A wall in front of a mouth: bonnet, airbox wall, or a filter taken as one.
 *
 *   K = K_free + dK(c / D)          loss on the way in, dynamic heads of the bore [-]
 *   l / a = (l / a)_free + dl(a / c)  end correction in radii of the rim [-]
 *
 *   c  clearance from rim plane to wall [m]   D  bore [m]   a  radius of the rim [m]
 *
 * Source of dK: the tables of round intake hoods, straight end and bell, as printed in duct-design handbooks
 * (after Idelchik, Handbook of Hydraulic Resistance; the number of the diagram is from memory, 3-18),
 * less their value far from the hood. A hood is a disc little wider than the pipe, so a wall without
 * end costs at least as much. Steady flow; c/D from 0.1 up.
 *
 * dl: no published table was found. Low-frequency potential flow from an unbounded wall past the rim
 * of a thin unflanged pipe, solved by tests/exact/facingWall.test.ts, which also gives the
 * free end's 0.6127; as a/c -> 0 it tends to a/(8c), the image of the mouth in the wall.
 */
import { interpolateLinear } from '../interpolation.ts';

/** Added loss [dynamic heads of the bore] against clearance over bore [-]. */
export const WALL_LOSS_TABLE = {
  clearanceOverBore: [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1, 4],
  straight: [1.63, 0.83, 0.53, 0.39, 0.31, 0.19, 0.08, 0.06, 0],
  bell: [1.07, 0.52, 0.35, 0.23, 0.16, 0.05, 0.03, 0, 0],
} as const;

/** Added end correction [radii of the rim] against rim radius over clearance [-]. */
export const WALL_CORRECTION_TABLE = {
  radiusOverClearance: [0, 0.25, 0.5, 1, 1 / 0.6, 2.5, 5, 10],
  correction: [0, 0.035, 0.077, 0.168, 0.286, 0.417, 0.709, 1.066],
} as const;

/** Least clearance over bore that the tables reach [-]. */
export const LEAST_CLEARANCE = 0.1;

/** Loss that the wall adds on the way in [dynamic heads of the bore]. */
export function wallLoss(clearance: number, bore: number, flared: boolean): number {
  const { clearanceOverBore, straight, bell } = WALL_LOSS_TABLE;
  return interpolateLinear(clearanceOverBore, flared ? bell : straight, clearance / bore);
}

/** End correction that the wall adds [radii of the rim]. */
export function wallCorrection(clearance: number, rimRadius: number): number {
  const { radiusOverClearance, correction } = WALL_CORRECTION_TABLE;
  return interpolateLinear(radiusOverClearance, correction, rimRadius / clearance);
}
