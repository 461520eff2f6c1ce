/** One speed and plate angle: the solver's pressure behind a plate, and what bar and single hose make of it. */

import { stepAnswer } from '../../acoustics/barMarches.ts';
import * as reading from '../../acoustics/barReading.ts';
import type { TriedAt } from '../../acoustics/barTrial.ts';
import { airInHoses } from '../../acoustics/restingAir.ts';
import { sweptVolume } from '../../cylinder/crank.ts';
import type { JoinedCycle } from '../../engine/joinedCycle.ts';
import type { PointResult } from '../../engine/point.ts';
import type { Station } from '../../engine/trace.ts';
import type { PressureBarSpecification } from '../../fittings.ts';
import { moistAirDensity } from '../../gas/atmosphere.ts';
import type { EngineSpecification, NumericsSpecification } from '../../specification.ts';
import type { PointFailure, PointOutcome } from '../../sweep/runner.ts';
import type { SweepObserver } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import { historyOf } from './history.ts';
import { aloneOf, barOf, shiftsOf } from './hoses.ts';
import { type JoinedReading, readingOf, withBar } from './joined.ts';

export interface SignalQuestion {
  engine: EngineSpecification;
  spec: PressureBarSpecification;
}

/** One speed and plate angle. */
export interface SignalPoint extends TriedAt {
  point: PointResult;
  /** Pressure behind one plate: mean, and peak to peak [Pa]. */
  mean: number;
  swing: number;
  bar: reading.Reading;
  alone: reading.Reading;
  /** From 10 to 90 % when all runners step from the mean here to the day's pressure [s]; infinite if not watched so long. */
  lag: number;
  /** With the bar fitted, all cylinders solved, and what the sensor then reads. */
  cycle: JoinedCycle;
  joined: JoinedReading;
  /** Of one runner alone: window less true mean, what ten degrees of window move it by [Pa]. */
  windowOffset: number;
  windowSlope: number;
  /** Of one runner alone: ripple behind the filter [Pa], and the filter that the bar is worth [s]. */
  filtered: number;
  filterWorth: number;
}

/** Behind the plate: the first cell of the pipe that follows it. */
export const TAPPING: Station = { name: 'tapping', duct: 'runner', share: 0 };
/**
 * Cells of this study at least [m]. Against those of a sweep the hill-climb four's mean behind the plate moves by
 * 0.05 kPa and its swing by 0.36 kPa of 68, at 1000 rpm and 10 deg.
 */
const CELLS = { intake: 0.04, exhaust: 0.1 };
/** Change from cycle to cycle at which a point has settled here [-]; the finest mesh asks a third of it. */
const ALIKE = 0.003;
/** How long a step is watched [s]. */
export const WATCHED = 2;
/** By how much the crank window is moved to see what that does [deg]. */
const WINDOW_MOVED = 10;

/** A run of the solver and the pressure behind its plate. */
export interface TappedRun {
  speed: number;
  angle: number;
  outcome: PointOutcome;
  history?: number[];
}

/** Every speed at every angle. */
export async function tappedRuns(
  { engine, spec }: SignalQuestion,
  computer: Computer,
  observer: SweepObserver,
): Promise<TappedRun[]> {
  const runs = spec.speeds.flatMap((speed) => spec.angles.map((angle) => ({ speed, angle })));
  observer.onTotal?.(runs.length);
  const stations = [TAPPING];
  return Promise.all(
    runs.map(async ({ speed, angle }): Promise<TappedRun> => {
      const job = { engine: throttled(engine, angle), speed, stations };
      const trace = await computer.task('trace', job);
      const outcome: PointOutcome = 'failure' in trace ? trace : trace.point;
      observer.onPoint?.(0, speed, outcome);
      if (!('point' in trace)) return { speed, angle, outcome };
      const history = historyOf(trace.crankAngle, trace.stations[0]!.pressure);
      return { speed, angle, outcome, history };
    }),
  );
}

export function throttled(engine: EngineSpecification, angle: number): EngineSpecification {
  const { intake, numerics } = engine;
  const throttle = { ...intake.throttle, angle };
  return { ...engine, intake: { ...intake, throttle }, numerics: coarse(numerics) };
}

/** Numerics that are enough for a pressure signal. */
export function coarse(numerics: NumericsSpecification): NumericsSpecification {
  return {
    ...numerics,
    intakeCell: Math.max(numerics.intakeCell, CELLS.intake),
    exhaustCell: Math.max(numerics.exhaustCell, CELLS.exhaust),
    settle: Math.max(numerics.settle, ALIKE),
  };
}

export async function signalPoint(
  known: Pick<SignalPoint, 'speed' | 'angle' | 'history' | 'point'>,
  { engine, spec }: SignalQuestion,
  computer: Computer,
): Promise<SignalPoint | PointFailure> {
  const { history, speed, angle } = known;
  const own = barOf(spec);
  const mean = reading.mean(history);
  const gas = airInHoses(engine.ambient, mean);
  const [frequency, cylinders] = [speed / 120, engine.cylinder.count];
  const job = { history, gas, frequency, cylinders };
  const [bar, alone] = (await computer.task('readings', [
    { ...job, bar: own, shifts: shiftsOf(spec.hoses, cylinders) },
    { ...job, bar: aloneOf(own), shifts: [0] },
  ])) as [reading.Reading, reading.Reading];
  const swing = reading.swing(history);
  const fitted = withBar(throttled(engine, angle), spec, speed, mean);
  const cycle = await computer.task('joined', { engine: fitted, speed });
  if ('failure' in cycle) return cycle;
  const joined = readingOf(cycle, fitted.intake.bars![0]!);
  const open = engine.intake.feed.pressure;
  const between = airInHoses(engine.ambient, (mean + open) / 2);
  const { lag } = stepAnswer(own, mean, open, between, cylinders * frequency, WATCHED);
  return { ...known, frequency, gas, mean, swing, bar, alone, cycle, joined, lag, ...onOne() };

  /** What window and filter make of one runner alone. */
  function onOne() {
    const { sensor } = alone.marched;
    const { from, to } = spec.window;
    const window = reading.windowMean(sensor, spec.window);
    const moved = { from: from + WINDOW_MOVED, to: to + WINDOW_MOVED };
    return {
      windowOffset: window - mean,
      windowSlope: reading.windowMean(sensor, moved) - window,
      filtered: reading.filteredRipple(sensor, spec.filter, frequency),
      filterWorth: reading.filterFor(sensor, bar.ripple, frequency),
    };
  }
}

/** Air that a cylinder takes in a cycle [kg]. */
export function airOf({ ambient, cylinder }: EngineSpecification, point: PointResult): number {
  const density = moistAirDensity(ambient.pressure, ambient.temperature, ambient.relativeHumidity);
  return point.volumetricEfficiency * density * sweptVolume(cylinder);
}
