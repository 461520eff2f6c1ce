/**
 * What slides and barrels have in common: a lever that is shut at one angle and wide open at 90 deg, which
 * opens them in proportion to its angle: common practice, no source.
 */

export interface Travelling {
  /** Bore [m]. */
  bore: number;
  /** Angle of the lever at which it is shut [deg]. */
  closedAngle: number;
  /** Gap all round [m]. */
  rimGap: number;
}

/** Share of the whole travel that is opened [0..1], in proportion to the lever's angle [deg]. */
export function opened({ closedAngle }: Travelling, angle: number): number {
  return Math.min(Math.max((angle - closedAngle) / (90 - closedAngle), 0), 1);
}
