/**
 * What the pressure sensor sees, over speed and plate angle. The pressure behind one plate comes from the
 * solver; the other runners have the same a firing later, and no hose acts back on them.
 */
import { marchedCycle, type StepAnswer, stepAnswer } from '../../acoustics/barMarches.ts';
import type { PressureBar } from '../../acoustics/pressureBar.ts';
import { sweptVolume } from '../../cylinder/crank.ts';
import type { PointResult } from '../../engine/point.ts';
import type { Station } from '../../engine/trace.ts';
import { ComputationError } from '../../errors.ts';
import { moistAirDensity } from '../../gas/atmosphere.ts';
import type { EngineSpecification, PressureBarSpecification } from '../../specification.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import type { SweepObserver } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import { airInHoses, aloneOf, barOf, shiftsOf } from './hoses.ts';
import { type LoadSense, loadSense } from './load.ts';
import * as reading from './reading.ts';
import {
  type Search,
  type Step,
  searchBars,
  type TriedAt,
  type TriedBar,
  triedBar,
  withVolumes,
} from './search.ts';

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
  /** Gas out of one runner into its hose and back, over the air of its cylinder [-]. */
  crossing: number;
  /** Of one runner alone: window less true mean, what ten degrees of window move it by [Pa]. */
  windowOffset: number;
  windowSlope: number;
  /** Of one runner alone: ripple behind the filter [Pa], and the filter that the bar is worth [s]. */
  filtered: number;
  filterWorth: number;
}

/** One plate further open than the others at idle. */
export interface PlateError {
  /** Mean pressure of the wider plate's runner over the others' [Pa], and air over theirs, less one [-]. */
  pressure: number;
  air: number;
  /** Air that leaves it by the bar, over its cylinder's, and what each other gets, over its own [-]. */
  given: number;
  got: number;
  /** Sum of what all hoses bring, over what crosses [-]. */
  imbalance: number;
}

export interface SignalStudy {
  spec: PressureBarSpecification;
  bar: PressureBar;
  outcomes: PointOutcome[];
  points: SignalPoint[];
  step: Step;
  answer: StepAnswer;
  plateError?: PlateError;
  volumes: TriedBar[];
  search: Search;
  /** The best of the search in time, at the point where its ripple is then worst. */
  confirmed?: Confirmed;
  load: LoadSense[];
}

/** A bar in time, at its worst point. */
export interface Confirmed extends reading.Reading {
  worst: TriedAt;
}

/** Behind the plate: the first cell of the pipe that follows it. */
const TAPPING: Station = { name: 'tapping', duct: 'runner', share: 0 };
/**
 * Cells of this study at least [m]. Against those of a sweep the mean behind the plate moves by 0.3 kPa and
 * its swing by 1.2 kPa of 67, at 1000 rpm and the same plate.
 */
const CELLS = { intake: 0.04, exhaust: 0.1 };
/** Change from cycle to cycle at which a point has settled here [-]; the finest mesh asks a third of it. */
const ALIKE = 0.003;
/** How many points of each speed the search looks at. */
const HARDEST = 2;
/** By how much the crank window is moved to see what that does [deg]. */
const WINDOW_MOVED = 10;

export async function signalStudy(
  question: SignalQuestion,
  computer: Computer,
  observer: SweepObserver = {},
): Promise<SignalStudy> {
  const { spec, engine } = question;
  const runs = runsOf(spec);
  observer.onTotal?.(runs.length);
  const traces = await Promise.all(
    runs.map(async ({ speed, angle }) => {
      const stations = [TAPPING];
      const trace = await computer.task('trace', {
        engine: throttled(engine, angle),
        speed,
        stations,
      });
      const outcome: PointOutcome = 'failure' in trace ? trace : trace.point;
      observer.onPoint?.(0, speed, outcome);
      const history = 'failure' in trace ? undefined : reading.historyOf(trace);
      return { speed, angle, outcome, history };
    }),
  );
  const off = traces.pop()!;
  const known = traces.flatMap(({ outcome, history, ...at }) =>
    isFailure(outcome) || !history
      ? []
      : [signalPoint({ ...at, history, point: outcome }, question)],
  );
  const outcomes = [...traces, off].map(({ outcome }) => outcome);
  const failed = outcomes.find(isFailure);
  if (known.length === 0 && failed) throw new ComputationError(failed.failure);
  return concluded(question, known, outcomes, off);
}

/** Every speed at every angle, and idle with one plate further open. */
function runsOf({ speeds, angles, plateError }: PressureBarSpecification) {
  const table = speeds.flatMap((speed) => angles.map((angle) => ({ speed, angle })));
  return [...table, { speed: speeds[0]!, angle: Math.min(angles[0]! + plateError, 90) }];
}

function throttled(engine: EngineSpecification, angle: number): EngineSpecification {
  const { intake, numerics } = engine;
  return {
    ...engine,
    intake: { ...intake, throttle: { ...intake.throttle, angle } },
    numerics: {
      ...numerics,
      intakeCell: Math.max(numerics.intakeCell, CELLS.intake),
      exhaustCell: Math.max(numerics.exhaustCell, CELLS.exhaust),
      settle: Math.max(numerics.settle, ALIKE),
    },
  };
}

type Known = Pick<SignalPoint, 'speed' | 'angle' | 'history' | 'point'>;

