/**
 * Sound in a narrow round line at rest, with all that viscosity and heat conduction do to it.
 *
 *   s = a sqrt(rho omega / mu),  z = i^(3/2) s,  F(z) = 1 - 2 J1(z) / (z J0(z)) = -J2(z) / J0(z)
 *   Fv = F(z),  Ft = gamma - (gamma - 1) F(z sqrt(Pr))
 *   Gamma = (i omega / c) sqrt(Ft / Fv),  Zc = rho c / (S sqrt(Fv Ft))
 *   [p1, U1] = [[cosh Gamma L, Zc sinh Gamma L], [sinh Gamma L / Zc, cosh Gamma L]] [p2, U2]
 *   volume:  U = i omega V p / (k p0)
 *
 *   a, L  radius and length [m]   S  bore's area [m^2]   s  shear wave number [-]
 *   rho, c, mu, p0  density, speed of sound, viscosity, pressure of the gas at rest   Pr  Prandtl number
 *   k  gamma where gas is compressed without losing heat, 1 where its walls keep it at temperature
 *
 * The ratio of Bessel functions by continued fraction, J1(z)/J0(z) = (z/2) / (1 - t1) with
 * tk = (z^2/4) / (k (k + 1)) / (1 - t(k+1)), hence F = -t1 / (1 - t1), to all digits at any s here.
 *
 * Sources: Bergh & Tijdeman, NLR-TR F.238, 1965, whose recursion this is in another form; Tijdeman, J.
 * Sound Vib. 39 (1975) 1; continued fraction: Abramowitz & Stegun, 9.1.73 (from memory).
 * Valid for a small sine, omega a / c << 1, L >> a, walls that stay at one temperature, no mean flow.
 */
import type Complex from 'complex.js';
import { circleArea } from '../duct/profile.ts';
import { square } from '../elementary/powers.ts';
import { coshSinh, imaginary, ONE, real, squareRoot } from './complex.ts';
import { FOUR_POLE_IDENTITY, type FourPole, fourPoleChain } from './fourPole.ts';

/** The gas at rest in lines and volumes. */
export interface RestingGas {
  /** Density [kg/m^3]. */
  density: number;
  /** Speed of sound [m/s]. */
  soundSpeed: number;
  /** Pressure [Pa]. */
  pressure: number;
  /** Viscosity [Pa s]. */
  viscosity: number;
  /** Ratio of heat capacities [-]. */
  gamma: number;
  /** Prandtl number [-]. */
  prandtl: number;
}

/** A round line of one bore. */
export interface Line {
  /** Length [m]. */
  length: number;
  /** Bore [m]. */
  bore: number;
}

/** Shear wave number s of a line [-]. */
function shearNumber(bore: number, frequency: number, gas: RestingGas): number {
  return (bore / 2) * Math.sqrt((gas.density * 2 * Math.PI * frequency) / gas.viscosity);
}

/** F at z = i^(3/2) s. */
function profileShare(s: number): Complex {
  const quarter = imaginary(-(s * s) / 4);
  let t = real(0);
  // Terms fall once k passes |z|/2; twenty more give all digits.
  for (let k = 20 + Math.ceil(s); k >= 1; k--) t = quarter.div(k * (k + 1)).div(ONE.sub(t));
  return t.neg().div(ONE.sub(t));
}

/** Fv and Ft at a shear wave number. */
function shares(
  s: number,
  { gamma, prandtl }: Pick<RestingGas, 'gamma' | 'prandtl'>,
): { viscous: Complex; thermal: Complex } {
  const warmed = profileShare(s * Math.sqrt(prandtl));
  return { viscous: profileShare(s), thermal: warmed.mul(1 - gamma).add(gamma) };
}

/** Propagation per omega/c, loss + i phase [-], and what the plane impedance is multiplied by [-]. */
export function propagation(
  s: number,
  gas: Pick<RestingGas, 'gamma' | 'prandtl'>,
): { perWaveNumber: Complex; impedance: Complex } {
  const { viscous, thermal } = shares(s, gas);
  return {
    perWaveNumber: squareRoot(thermal.div(viscous)).mul(imaginary(1)),
    impedance: ONE.div(squareRoot(viscous.mul(thermal))),
  };
}

/** What one metre of a line does at one frequency, mass flow in place of volume velocity. */
export interface LineConstants {
  /** Pressure lost to friction per mass flow [1/(m^2 s)]. */
  resistance: number;
  /** Pressure per change of mass flow in time [1/m^2]. */
  inertance: number;
  /** Mass held per pressure [kg/(m Pa)]. */
  capacity: number;
  /** Share of the plane capacity that lags by a quarter of a period, as its heat goes to the wall [-]. */
  lagging: number;
}

/** The real parts of i omega / (S Fv) and S Ft / c^2, and the inertance; frequency above 0 [Hz]. */
export function lineConstants(bore: number, frequency: number, gas: RestingGas): LineConstants {
  const { viscous, thermal } = shares(shearNumber(bore, frequency, gas), gas);
  const omega = 2 * Math.PI * frequency;
  const series = imaginary(omega / circleArea(bore)).div(viscous);
  return {
    resistance: series.re,
    inertance: series.im / omega,
    capacity: (circleArea(bore) * thermal.re) / square(gas.soundSpeed),
    lagging: -thermal.im,
  };
}

/** Matrix of a line; frequency above 0 [Hz]. */
export function fourPoleLine({ length, bore }: Line, frequency: number, gas: RestingGas): FourPole {
  const { perWaveNumber, impedance } = propagation(shearNumber(bore, frequency, gas), gas);
  const phase = (2 * Math.PI * frequency * length) / gas.soundSpeed;
  const [cosh, sinh] = coshSinh(perWaveNumber.mul(phase));
  const Zc = impedance.mul((gas.density * gas.soundSpeed) / circleArea(bore));
  return { A: cosh, B: sinh.mul(Zc), C: sinh.div(Zc), D: cosh };
}

/** Matrix of lines one behind the other, from side 1. */
export function fourPoleLines(
  lines: readonly Line[],
  frequency: number,
  gas: RestingGas,
): FourPole {
  return lines.reduce(
    (matrix, line) => fourPoleChain(matrix, fourPoleLine(line, frequency, gas)),
    FOUR_POLE_IDENTITY,
  );
}

/** Admittance U/p of a volume [m^3], compressed without losing heat [m^3/(Pa s)]. */
export function volumeAdmittance(
  volume: number,
  frequency: number,
  { pressure, gamma }: RestingGas,
): Complex {
  return imaginary((2 * Math.PI * frequency * volume) / (gamma * pressure));
}

/** Resistance p/U of a line to a steady laminar flow [Pa s/m^3]: Hagen-Poiseuille. */
export function laminarResistance({ length, bore }: Line, { viscosity }: RestingGas): number {
  return (128 * viscosity * length) / (Math.PI * square(square(bore)));
}

/**
 * Lag of a volume behind a line for slow changes [s]: 128 mu L (V/gamma + Vline/2) / (pi d^4 p), the low
 * end of the theory above; the line's own gas keeps the temperature of its walls.
 */
export function slowLag(line: Line, volume: number, gas: RestingGas): number {
  const held = volume / gas.gamma + (circleArea(line.bore) * line.length) / 2;
  return (laminarResistance(line, gas) * held) / gas.pressure;
}
