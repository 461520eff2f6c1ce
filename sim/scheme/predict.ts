/**
 * MUSCL-Hancock, first half: limited slopes of the primitive variables, both face values of each
 * cell, and their advance by half a time step with the primitive equations
 *
 *   rho_t = -(u rho_x + rho (u_x + u A'/A))
 *   u_t   = -(u u_x + p_x / rho) - k u |u|,             k = 2 f / D + K' / 2
 *   p_t   = -(u p_x + gamma p (u_x + u A'/A)) + (gamma - 1) (rho k u^2 |u| + q)
 *   Y_t   = -u Y_x
 *
 * The neighbour beyond an end cell is the boundary state found there in the last step, half a cell
 * away: the ends are second order like the rest.
 * Source: van Leer (1984), Toro (2009) sec. 14.4 (from memory); sources at half time, midpoint rule.
 */
import type { Duct } from '../duct/duct.ts';
import type { Gas } from '../gas/gas.ts';
import type { SlopeLimiter } from './slopeLimiter.ts';
import { COLBURN } from './wallSource.ts';

/** A face value below this share of its cell's is not trusted: the cell falls to first order. */
const LEAST_SHARE = 0.1;

/** Fills `left`, `right`, `pHalf`, `wallForce` and `wallHeat` of the duct for a step dt [s]. */
export function predict(duct: Duct, gas: Gas, limiter: SlopeLimiter, dt: number): void {
  const { prim, cells, mesh, left, right } = duct;
  const { rho } = cells;
  const { u, p, burned, fuel } = prim;
  const n = mesh.cells;
  const halfStep = 0.5 * dt;
  const perDx = 1 / mesh.dx;
  const low = duct.endState.low;
  const high = duct.endState.high;
  for (let i = 0; i < n; i++) {
    const r0 = rho[i]!;
    const u0 = u[i]!;
    const p0 = p[i]!;
    const b0 = burned[i]!;
    const f0 = fuel[i]!;
    const first = i === 0;
    const last = i === n - 1;
    const dr = limiter(
      first ? 2 * (r0 - low[0]!) : r0 - rho[i - 1]!,
      last ? 2 * (high[0]! - r0) : rho[i + 1]! - r0,
    );
    const du = limiter(
      first ? 2 * (u0 - low[1]!) : u0 - u[i - 1]!,
      last ? 2 * (high[1]! - u0) : u[i + 1]! - u0,
    );
    const dp = limiter(
      first ? 2 * (p0 - low[2]!) : p0 - p[i - 1]!,
      last ? 2 * (high[2]! - p0) : p[i + 1]! - p0,
    );
    const db = limiter(
      first ? 2 * (b0 - low[3]!) : b0 - burned[i - 1]!,
      last ? 2 * (high[3]! - b0) : burned[i + 1]! - b0,
    );
    const df = limiter(
      first ? 2 * (f0 - low[4]!) : f0 - fuel[i - 1]!,
      last ? 2 * (high[4]! - f0) : fuel[i + 1]! - f0,
    );

    const gamma = prim.gamma[i]!;
    const speed = Math.abs(u0);
    const drag = 2 * (duct.fanning[i]! / mesh.diameter[i]!) + 0.5 * duct.lossPerLength[i]!;
    const film = r0 * speed * duct.fanning[i]! * (2 * COLBURN * (gamma / (gamma - 1)) * prim.R[i]!);
    const wall = duct.wallTemperature[i]!;
    const toGas = wall > 0 ? film / mesh.diameter[i]! : 0;
    const heat = toGas === 0 ? 0 : toGas * (wall - prim.T[i]!);
    const dilation = du * perDx + u0 * mesh.areaGradient[i]!;
    const advect = u0 * perDx;

    const hr = r0 - halfStep * (advect * dr + r0 * dilation);
    const hu = u0 - halfStep * (advect * du + (dp * perDx) / r0 + drag * u0 * speed);
    const hp =
      p0 -
      halfStep *
        (advect * dp + gamma * p0 * dilation - (gamma - 1) * (r0 * drag * u0 * u0 * speed + heat));
    const hb = b0 - halfStep * advect * db;
    const hf = f0 - halfStep * advect * df;

    const sound =
      Math.min(hr - 0.5 * Math.abs(dr), hr) > LEAST_SHARE * r0 &&
      Math.min(hp - 0.5 * Math.abs(dp), hp) > LEAST_SHARE * p0;
    const rMid = sound ? hr : r0;
    const uMid = sound ? hu : u0;
    const pMid = sound ? hp : p0;
    const s = sound ? 0.5 : 0;
    right.rho[i] = rMid - s * dr;
    right.u[i] = uMid - s * du;
    right.p[i] = pMid - s * dp;
    right.burned[i] = hb - 0.5 * db;
    right.fuel[i] = hf - 0.5 * df;
    left.rho[i + 1] = rMid + s * dr;
    left.u[i + 1] = uMid + s * du;
    left.p[i + 1] = pMid + s * dp;
    left.burned[i + 1] = hb + 0.5 * db;
    left.fuel[i + 1] = hf + 0.5 * df;

    duct.pHalf[i] = pMid;
    duct.wallForce[i] = -rMid * drag * uMid * Math.abs(uMid);
    duct.wallHeat[i] = toGas === 0 ? 0 : toGas * (wall - pMid / (rMid * prim.R[i]!));
  }
  completeFaces(right, 0, n, gas);
  completeFaces(left, 1, n + 1, gas);
}

/** Internal energy and sound speed of face states from density, pressure and composition. */
function completeFaces(face: Duct['left'], from: number, to: number, gas: Gas): void {
  for (let i = from; i < to; i++) {
    const burned = face.burned[i]!;
    const fuel = face.fuel[i]!;
    const R = gas.gasConstant(burned, fuel);
    const T = face.p[i]! / (face.rho[i]! * R);
    face.e[i] = gas.internalEnergy(T, burned, fuel);
    face.c[i] = Math.sqrt((1 + R / gas.heatCapacityVolume(T, burned, fuel)) * R * T);
  }
}
