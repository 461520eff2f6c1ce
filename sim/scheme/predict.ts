/**
 * MUSCL-Hancock, first half: both face values of each cell from its slopes (slopes.ts), and their
 * advance by half a time step with
 *
 *   rho_t = -(rho u A)_x / A
 *   u_t   = -(u^2 / 2)_x - p_x / rho - k u |u|,            k = 2 f / D + K' / 2
 *   p_t   = -u p_x - gamma p (u A)_x / A + (gamma - 1) (rho k u^2 |u| + q)
 *   Y_t   = -u Y_x
 *
 * The wall of a taper pushes with the pressure of steady flow along the cell, p + rho u^2/2 = const
 * (below the speed of sound; plain p above it):
 *
 *   integral p dA = (p + rho u^2/2) (A_high - A_low) + rho (u A)^2/2 (1/A_high - 1/A_low).
 *
 * Source: van Leer (1984), Toro (2009) sec. 14.4 (from memory); sources at half time, midpoint rule.
 */
import type { Duct } from '../duct/duct.ts';
import type { Gas } from '../gas/gas.ts';
import type { SlopeLimiter } from './slopeLimiter.ts';
import { slopes, steadyShare } from './slopes.ts';
import { COLBURN } from './wallSource.ts';

/** A face value below this share of its cell's is not trusted: the cell falls to first order. */
const LEAST_SHARE = 0.1;

/** Fills `left`, `right`, `totalPressure`, `wallForce` and `wallHeat` of the duct for a step dt [s]. */
export function predict(duct: Duct, gas: Gas, limiter: SlopeLimiter, dt: number): void {
  slopes(duct, limiter);
  const { prim, cells, mesh, slope, left, right } = duct;
  const n = mesh.cells;
  const halfStep = 0.5 * dt;
  const perDx = 1 / mesh.dx;
  for (let i = 0; i < n; i++) {
    const r0 = cells.rho[i]!;
    const u0 = prim.u[i]!;
    const p0 = prim.p[i]!;
    const gamma = prim.gamma[i]!;
    const R = prim.R[i]!;

    // Face values: steady flow from the cell's area to the face's, and half a slope.
    const aL = mesh.toLow[i]!;
    const aR = mesh.toHigh[i]!;
    const perSound = r0 / (gamma * p0);
    const steady = steadyShare(u0 * u0 * perSound);
    const head = 0.5 * steady * r0 * u0 * u0;
    const riseL = head * (1 - aL * aL);
    const riseR = head * (1 - aR * aR);
    const rSteadyL = r0 + riseL * perSound;
    const rSteadyR = r0 + riseR * perSound;
    const rL = rSteadyL - 0.5 * slope.rho[i]!;
    const rR = rSteadyR + 0.5 * slope.rho[i]!;
    const uL = u0 * (1 + steady * ((aL * r0) / rSteadyL - 1)) - 0.5 * slope.u[i]!;
    const uR = u0 * (1 + steady * ((aR * r0) / rSteadyR - 1)) + 0.5 * slope.u[i]!;
    const pL = p0 + riseL - 0.5 * slope.p[i]!;
    const pR = p0 + riseR + 0.5 * slope.p[i]!;

    const speed = Math.abs(u0);
    const diameter = mesh.diameter[i]!;
    const drag = 2 * (duct.fanning[i]! / diameter) + 0.5 * duct.lossPerLength[i]!;
    const wall = duct.wallTemperature[i]!;
    const film = r0 * speed * duct.fanning[i]! * (2 * COLBURN * (gamma / (gamma - 1)) * R);
    const toGas = wall > 0 ? film / diameter : 0;
    const heat = toGas * (wall - prim.T[i]!);

    // The rates above times half a step.
    const perVolume = 1 / mesh.volume[i]!;
    const qL = mesh.faceArea[i]! * uL;
    const qR = mesh.faceArea[i + 1]! * uR;
    const dr = -halfStep * perVolume * (rR * qR - rL * qL);
    const du =
      -halfStep * (perDx * (0.5 * (uR * uR - uL * uL) + (pR - pL) / r0) + drag * u0 * speed);
    const dp =
      -halfStep *
      (perDx * u0 * (pR - pL) +
        perVolume * gamma * p0 * (qR - qL) -
        (gamma - 1) * (r0 * drag * u0 * u0 * speed + heat));

    const sound =
      Math.min(rL, rR, r0) + Math.min(dr, 0) > LEAST_SHARE * r0 &&
      Math.min(pL, pR, p0) + Math.min(dp, 0) > LEAST_SHARE * p0;
    right.rho[i] = sound ? rL + dr : r0;
    right.u[i] = sound ? uL + du : u0;
    right.p[i] = sound ? pL + dp : p0;
    left.rho[i + 1] = sound ? rR + dr : r0;
    left.u[i + 1] = sound ? uR + du : u0;
    left.p[i + 1] = sound ? pR + dp : p0;

    // A mass fraction's slope is held back where density changes too, so that it keeps its bounds:
    // halves of the cell with these densities and fractions have the cell's mean fraction.
    const skew = (rR - rL) / (rR + rL);
    const half = sound ? 0.5 / (1 + Math.abs(skew)) : 0;
    const advance = sound ? halfStep * perDx * u0 : 0;
    const onLow = half * (1 + skew) + advance;
    const onHigh = half * (1 - skew) - advance;
    right.burned[i] = prim.burned[i]! - onLow * slope.burned[i]!;
    left.burned[i + 1] = prim.burned[i]! + onHigh * slope.burned[i]!;
    right.fuel[i] = prim.fuel[i]! - onLow * slope.fuel[i]!;
    left.fuel[i + 1] = prim.fuel[i]! + onHigh * slope.fuel[i]!;

    const rMid = sound ? r0 + dr : r0;
    const uMid = sound ? u0 + du : u0;
    const pMid = sound ? p0 + dp : p0;
    const headMid = 0.5 * steady * rMid * uMid * uMid;
    duct.totalPressure[i] = pMid + headMid;
    duct.wallForce[i] =
      headMid * perVolume * mesh.meanArea[i]! * (aR - aL) - rMid * drag * uMid * Math.abs(uMid);
    duct.wallHeat[i] = toGas * (wall - pMid / (rMid * R));
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
