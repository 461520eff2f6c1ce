/** The air in hoses and bar. Source: gas/atmosphere.ts, gas/viscosity.ts. */
import { moistAirGasConstant, vapourFraction } from '../gas/atmosphere.ts';
import { PRANDTL, viscosity } from '../gas/viscosity.ts';
import type { AmbientSpecification } from '../specification.ts';
import type { RestingGas } from './line.ts';

/** Ratio of heat capacities of air near room temperature [-]. */
const GAMMA = 1.4;

/** The air in hoses and bar: of the day's temperature, at a mean pressure [Pa]. */
export function airInHoses(ambient: AmbientSpecification, pressure: number): RestingGas {
  const { temperature, relativeHumidity } = ambient;
  const vapour = vapourFraction(ambient.pressure, temperature, relativeHumidity);
  const gasConstant = moistAirGasConstant(vapour);
  return {
    density: pressure / (gasConstant * temperature),
    soundSpeed: Math.sqrt(GAMMA * gasConstant * temperature),
    pressure,
    viscosity: viscosity(temperature),
    gamma: GAMMA,
    prandtl: PRANDTL,
  };
}
