/** Plates that the pedal moves, at rest at an angle: the engine with them there, and what it settles to. */
import type { EngineSpecification, ThrottleSpecification } from '../specification.ts';
import { Run } from './cycle.ts';
import { inLanes } from './lanes.ts';
import type { EngineModel } from './plan.ts';
import { settleSpeeds } from './point.ts';

/** What plates at rest give, all cylinders solved, on the finest mesh as it is. */
export interface AtRest {
  /** [deg] */
  angle: number;
  /** Mean of what a sensor is under [Pa], and volumetric efficiency [-]. */
  pressure: number;
  filling: number;
}

/** How often the pressure is noted [deg]. */
export const STRIDE = 10;

/** The throttle that the pedal moves. */
export const pedalled = ({ intake }: EngineSpecification): ThrottleSpecification =>
  intake.chamber?.throttle ?? intake.throttle;

/** The engine with the plates that the pedal moves at another angle [deg]. */
export function withPlates(engine: EngineSpecification, angle: number): EngineSpecification {
  const { intake } = engine;
  const { chamber } = intake;
  const moved = { ...pedalled(engine), angle };
  return {
    ...engine,
    intake: chamber?.throttle
      ? { ...intake, chamber: { ...chamber, throttle: moved } }
      : { ...intake, throttle: moved },
  };
}

/** Settles with plates at an angle [deg] at a speed [rpm]. Throws NonPhysicalStateError where that fails. */
export function settledAt(engine: EngineSpecification, speed: number, angle: number) {
  const point = settleSpeeds(withPlates(engine, angle), [speed], 'all', inLanes)[0]!;
  if (point instanceof Error) throw point;
  const { model, column, finest, result } = point;
  const rest: AtRest = {
    angle,
    pressure: meanPressure(model, column, speed),
    filling: finest.volumetricEfficiency,
  };
  return { model, column, result, rest };
}

/** Of one more cycle from the state that it has settled to [Pa]. */
function meanPressure(model: EngineModel, column: Float64Array, speed: number): number {
  model.network.load(column);
  const run = new Run(model, speed);
  run.start(true);
  run.stride = STRIDE;
  const seen: number[] = [];
  run.onStop = () => {
    seen.push(sensedPressure(model));
  };
  run.cycle();
  return seen.reduce((sum, p) => sum + p, 0) / seen.length;
}

/** In the chamber behind the one plate, or the mean behind all plates [Pa]. */
export function sensedPressure({ spec, chamber, lines }: EngineModel): number {
  if (chamber && spec.intake.chamber?.throttle) return chamber.pressure;
  return lines.reduce((sum, { runner }) => sum + runner.prim.p.at(0), 0) / lines.length;
}
