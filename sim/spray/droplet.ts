/**
 * A drop in a gas stream: drag, heating, evaporation.
 *
 *   du/dt = (U - u) / tau + a,  tau = rho_l d^2 / (18 mu f),  f = 1 + Re^(2/3) / 6   (Re <= 1000)
 *   m cl dT/dt = Q - sum m'_i L_i
 *   m' = pi d rho D Sh ln(1 + B),   Sh = 2 + 0.6 Re^(1/2) Sc^(1/3)
 *   Q  = pi d lambda Nu (T_gas - T) z / (e^z - 1),   Nu = 2 + 0.6 Re^(1/2) Pr^(1/3)
 *
 * At rest in a steady gas that gives the d-squared law, d^2 = d0^2 - K t, K = 8 rho D ln(1 + B) /
 * rho_l. The mass of each component falls by that law within a step, the temperature is advanced
 * linearly implicitly; velocity relaxes exponentially. The inside of a drop is uniform.
 * Sources: Putnam (1961) for f; Ranz & Marshall (1952); evaporation.ts (from memory). Valid for
 * drops that neither touch nor break up, Re below 1000.
 */
import { cubeRoot } from '../elementary/powers.ts';
import type { Gas } from '../gas/gas.ts';
import { PRANDTL } from '../gas/viscosity.ts';
import {
  blowing,
  type GivenOff,
  giveOff,
  type Surroundings,
  solveSurface,
  type WetSurface,
} from './evaporation.ts';
import { type LiquidFuel, liquidVolume } from './liquidFuel.ts';

/** One drop. */
export interface Drop {
  /** Mass of each component [kg]. */
  mass: Float64Array;
  /** Temperature [K]. */
  T: number;
}

/** A drop this small holds nothing worth following [m]; it goes as vapour at once. */
const SMALLEST = 0.5e-6;
const CUBE_ROOT_PRANDTL = cubeRoot(PRANDTL);
const given: GivenOff = { latentFlow: 0, latent: 0, capacity: 0 };

/** Diameter [m]. */
export function dropDiameter(fuel: LiquidFuel, drop: Drop): number {
  return cubeRoot((6 / Math.PI) * liquidVolume(fuel, drop.mass));
}

/**
 * Heats and evaporates a drop for dt [s]; `slip` is its speed through the gas [m/s]. What leaves is
 * the difference of its masses before and after; what it takes from the gas, that of its energy.
 */
export function evaporateDrop(
  fuel: LiquidFuel,
  gas: Gas,
  drop: Drop,
  around: Surroundings,
  slip: number,
  dt: number,
  surface: WetSurface,
): void {
  const { mass } = drop;
  const d = dropDiameter(fuel, drop);
  if (d < SMALLEST) {
    mass.fill(0);
    return;
  }
  solveSurface(fuel, gas, mass, drop.T, around, surface);
  const { density, diffusivity, viscosity: mu, log } = surface;
  const root = 0.6 * Math.sqrt((density * slip * d) / mu);
  const sherwood = 2 + root * cubeRoot(mu / (density * diffusivity));
  const nusselt = 2 + root * CUBE_ROOT_PRANDTL;
  const transfer = Math.PI * d * density * diffusivity * sherwood;
  const heatRate = Math.PI * d * surface.conductivity * nusselt;
  const heat = heatRate * blowing((transfer * log * fuel.vapourHeatCapacity) / heatRate);

  giveOff(fuel, gas, mass, drop.T, around, surface, transfer, dt, shrink, given);
  const stiff = heat + transfer * surface.slope * given.latent;
  drop.T += (dt * (heat * (around.T - drop.T) - given.latentFlow)) / (given.capacity + dt * stiff);
}

/**
 * Mass left of 1 after losing `share` at the rate it began with, by the d-squared law; condensing never
 * more than doubles a component in a step.
 */
function shrink(share: number): number {
  const left = 1 - (2 / 3) * Math.max(share, -1);
  return left > 0 ? left * Math.sqrt(left) : 0;
}

/** Time in which a drop follows the gas [s]: tau. */
export function relaxationTime(
  liquidDensity: number,
  d: number,
  gasDensity: number,
  mu: number,
  slip: number,
): number {
  const re = (gasDensity * slip * d) / mu;
  // Above Re = 1000 Newton's law, drag coefficient 0.44.
  const f = re > 1000 ? (0.44 / 24) * re : 1 + cubeRoot(re * re) / 6;
  return (liquidDensity * d * d) / (18 * mu * f);
}
