/**
 * The bar of a file in the solver's own network, all cylinders solved: what the sensor then reads, and what the
 * bar does to the runners.
 */
import { mean, swing } from '../../acoustics/barReading.ts';
import type { BarSpecification } from '../../bars.ts';
import { circleArea } from '../../duct/profile.ts';
import type { JoinedCycle } from '../../engine/joinedCycle.ts';
import type { TakenAt } from '../../engine/thinLine.ts';
import type { PressureBarSpecification } from '../../fittings.ts';
import type { EngineSpecification } from '../../specification.ts';
import { historyOf } from './history.ts';
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

/** The engine with its bar fitted, friction of the hoses taken at the firing and at this mean pressure [Pa]. */
export function withBar(
  engine: EngineSpecification,
  spec: PressureBarSpecification,
  speed: number,
  pressure: number,
): EngineSpecification {
  const { count } = engine.cylinder;
  const bar = joinedBarOf(spec, count, { frequency: (speed * count) / 120, pressure });
  return { ...engine, intake: { ...engine.intake, bars: [bar] } };
}

/** One speed and plate angle with the bar fitted. */
export interface JoinedReading {
  /** Of the first runner with a hose and the next to fire, of bar and sensor, every degree [Pa]. */
  runners: number[][];
  inside: number[];
  sensor: number[];
  /** Ripple at the sensor, peak to peak, and its mean above that of the runners with a hose [Pa]. */
  ripple: number;
  offset: number;
  /** Gas out of one runner into its hose and back, over the air of its cylinder [-]. */
  crossing: number;
}

export function readingOf(cycle: JoinedCycle, bar: BarSpecification): JoinedReading {
  const { crankAngle, cylinders, bars } = cycle;
  const [joined] = bars;
  const even = (pressure: readonly number[]) => historyOf(crankAngle, pressure);
  const [inside, sensor] = [even(joined!.inside), even(joined!.sensor)];
  const own = bar.hoses.map(({ place }) => even(cylinders[place]!.pressure));
  const first = cylinders[bar.hoses[0]!.place]!;
  return {
    runners: cylinders.slice(0, 2).map(({ pressure }) => even(pressure)),
    inside,
    sensor,
    ripple: swing(sensor),
    offset: mean(sensor) - mean(own.map(mean)),
    crossing: joined!.hoses[0]!.out / first.air,
  };
}
