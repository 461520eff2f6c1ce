/** Where the pressure behind the plates still tells load, and what it is worth as a barometer. */
import { interpolateLinear } from '../../interpolation.ts';

/** One plate angle at one speed. */
export interface LoadPoint {
  angle: number;
  /** Mean pressure behind the plate [Pa], and volumetric efficiency [-]. */
  mean: number;
  efficiency: number;
}

export interface LoadSense {
  speed: number;
  /** Angle from which on the mean lies within the resolution of its value at the widest [deg]. */
  blindFrom?: number;
  /** Air that is still missing there, over that at the widest [-]. */
  missing?: number;
  /** Mean at the widest angle less ambient [Pa]. */
  atWidest: number;
  /** Rise of the mean with the angle at the narrowest [Pa/deg]. */
  slope: number;
}

/** @param points by rising angle, at least two */
export function loadSense(
  speed: number,
  points: readonly LoadPoint[],
  resolution: number,
  ambient: number,
): LoadSense {
  const [first, second] = points as [LoadPoint, LoadPoint];
  const widest = points.at(-1)!;
  const blindFrom = crossing(points, widest.mean - resolution);
  const angles = points.map(({ angle }) => angle);
  const efficiencies = points.map(({ efficiency }) => efficiency);
  return {
    speed,
    ...(blindFrom !== undefined && {
      blindFrom,
      missing: 1 - interpolateLinear(angles, efficiencies, blindFrom) / widest.efficiency,
    }),
    atWidest: widest.mean - ambient,
    slope: (second.mean - first.mean) / (second.angle - first.angle),
  };
}

/** Angle beyond which the mean stays above a level, straight between points; undefined: everywhere. */
function crossing(points: readonly LoadPoint[], level: number): number | undefined {
  const last = points.findLastIndex(({ mean }) => mean < level);
  if (last < 0) return undefined;
  const [below, above] = [points[last]!, points[last + 1]];
  if (!above) return undefined;
  const share = (level - below.mean) / (above.mean - below.mean);
  return below.angle + share * (above.angle - below.angle);
}
