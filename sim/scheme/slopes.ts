/**
 * Limited slopes of each cell, taken about steady flow: a neighbour's gas is first brought to the
 * cell's own area as slow steady flow would bring it, and only what then differs is a slope,
 *
 *   rho u A = const,   p + rho u^2 / 2 = const,   d rho = d p / c^2.
 *
 * So steady flow through a taper has no slopes and no jumps at faces. Slopes of u itself would: the
 * flux answers a jump du with a loss of about rho c du / 2, in dynamic heads the more the slower
 * the flow, and a short flare would take a whole head. Gas at rest stays at rest all the same.
 *
 * The neighbour beyond an end cell is the boundary state found there in the last step, half a cell
 * away. Half a step late, it puts the end cell's mean off by O(dx), but not what it gives to the
 * boundary: the flux there is second order like the rest (tests/order/ends.test.ts).
 * Source: van Leer (1984) for slopes; the split into steady flow and the rest follows the idea of
 * well-balanced schemes, Audusse et al. (2004), SIAM J. Sci. Comput. 25:2050 (from memory).
 */
import type { Duct } from '../duct/duct.ts';
import type { SlopeLimiter } from './slopeLimiter.ts';

/**
 * How much of the steady part is taken out, at a squared Mach number: all of it up to 0.7, where it
 * holds well, and none from the speed of sound on, where a narrowing slows the gas instead.
 */
export function steadyShare(machSquared: number): number {
  return Math.min(1, Math.max(0, 2 * (1 - machSquared)));
}

/** Fills `slope` of the duct: differences across each cell. */
export function slopes(duct: Duct, limiter: SlopeLimiter): void {
  const { prim, cells, mesh, slope } = duct;
  const { low: endLow, high: endHigh } = duct.endState;
  const { rho } = cells;
  const { u, p, c, burned, fuel } = prim;
  const last = mesh.cells - 1;
  for (let i = 0; i <= last; i++) {
    const r0 = rho[i]!;
    const u0 = u[i]!;
    const p0 = p[i]!;
    const perSound = 1 / (c[i]! * c[i]!);
    const steady = steadyShare(u0 * u0 * perSound);
    const first = i === 0;
    const ending = i === last;
    // A face is half a cell away: its difference counts twice.
    const toLow = first ? 2 : 1;
    const toHigh = ending ? 2 : 1;

    const rl = first ? endLow[0]! : rho[i - 1]!;
    const ul = first ? endLow[1]! : u[i - 1]!;
    const pl = first ? endLow[2]! : p[i - 1]!;
    const al = mesh.lowRatio[i]!;
    const riseLow = 0.5 * steady * rl * ul * ul * (1 - al * al);
    const rlHere = rl + riseLow * perSound;

    const rh = ending ? endHigh[0]! : rho[i + 1]!;
    const uh = ending ? endHigh[1]! : u[i + 1]!;
    const ph = ending ? endHigh[2]! : p[i + 1]!;
    const ah = mesh.highRatio[i]!;
    const riseHigh = 0.5 * steady * rh * uh * uh * (1 - ah * ah);
    const rhHere = rh + riseHigh * perSound;

    slope.rho[i] = limiter(toLow * (r0 - rlHere), toHigh * (rhHere - r0));
    const ulHere = ul * (1 + steady * ((al * rl) / rlHere - 1));
    const uhHere = uh * (1 + steady * ((ah * rh) / rhHere - 1));
    slope.u[i] = limiter(toLow * (u0 - ulHere), toHigh * (uhHere - u0));
    slope.p[i] = limiter(toLow * (p0 - pl - riseLow), toHigh * (ph + riseHigh - p0));
    const b0 = burned[i]!;
    slope.burned[i] = limiter(
      toLow * (b0 - (first ? endLow[3]! : burned[i - 1]!)),
      toHigh * ((ending ? endHigh[3]! : burned[i + 1]!) - b0),
    );
    const f0 = fuel[i]!;
    slope.fuel[i] = limiter(
      toLow * (f0 - (first ? endLow[4]! : fuel[i - 1]!)),
      toHigh * ((ending ? endHigh[4]! : fuel[i + 1]!) - f0),
    );
  }
}
