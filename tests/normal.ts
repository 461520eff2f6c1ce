/**
 * Normal numbers of a stated seed, by Box and Muller. Seeds that are neighbours must begin apart: the first number of
 * other generators is nearly the same for all of them.
 */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { mersenne } from 'pure-rand/generator/mersenne';

const STEPS = 1 << 30;

/** Draws from a normal distribution about 0 with standard deviation 1. */
export function normalNumbers(seed: number): () => number {
  const random = mersenne(seed);
  const uniform = () => (uniformInt(random, 0, STEPS - 1) + 0.5) / STEPS;
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
