/** What studies of how the engine is fed share: curves and traces, and what a sensor and cylinders are under. */
import * as reading from '../acoustics/barReading.ts';
import { type Brake, brakeTorque } from '../decision/brakeTorque.ts';
import type { Station, Trace } from '../engine/trace.ts';
import type { EngineSpecification } from '../specification.ts';
import {
  isFailure,
  type PointFailure,
  type PointOutcome,
  type PointRunner,
} from '../sweep/runner.ts';
import { allPoints, type SweepObserver } from '../sweep/sweep.ts';
import type { Computer } from '../sweep/tasks.ts';
import { spreadOf } from './cylinders.ts';
import { historyOf } from './signal/history.ts';
import { TAPPING } from './signal/tapped.ts';
import type { SetUpCurve } from './weigh.ts';

/** One way to feed the engine at every speed of the file, and what was computed between them. */
export interface FedCurve extends SetUpCurve {
  engine: EngineSpecification;
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

/** A runner that traces one engine at some speeds, and what it traced. */
export function tracing(
  computer: Computer,
  engine: EngineSpecification,
  speeds: readonly number[],
): PointRunner & { traces: Map<number, Traced> } {
  const traces = new Map<number, Traced>();
  return {
    traces,
    async run(job) {
      if (job.engine !== engine || !speeds.includes(job.speed)) return computer.run(job);
      const found = await computer.task('trace', { ...job, stations: [TAPPING] });
      traces.set(job.speed, found);
      return outcomeOf(found);
    },
  };
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

/** What a dyno would read at a point of a curve [N m]; undefined where it failed. */
export const brakeTorqueOf = (outcome: PointOutcome, { engine }: FedCurve) =>
  isFailure(outcome) ? undefined : brakeTorque(outcome, engine).torque;

/** The greatest brake power of all points of a curve [W] and its speed [rpm]; undefined where all failed. */
export function topPower(curve: FedCurve): { power: number; speed: number } | undefined {
  const rows = allPoints(curve).flatMap((one) =>
    isFailure(one) ? [] : [{ power: brakeTorque(one, curve.engine).power, speed: one.speed }],
  );
  return rows.toSorted((a, b) => b.power - a.power)[0];
}

/** The most that cylinders differ at any point of a curve [-], and where [rpm]. */
export function widestSpread(curve: FedCurve): { speed: number; spread: number } {
  return allPoints(curve)
    .map((one) => ({ speed: one.speed, spread: spreadOf(one) ?? 0 }))
    .reduce((a, b) => (b.spread > a.spread ? b : a));
}
