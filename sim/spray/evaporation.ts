/**
 * What leaves a wet surface, whether of a drop or a film: Spalding's driving force.
 *
 *   B = (Ys - Yoo) / (1 - Ys),   m" = g ln(1 + B)
 *   m"_i = g (ln(1 + B) Ys_i + (ln(1 + B) / B) (Ys_i - Yoo_i))
 *   heat to the surface = h (Too - Ts) z / (e^z - 1),   z = m" cv / h      blowing correction
 *
 *   Ys, Yoo  mass fraction of vapour at the surface and far away [-], sums over components i
 *   g        mass transfer coefficient, rho D Sh / d for a drop [kg/(m^2 s)]
 *   h        heat transfer coefficient [W/(m^2 K)]      cv  specific heat of vapour [J/(kg K)]
 *
 * Where the gas is saturated B is 0 and evaporation stops; beyond it vapour condenses. Properties
 * are taken a third of the way from the surface to the gas (1/3 rule).
 * Source: Spalding (1953); Abramzon & Sirignano (1989), Int. J. Heat Mass Transfer 32:1605, without
 * its film thickness correction; Hubbard, Denny & Mills (1975) for the 1/3 rule (all from memory).
 */
import { exp, expm1, log1p, power } from '../elementary/powers.ts';
import type { Gas } from '../gas/gas.ts';
import { PRANDTL, viscosity } from '../gas/viscosity.ts';
import { GAS_CONSTANT, STANDARD_ATMOSPHERE } from '../units.ts';
import { type LiquidFuel, totalMass } from './liquidFuel.ts';

/** Gas around a wet surface. */
export interface Surroundings {
  /** Temperature [K]. */
  T: number;
  /** Pressure [Pa]. */
  p: number;
  /** Mass fraction of fuel vapour [-]. */
  fuel: number;
}

/** State at and near a wet surface; the arrays have one entry a component. */
export interface WetSurface {
  /** Vapour mass fractions at the surface [-]. */
  atSurface: Float64Array;
  /** Spalding number [-]. */
  B: number;
  /** ln(1 + B) and ln(1 + B) / B [-]. */
  log: number;
  ratio: number;
  /** d(ln(1 + B))/dT [1/K]. */
  slope: number;
  /** Density [kg/m^3], diffusivity [m^2/s], viscosity [Pa s], specific heat [J/(kg K)] and heat
   * conductivity [W/(m K)] of the gas near the surface. */
  density: number;
  diffusivity: number;
  viscosity: number;
  heatCapacity: number;
  conductivity: number;
}

/** Vapour at the surface is held below this mole fraction: the liquid then boils. */
const MOST_VAPOUR = 0.98;

const REFERENCE = 298.15;

export function wetSurface(fuel: LiquidFuel): WetSurface {
  return {
    atSurface: new Float64Array(fuel.parts.length),
    B: 0,
    log: 0,
    ratio: 1,
    slope: 0,
    density: 1,
    diffusivity: 0,
    viscosity: 0,
    heatCapacity: 0,
    conductivity: 0,
  };
}

/** Fills `out` for a surface of the composition `mass` [kg, any scale] at temperature Ts [K]. */
export function solveSurface(
  fuel: LiquidFuel,
  gas: Gas,
  mass: Float64Array,
  Ts: number,
  around: Surroundings,
  out: WetSurface,
): void {
  const Ys = transferNumber(fuel, GAS_CONSTANT / gas.rAir, mass, Ts, around, out);
  const T = Ts + (around.T - Ts) / 3;
  const Y = Math.min(Ys + (around.fuel - Ys) / 3, 1);
  out.density = around.p / (gas.gasConstant(0, Y) * T);
  out.diffusivity =
    fuel.diffusivity * power(T / REFERENCE, 1.75) * (STANDARD_ATMOSPHERE / around.p);
  out.viscosity = viscosity(T);
  out.heatCapacity = gas.heatCapacityPressure(T, 0, Y);
  out.conductivity = (out.viscosity * gas.heatCapacityPressure(T, 0, 0)) / PRANDTL;
}

