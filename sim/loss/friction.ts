/**
 * Fanning friction factor of steady, fully developed pipe flow:
 *
 *   1 / sqrt(f) = -3.6 log10((eps / 3.7 D)^1.11 + 6.9 / Re)   turbulent, Haaland (1983)
 *   f = 16 / Re                                              laminar; the larger of the two
 *
 * Source: Haaland (1983), J. Fluids Eng. 105:89 (within 2 % of Colebrook, Re 4e3 to 1e8). The step uses
 * the same law with a quick logarithm (step/wall.ts).
 */
import { log10, power, square } from '../elementary/powers.ts';

/** Reynolds number below which it is held: gas all but at rest. */
const LOWEST_REYNOLDS = 100;

/** Fanning factor [-] at a Reynolds number [-] and relative roughness [-]. */
export function fanningFactor(reynolds: number, relativeRoughness: number): number {
  const re = Math.max(reynolds, LOWEST_REYNOLDS);
  const log = log10(power(relativeRoughness / 3.7, 1.11) + 6.9 / re);
  return Math.max(16 / re, 1 / square(3.6 * log));
}
