/** The bar of a file in the solver's own network. */
import { circleArea } from '../../duct/profile.ts';
import type { TakenAt } from '../../engine/thinLine.ts';
import type { PressureBarSpecification } from '../../fittings.ts';
import type { BarSpecification } from '../../specification.ts';
import { shiftsOf } from './hoses.ts';

/** Hoses on runners spread over the firing order as evenly as can be. */
export function joinedBarOf(
  spec: PressureBarSpecification,
  cylinders: number,
  at: TakenAt,
): BarSpecification {
  const { hoses, hoseLength: length, hoseBore: bore, jetBore, jetCoefficient, volume } = spec;
  const hole = jetCoefficient * circleArea(jetBore);
  const places = shiftsOf(hoses, cylinders).map((late) => Math.round(late * cylinders));
  const own = { length: spec.sensorHoseLength, bore: spec.sensorHoseBore };
  const apart = own.length > 0;
  return {
    at,
    hoses: places.map((place) => ({ place, length, bore, hole })),
    volume: apart ? volume : volume + spec.sensorVolume,
    ...(apart && { sensor: { ...own, volume: spec.sensorVolume } }),
  };
}
