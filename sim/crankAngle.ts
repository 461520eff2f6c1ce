/** Angles of a crank, which count from 0 to 720 degrees over a four-stroke cycle. */

/** Degrees in a four-stroke cycle. */
export const CYCLE = 720;

/** Rows of a cycle brought into the order of their crank angles [deg]. */
export function byAngle(angles: readonly number[]): <T>(rows: readonly T[]) => T[] {
  const order = angles.map((_, i) => i).sort((a, b) => angles[a]! - angles[b]!);
  return (rows) => order.map((i) => rows[i]!);
}

/** A crank angle brought into 0 <= angle < 720 [deg]. */
export function wrapAngle(angle: number): number {
  const turned = angle % CYCLE;
  return turned < 0 ? turned + CYCLE : turned;
}
