/** The hoses of a file as the acoustics have them. */
import type { PressureBar } from '../../acoustics/pressureBar.ts';
import type { PressureBarSpecification } from '../../fittings.ts';

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
