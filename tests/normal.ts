/** Normal numbers of a stated seed, by Box and Muller. */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

const STEPS = 1 << 30;

/** Draws from a normal distribution about 0 with standard deviation 1. */
export function normalNumbers(seed: number): () => number {
  const random = xoroshiro128plus(seed);
  const uniform = () => (uniformInt(random, 0, STEPS - 1) + 0.5) / STEPS;
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
