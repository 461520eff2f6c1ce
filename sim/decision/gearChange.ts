/**
 * The bands of speed that a gearbox leaves: after a change at the rev limit from gear i to i + 1
 *
 *   n_after = n_limit r_(i+1) / r_i        r  overall or gearbox ratio of the gear [-]
 *
 * and the gear is then used from there up to the limit. Exact while the road speed holds through the
 * change. One band a change, all of weight 1: each gear counts alike.
 */
import type { WeightedBand } from './target.ts';

/**
 * @param limit speed at which gears are changed up [rpm]
 * @param ratios of the gears used, first to last, falling; at least two
 * @throws RangeError where the ratios do not fall
 */
export function gearChangeBands(limit: number, ratios: readonly number[]): WeightedBand[] {
  if (ratios.length < 2) throw new RangeError('a gear change needs at least two ratios');
  return ratios.slice(1).map((ratio, i) => {
    const share = ratio / ratios[i]!;
    if (!(share > 0 && share < 1)) {
      throw new RangeError(`ratios must fall from gear to gear (got ${ratios[i]}, then ${ratio})`);
    }
    return { from: (limit * ratio) / ratios[i]!, to: limit, weight: 1 };
  });
}