function signalPoint(known: Known, { engine, spec }: SignalQuestion): SignalPoint {
  const { history, speed, point } = known;
  const bar = barOf(spec);
  const mean = reading.mean(history);
  const gas = airInHoses(engine.ambient, mean);
  const cycle = { frequency: speed / 120, cylinders: engine.cylinder.count };
  const joined = reading.readingOf(bar, history, shiftsOf(spec.hoses, cycle.cylinders), cycle, gas);
  const alone = reading.readingOf(aloneOf(bar), history, [0], cycle, gas);
  const sensor = alone.marched.sensor;
  const { from, to } = spec.window;
  const moved = { from: from + WINDOW_MOVED, to: to + WINDOW_MOVED };
  return {
    ...known,
    frequency: cycle.frequency,
    gas,
    mean,
    swing: reading.swing(history),
    bar: joined,
    alone,
    crossing: joined.marched.out[0]! / airOf(engine, point),
    windowOffset: reading.windowMean(sensor, spec.window) - mean,
    windowSlope: reading.windowMean(sensor, moved) - reading.windowMean(sensor, spec.window),
    filtered: reading.filteredRipple(sensor, spec.filter, cycle.frequency),
    filterWorth: reading.filterFor(sensor, joined.ripple, cycle.frequency),
  };
}

/** Air that a cylinder takes in a cycle [kg]. */
function airOf({ ambient, cylinder }: EngineSpecification, point: PointResult): number {
  const density = moistAirDensity(ambient.pressure, ambient.temperature, ambient.relativeHumidity);
  return point.volumetricEfficiency * density * sweptVolume(cylinder);
}

type Off = { outcome: PointOutcome; history: number[] | undefined };

function concluded(
  question: SignalQuestion,
  points: SignalPoint[],
  outcomes: PointOutcome[],
  off: Off,
): SignalStudy {
  const { spec, engine } = question;
  const bar = barOf(spec);
  const cylinders = engine.cylinder.count;
  const shifts = shiftsOf(spec.hoses, cylinders);
  const step = stepOf(points, engine, cylinders);
  const asked = { shifts, points: hardest(points, shifts), step, mostLag: spec.mostLag };
  const search = searchBars({ bar, ...asked });
  const { best } = search;
  const plateError = plateErrorOf(question, points[0], off);
  const cycle = (frequency: number) => ({ frequency, cylinders });
  const confirmed = (of: PressureBar) => {
    const all = points.map((worst): Confirmed => {
      const { history, frequency, gas } = worst;
      return { ...reading.readingOf(of, history, shifts, cycle(frequency), gas), worst };
    });
    return all.reduce((worst, one) => (one.ripple > worst.ripple ? one : worst));
  };
  return {
    spec,
    bar,
    outcomes,
    points,
    step,
    answer: stepAnswer(bar, step.from, step.to, step.gas, step.frequency, WATCHED),
    ...(plateError && { plateError }),
    volumes: withVolumes(bar).map((one) => triedBar(one, asked)),
    search,
    ...(best && { confirmed: confirmed(best.bar) }),
    load: loadOf(spec, points, engine.ambient.pressure),
  };
}

/** How long the bar's own step is watched [s]. */
const WATCHED = 2;

/** All runners step from the lowest mean there is to ambient, as when all plates are snapped open. */
function stepOf(
  points: readonly SignalPoint[],
  { ambient }: EngineSpecification,
  cylinders: number,
): Step {
  const from = Math.min(...points.map(({ mean }) => mean));
  const gas = airInHoses(ambient, (from + ambient.pressure) / 2);
  return { from, to: ambient.pressure, gas, frequency: cylinders * points[0]!.frequency };
}

/** At every speed the points at which the runners' mean at each instant, which a bar is left with, swings most. */
function hardest(points: readonly SignalPoint[], shifts: readonly number[]): SignalPoint[] {
  const speeds = [...new Set(points.map(({ speed }) => speed))];
  const left = new Map(points.map((point) => [point, swingTogether(point.history, shifts)]));
  return speeds.flatMap((speed) =>
    points
      .filter((point) => point.speed === speed)
      .sort((a, b) => left.get(b)! - left.get(a)!)
      .slice(0, HARDEST),
  );
}

function swingTogether(history: readonly number[], shifts: readonly number[]): number {
  const runners = shifts.map((late) => reading.shifted(history, late));
  return reading.swing(history.map((_, i) => reading.mean(runners.map((one) => one[i]!))));
}

function plateErrorOf(
  { engine, spec }: SignalQuestion,
  idle: SignalPoint | undefined,
  { outcome, history }: Off,
): PlateError | undefined {
  if (!idle || !history || isFailure(outcome) || spec.hoses < 2) return undefined;
  const cylinders = engine.cylinder.count;
  const histories = shiftsOf(spec.hoses, cylinders).map((late, i) =>
    reading.shifted(i === 0 ? history : idle.history, late),
  );
  const { frequency, gas } = idle;
  const { net, out } = marchedCycle(
    barOf(spec),
    histories,
    1 / frequency,
    gas,
    cylinders * frequency,
  );
  const others = net.slice(1);
  const sum = (values: readonly number[]) => values.reduce((all, one) => all + one, 0);
  return {
    pressure: reading.mean(history) - idle.mean,
    air: outcome.volumetricEfficiency / idle.point.volumetricEfficiency - 1,
    given: net[0]! / airOf(engine, outcome),
    got: -sum(others) / others.length / airOf(engine, idle.point),
    imbalance: sum(net) / sum(out),
  };
}

function loadOf(spec: PressureBarSpecification, points: readonly SignalPoint[], ambient: number) {
  return spec.speeds.flatMap((speed) => {
    const own = points.filter((point) => point.speed === speed);
    const told = own.map(({ angle, mean, point }) => ({
      angle,
      mean,
      efficiency: point.volumetricEfficiency,
    }));
    return told.length < 2 ? [] : [loadSense(speed, told, spec.resolution, ambient)];
  });
}
