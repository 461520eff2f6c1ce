/** The hoses of a file as the acoustics have them, and the air in them. */
import type { RestingGas } from '../../acoustics/line.ts';
import type { PressureBar } from '../../acoustics/pressureBar.ts';
import type { PressureBarSpecification } from '../../fittings.ts';
import { moistAirGasConstant, vapourFraction } from '../../gas/atmosphere.ts';
import { PRANDTL, viscosity } from '../../gas/viscosity.ts';
import type { AmbientSpecification } from '../../specification.ts';

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

export function barOf(spec: PressureBarSpecification): PressureBar {
  const { hoses, hoseLength, hoseBore, jetBore, jetCoefficient, volume } = spec;
  const own = { length: spec.sensorHoseLength, bore: spec.sensorHoseBore };
  return {
    hoses,
    hose: { length: hoseLength, bore: hoseBore },
    volume,
    sensor: { ...(own.length > 0 && { hose: own }), volume: spec.sensorVolume },
    jet: { bore: jetBore, coefficient: jetCoefficient },
  };
}

/** The sensor at the end of the hose of one runner, without a bar. */
export function aloneOf({ hose, sensor, jet }: PressureBar): PressureBar {
  return { hoses: 1, hose, volume: sensor.volume, sensor: { volume: 0 }, ...(jet && { jet }) };
}

/** How late each runner with a hose is, in cycles: spread over the firing order as evenly as can be. */
export function shiftsOf(hoses: number, cylinders: number): number[] {
  return Array.from({ length: hoses }, (_, i) => Math.floor((i * cylinders) / hoses) / cylinders);
}
