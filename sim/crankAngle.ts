/** Angles of a crank, which count from 0 to 720 degrees over a four-stroke cycle. */

/** Degrees in a four-stroke cycle. */
export const CYCLE = 720;

/** A crank angle brought into 0 <= angle < 720 [deg]. */
export function wrapAngle(angle: number): number {
  const turned = angle % CYCLE;
  return turned < 0 ? turned + CYCLE : turned;
}
