/**
 * Which injector gives how much: the outer one's share against speed and load.
 *
 *   share(n, L) = table(n) * ramp((L - from) / blend),   ramp held to 0..1
 *
 *   n  speed [rpm]   L  load: air trapped over ambient density times swept volume [-]
 */

import type { StagingSpecification } from '../injectors.ts';
import { interpolateLinear } from '../interpolation.ts';

/** Share of the fuel that the outermost injector gives [0..1]. */
export function outerShare(staging: StagingSpecification, speed: number, load: number): number {
  const bySpeed = interpolateLinear(staging.speed, staging.share, speed);
  const { fromLoad, loadBlend } = staging;
  const ramp = loadBlend > 0 ? (load - fromLoad) / loadBlend : load >= fromLoad ? 1 : 0;
  return bySpeed * Math.min(Math.max(ramp, 0), 1);
}