/** Vapour at the surface and what it drives, B with its slope, into `out`; gives Ys [-]. */
function transferNumber(
  fuel: LiquidFuel,
  gasMolarMass: number,
  mass: Float64Array,
  Ts: number,
  around: Surroundings,
  out: WetSurface,
): number {
  const { parts } = fuel;
  const { atSurface } = out;
  let moles = 0;
  for (let i = 0; i < parts.length; i++) moles += mass[i]! / parts[i]!.molarMass;
  let vapour = 0;
  let heavy = 0;
  let rise = 0;
  for (let i = 0; i < parts.length; i++) {
    const part = parts[i]!;
    const fraction = mass[i]! / part.molarMass / moles;
    const t = 1 / (Ts + part.c);
    const x = (fraction * exp(part.a - part.b * t)) / around.p;
    vapour += x;
    heavy += x * part.molarMass;
    rise += x * part.molarMass * part.b * t * t;
    atSurface[i] = x * part.molarMass;
  }
  const held = vapour > MOST_VAPOUR ? MOST_VAPOUR / vapour : 1;
  const total = heavy * held + (1 - vapour * held) * gasMolarMass;
  for (let i = 0; i < parts.length; i++) atSurface[i]! *= held / total;
  const Ys = (heavy * held) / total;
  const B = (Ys - around.fuel) / (1 - Ys);
  out.B = B;
  out.log = log1p(B);
  out.ratio = Math.abs(B) < 1e-6 ? 1 - 0.5 * B : out.log / B;
  // d ln(1+B) = dYs / (1 - Ys); Ys grows as its vapour pressures do.
  out.slope = held < 1 ? rise / total : ((rise / total) * (gasMolarMass / total)) / (1 - Ys);
  return Ys;
}

/** What a liquid gives off in a step, summed over its components. */
export interface GivenOff {
  /** Heat taken along [W], heat of evaporation of the fuel [J/kg], heat capacity of the liquid [J/K]. */
  latentFlow: number;
  latent: number;
  capacity: number;
}

/**
 * Takes from the components `mass` [kg] of a liquid at T [K] what they give off in dt [s] through a
 * solved surface; `transfer` is g times its area [kg/s], `left` the share of a component that stays
 * where so large a share would leave at the rate it begins with (below 0: condenses).
 */
export function giveOff(
  fuel: LiquidFuel,
  gas: Gas,
  mass: Float64Array,
  T: number,
  around: Surroundings,
  { log, ratio, atSurface }: WetSurface,
  transfer: number,
  dt: number,
  left: (share: number) => number,
  out: GivenOff,
): void {
  const total = totalMass(mass);
  const vapourEnthalpy = gas.enthalpy(T, 0, 1);
  let latentFlow = 0;
  let meanLatent = 0;
  let capacity = 0;
  for (let i = 0; i < mass.length; i++) {
    const part = fuel.parts[i]!;
    const drive = log * atSurface[i]! + ratio * (atSurface[i]! - around.fuel * part.share);
    const rate = transfer * drive;
    const latent = vapourEnthalpy - part.base - part.heatCapacity * T;
    latentFlow += rate * latent;
    meanLatent += part.share * latent;
    capacity += mass[i]! * part.heatCapacity;
    mass[i]! *= left((rate * dt) / Math.max(mass[i]!, 1e-3 * total));
  }
  out.latentFlow = latentFlow;
  out.latent = meanLatent;
  out.capacity = capacity;
}

/** Share of the heat that still arrives against the outflow of vapour: z / (e^z - 1). */
export function blowing(z: number): number {
  if (Math.abs(z) < 1e-4) return 1 - 0.5 * z;
  return z > 50 ? 0 : z / expm1(z);
}
