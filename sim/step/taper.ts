/**
 * Slow steady flow between two areas, to which slopes and face values are referred:
 *
 *   rho u A = const,   p + rho u^2 / 2 = const,   d rho = d p / c^2.
 *
 * So steady flow through a taper has no slopes and no jumps at faces. Slopes of u itself would: the
 * flux answers a jump du with a loss of about rho c du / 2, in dynamic heads the more the slower the
 * flow, and a short flare would take a whole head. Gas at rest stays at rest all the same.
 * Source: the split into steady flow and the rest follows the idea of well-balanced schemes, Audusse
 * et al. (2004), SIAM J. Sci. Comput. 25:2050 (from memory).
 */
import { max, min, type V } from './lanes.ts';

/**
 * How much of the steady part is taken out, at a squared Mach number: all of it up to 0.7, where it
 * holds well, and none from the speed of sound on, where a narrowing slows the gas instead.
 */
export function steadyShare(machSquared: V): V {
  return min(1, max(0, 2 * (1 - machSquared)));
}
