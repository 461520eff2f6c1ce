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
  predictFlow(duct, dt);
  predictFractions(duct, dt);
  const n = duct.mesh.cells;
  gas.energyAndSound(duct.right, 0, n);
  gas.energyAndSound(duct.left, 1, n + 1);
}

/** Density, velocity and pressure at the faces, and what the wall does. */
function predictFlow(duct: Duct, dt: number): void {
  const { prim, mesh, slope, left, right, fanning, lossPerLength, wallTemperature } = duct;
  const { rho } = duct.cells;
  const { u, p, gamma: gammas, R: Rs, T } = prim;
  const { toLow, toHigh, perDiameter, perVolume: perVolumes, faceArea, meanArea } = mesh;
  const { rho: slopeR, u: slopeU, p: slopeP } = slope;
  const { rho: rightR, u: rightU, p: rightP } = right;
  const { rho: leftR, u: leftU, p: leftP } = left;
  const { totalPressure, wallForce, wallHeat } = duct;
  const n = mesh.cells;
  const half = 0.5 * dt;
  const perDx = 1 / mesh.dx;
  for (let i = 0; i < n; i++) {
    const r0 = rho[i]!;
    const u0 = u[i]!;
    const p0 = p[i]!;
    const gamma = gammas[i]!;
    const R = Rs[i]!;
    const perRho = 1 / r0;
    const perSound = r0 / (gamma * p0);

    // Face values: steady flow from the cell's area to the face's, and half a slope.
    const aL = toLow[i]!;
    const aR = toHigh[i]!;
    const steady = steadyShare(u0 * u0 * perSound);
    const head = 0.5 * steady * r0 * u0 * u0;
    const riseL = head * (1 - aL * aL);
    const riseR = head * (1 - aR * aR);
    const rSteadyL = r0 + riseL * perSound;
    const rSteadyR = r0 + riseR * perSound;
    const halfR = 0.5 * slopeR[i]!;
    const halfU = 0.5 * slopeU[i]!;
    const halfP = 0.5 * slopeP[i]!;
    const rL = rSteadyL - halfR;
    const rR = rSteadyR + halfR;
    const uL = u0 * (1 + steady * ((aL * r0) / rSteadyL - 1)) - halfU;
    const uR = u0 * (1 + steady * ((aR * r0) / rSteadyR - 1)) + halfU;
    const pL = p0 + riseL - halfP;
    const pR = p0 + riseR + halfP;

    // The wall: drag and heat, Reynolds-Colburn.
    const speed = Math.abs(u0);
    const rub = fanning[i]! * perDiameter[i]!;
    const drag = 2 * rub + 0.5 * lossPerLength[i]!;
    const wall = wallTemperature[i]!;
    const toGas = wall > 0 ? r0 * speed * rub * (2 * COLBURN * (gamma / (gamma - 1)) * R) : 0;

    // The rates above times half a step.
    const perVolume = perVolumes[i]!;
    const qL = faceArea[i]! * uL;
    const qR = faceArea[i + 1]! * uR;
    const pull = drag * u0 * speed;
    const dr = -half * perVolume * (rR * qR - rL * qL);
    const du = -half * (perDx * (0.5 * (uR * uR - uL * uL) + (pR - pL) * perRho) + pull);
    const dp =
      -half *
      (perDx * u0 * (pR - pL) +
        perVolume * gamma * p0 * (qR - qL) -
        (gamma - 1) * (r0 * pull * u0 + toGas * (wall - T[i]!)));

    const leastR = LEAST_SHARE * r0 - Math.min(dr, 0);
    const leastP = LEAST_SHARE * p0 - Math.min(dp, 0);
    const sound =
      rL > leastR && rR > leastR && r0 > leastR && pL > leastP && pR > leastP && p0 > leastP;
    const rMid = sound ? r0 + dr : r0;
    const uMid = sound ? u0 + du : u0;
    const pMid = sound ? p0 + dp : p0;
    rightR[i] = sound ? rL + dr : r0;
    rightU[i] = sound ? uL + du : u0;
    rightP[i] = sound ? pL + dp : p0;
    leftR[i + 1] = sound ? rR + dr : r0;
    leftU[i + 1] = sound ? uR + du : u0;
    leftP[i + 1] = sound ? pR + dp : p0;

    const headMid = 0.5 * steady * rMid * uMid * uMid;
    totalPressure[i] = pMid + headMid;
    wallForce[i] =
      headMid * perVolume * meanArea[i]! * (aR - aL) - rMid * drag * uMid * Math.abs(uMid);
    wallHeat[i] = toGas * (wall - pMid / (rMid * R));
  }
}

/**
 * Mass fractions at the faces. A fraction's slope is held back where density changes too, so that it
 * keeps its bounds: halves of the cell with the densities at its faces have the cell's mean fraction.
 */
function predictFractions(duct: Duct, dt: number): void {
  const { prim, slope, left, right, mesh } = duct;
  const { u, burned, fuel } = prim;
  const { burned: slopeB, fuel: slopeF } = slope;
  const { rho: rightR, burned: rightB, fuel: rightF } = right;
  const { rho: leftR, burned: leftB, fuel: leftF } = left;
  const n = mesh.cells;
  const perDx = (0.5 * dt) / mesh.dx;
  for (let i = 0; i < n; i++) {
    const b0 = burned[i]!;
    const f0 = fuel[i]!;
    const rL = rightR[i]!;
    const rR = leftR[i + 1]!;
    const skew = (rR - rL) / (rR + rL);
    const half = 0.5 / (1 + Math.abs(skew));
    const advance = perDx * u[i]!;
    const onLow = half * (1 + skew) + advance;
    const onHigh = half * (1 - skew) - advance;
    rightB[i] = b0 - onLow * slopeB[i]!;
    leftB[i + 1] = b0 + onHigh * slopeB[i]!;
    rightF[i] = f0 - onLow * slopeF[i]!;
    leftF[i + 1] = f0 + onHigh * slopeF[i]!;
  }
}
