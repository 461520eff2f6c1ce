/**
 * A designed sample: each input's range is cut into as many equal strata as there are samples, and
 * every stratum is used once, at a random place, in random order.
 *
 * Source: McKay, Beckman & Conover, Technometrics 21 (1979) 239.
 */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Steps into which a place within a stratum is resolved. */
const STEPS = 1 << 30;

/**
 * @param inputs number of inputs
 * @param samples number of samples
 * @param seed whole number; equal seeds give equal samples
 * @returns [sample][input], each from 0 to 1, ends excluded
 */
export function latinHypercube(inputs: number, samples: number, seed: number): number[][] {
  const random = xoroshiro128plus(seed);
  const columns = Array.from({ length: inputs }, () => {
    const strata = Array.from({ length: samples }, (_, i) => i);
    for (let i = samples - 1; i > 0; i--) {
      const j = uniformInt(random, 0, i);
      [strata[i], strata[j]] = [strata[j]!, strata[i]!];
    }
    return strata.map(
      (stratum) => (stratum + (uniformInt(random, 0, STEPS - 1) + 0.5) / STEPS) / samples,
    );
  });
  return Array.from({ length: samples }, (_, i) => columns.map((column) => column[i]!));
}
