/** What studies of how the engine is fed share: curves and traces, and what a sensor and cylinders are under. */
import * as reading from '../acoustics/barReading.ts';
import { type Brake, brakeTorque } from '../decision/brakeTorque.ts';
import type { Station, Trace } from '../engine/trace.ts';
import type { EngineSpecification } from '../specification.ts';
import { isFailure, type PointFailure, type PointOutcome } from '../sweep/runner.ts';
import type { SweepObserver } from '../sweep/sweep.ts';
import type { Computer } from '../sweep/tasks.ts';
import { historyOf } from './signal/history.ts';
import { TAPPING } from './signal/tapped.ts';

/** One way to feed the engine at every speed. */
export interface FedCurve {
  engine: EngineSpecification;
  outcomes: PointOutcome[];
}

/** A pressure over a cycle: mean, and peak to peak [Pa]. */
export interface Sensed {
  mean: number;
  swing: number;
}

/** A point with one more cycle traced, or why it failed. */
export type Traced = Trace | PointFailure;

export const outcomeOf = (one: Traced): PointOutcome => ('point' in one ? one.point : one);

/** Runs of the solver, told of as they come in. */
export class Runs {
  constructor(
    private readonly computer: Computer,
    private readonly observer: SweepObserver,
  ) {}

  async point(engine: EngineSpecification, speed: number): Promise<PointOutcome> {
    const outcome = await this.computer.run({ engine, speed });
    this.observer.onPoint?.(0, speed, outcome);
    return outcome;
  }

  curve(engine: EngineSpecification, speeds: readonly number[]): Promise<PointOutcome[]> {
    return Promise.all(speeds.map((speed) => this.point(engine, speed)));
  }

  async trace(
    engine: EngineSpecification,
    speed: number,
    stations: readonly Station[] = [TAPPING],
  ): Promise<Traced> {
    const found = await this.computer.task('trace', { engine, speed, stations });
    this.observer.onPoint?.(0, speed, outcomeOf(found));
    return found;
  }
}

/** What a sensor is under, behind one plate or in the chamber; undefined where the point failed. */
export function sensedIn(one: Traced, where: 'plate' | 'chamber'): Sensed | undefined {
  if (!('point' in one)) return undefined;
  const pressure = where === 'chamber' ? one.chamberPressure! : one.stations[0]!.pressure;
  const history = historyOf(one.crankAngle, pressure);
  return { mean: reading.mean(history), swing: reading.swing(history) };
}

/** Filling of one over that of another, less one [-]; undefined where a point failed. */
export function gainOf(one: PointOutcome, other: PointOutcome): number | undefined {
  if (isFailure(one) || isFailure(other)) return undefined;
  return one.volumetricEfficiency / other.volumetricEfficiency - 1;
}

/** What a dyno would read of a curve at its i-th speed; undefined where the point failed. */
export function brakeAt({ engine, outcomes }: FedCurve, i: number): Brake | undefined {
  const outcome = outcomes[i]!;
  return isFailure(outcome) ? undefined : brakeTorque(outcome, engine);
}
