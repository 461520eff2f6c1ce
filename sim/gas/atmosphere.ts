/**
 * Still outside air: the standard atmosphere against altitude, and moist air.
 *
 *   T = T0 - L H,  p = p0 (T / T0)^(g M / (R* L)),  H = r Z / (r + Z)
 *
 *   Z  geometric altitude [m]   H  geopotential altitude [m]   T [K]   p [Pa]
 *   Source: U.S. Standard Atmosphere 1976 (NOAA-S/T 76-1562), troposphere, H from -5 to 11 km.
 *
 *   psv = exp(A T^2 + B T + C + D / T),  x = RH f psv / p,  f = alpha + beta p + gamma t^2
 *
 *   psv  saturation pressure over water [Pa]   x  mole fraction of vapour [-]   t  [degC]
 *   Source: Picard et al., Metrologia 45 (2008) 149 (CIPM-2007), eqs. A1.1-A1.3; stated for 15 to
 *   27 degC. Within 0.1 % of Hyland & Wexler's vapour pressure from 0 to 50 degC (tests).
 */
import { exp, power } from '../elementary/powers.ts';
import { GAS_CONSTANT, STANDARD_ATMOSPHERE, STANDARD_GRAVITY, ZERO_CELSIUS } from '../units.ts';
import { componentOf, moistAir } from './component.ts';

/** Sea-level temperature of the standard atmosphere [K]. */
const SEA_LEVEL_TEMPERATURE = 288.15;
/** Fall of temperature with geopotential altitude [K/m]. */
const LAPSE_RATE = 0.0065;
/** The standard's own molar mass of air [kg/mol], gas constant [J/(mol K)] and earth radius [m]. */
const STANDARD_MOLAR_MASS = 0.0289644;
const STANDARD_GAS_CONSTANT = 8.31432;
const EARTH_RADIUS = 6356766;

/** Geopotential altitude [m] of a geometric altitude [m]. */
export function geopotentialAltitude(geometric: number): number {
  return (EARTH_RADIUS * geometric) / (EARTH_RADIUS + geometric);
}

/**
 * Pressure [Pa] and temperature [K] of the standard atmosphere.
 *
 * @param geopotential geopotential altitude [m]
 * @throws RangeError outside -5000 to 11000 m
 */
export function standardAtmosphere(geopotential: number): {
  pressure: number;
  temperature: number;
} {
  if (!(geopotential >= -5000 && geopotential <= 11000)) {
    throw new RangeError(`altitude must lie between -5000 and 11000 m (got ${geopotential})`);
  }
  const temperature = SEA_LEVEL_TEMPERATURE - LAPSE_RATE * geopotential;
  const exponent = (STANDARD_GRAVITY * STANDARD_MOLAR_MASS) / (STANDARD_GAS_CONSTANT * LAPSE_RATE);
  const pressure = STANDARD_ATMOSPHERE * power(temperature / SEA_LEVEL_TEMPERATURE, exponent);
  return { pressure, temperature };
}

/** Saturation vapour pressure [Pa] over water at temperature T [K]. */
export function saturationVapourPressure(T: number): number {
  return exp(1.2378847e-5 * T * T - 1.9121316e-2 * T + 33.93711047 - 6.3431645e3 / T);
}

/**
 * Partial pressure of water vapour in air [Pa].
 *
 * @param relativeHumidity [0..1]
 */
export function vapourPressure(pressure: number, T: number, relativeHumidity: number): number {
  const celsius = T - ZERO_CELSIUS;
  const enhancement = 1.00062 + 3.14e-8 * pressure + 5.6e-7 * celsius * celsius;
  return relativeHumidity * enhancement * saturationVapourPressure(T);
}

/** Mole fraction of water vapour in air [-]. */
export function vapourFraction(pressure: number, T: number, relativeHumidity: number): number {
  return vapourPressure(pressure, T, relativeHumidity) / pressure;
}

/** Specific gas constant of air with this mole fraction of vapour [J/(kg K)]. */
export function moistAirGasConstant(fraction: number): number {
  return GAS_CONSTANT / componentOf(moistAir(fraction)).molarMass;
}

/** Density of moist air as an ideal mixture [kg/m^3]. */
export function moistAirDensity(pressure: number, T: number, relativeHumidity: number): number {
  const fraction = vapourFraction(pressure, T, relativeHumidity);
  return pressure / (moistAirGasConstant(fraction) * T);
}
