/** Which flows a meter has to span over the table, the idle where the file says its air. */
import type { MeterStudy } from './compute.ts';

export interface FlowRange {
  /** Least and most mean flow, and the greatest peak [kg/s]. */
  least: number;
  most: number;
  peak: number;
  /** Most over least mean flow [-]. */
  turnDown: number;
  /** Whether the least is the idle's. */
  idle: boolean;
}

/** Undefined where every point failed. */
export function rangeOfFlow({ points, idleAir }: MeterStudy): FlowRange | undefined {
  const seen = points.flatMap((one) => (one.seen ? [one.seen.pulsation] : []));
  if (seen.length === 0) return undefined;
  const lowest = Math.min(...seen.map(({ mean }) => mean));
  const idle = idleAir !== undefined && idleAir < lowest;
  const least = idle ? idleAir : lowest;
  const most = Math.max(...seen.map(({ mean }) => mean));
  const peak = Math.max(...seen.map((one) => one.most));
  return { least, most, peak, turnDown: most / least, idle };
}
