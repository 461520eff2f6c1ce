/**
 * What the pressure sensor sees, over speed and plate angle: with the bar of the file in the solver's own network,
 * all cylinders solved. Other bars are tried on the pressure that runners have without one.
 */
import { type StepAnswer, stepAnswer } from '../../acoustics/barMarches.ts';
import * as reading from '../../acoustics/barReading.ts';
import type { Step, TriedAt, TriedBar } from '../../acoustics/barTrial.ts';
import type { PressureBar } from '../../acoustics/pressureBar.ts';
import { airInHoses } from '../../acoustics/restingAir.ts';
import { ComputationError } from '../../errors.ts';
import type { PressureBarSpecification } from '../../fittings.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import type { SweepObserver } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import { isBoosted } from '../length/freeFeed.ts';
import { barOf, shiftsOf } from './hoses.ts';
import { type LoadSense, loadSense } from './load.ts';
import { type PlateError, plateErrorAt } from './plateError.ts';
import { type Search, searchBars, tryAll, withVolumes } from './search.ts';
import {
  type SignalPoint,
  type SignalQuestion,
  signalPoint,
  tappedRuns,
  WATCHED,
} from './tapped.ts';

export interface SignalStudy {
  spec: PressureBarSpecification;
  cylinders: number;
  /** Whether mouths breathe from a pressurised box. */
  boosted: boolean;
  bar: PressureBar;
  outcomes: PointOutcome[];
  points: SignalPoint[];
  step: Step;
  answer: StepAnswer;
  plateError?: PlateError;
  volumes: TriedBar[];
  search: Search;
  /** Points at which the search tried bars. */
  triedAt: SignalPoint[];
  /** The best of the search in time, at the point where its ripple is then worst. */
  confirmed?: Confirmed;
  load: LoadSense[];
}

/** A bar in time, at its worst point. */
export interface Confirmed extends reading.Reading {
  worst: TriedAt;
}

/** How many points of each speed the search looks at. */
const HARDEST = 2;

export async function sensorStudy(
  question: SignalQuestion,
  computer: Computer,
  observer: SweepObserver = {},
): Promise<SignalStudy> {
  const runs = await tappedRuns(question, computer, observer);
  const outcomes = runs.map(({ outcome }) => outcome);
  const found = await Promise.all(
    runs.flatMap(({ outcome, history, ...at }) => {
      if (isFailure(outcome) || !history) return [];
      return [signalPoint({ ...at, history, point: outcome }, question, computer)];
    }),
  );
  const points = found.flatMap((one) => ('failure' in one ? [] : [one]));
  outcomes.push(...found.map((one) => ('failure' in one ? one : one.cycle.point)));
  const failed = outcomes.find(isFailure);
  if (points.length === 0 && failed) throw new ComputationError(failed.failure);
  return concluded(question, { points, outcomes }, computer);
}

interface Ran {
  points: SignalPoint[];
  outcomes: PointOutcome[];
}

async function concluded(
  question: SignalQuestion,
  { points, outcomes }: Ran,
  computer: Computer,
): Promise<SignalStudy> {
  const { spec, engine } = question;
  const bar = barOf(spec);
  const cylinders = engine.cylinder.count;
  const shifts = shiftsOf(spec.hoses, cylinders);
  const step = stepOf(points, engine);
  const triedAt = hardest(points, shifts);
  const tried = triedAt.map(({ speed, angle, history, frequency, gas }): TriedAt => {
    return { speed, angle, history, frequency, gas };
  });
  const trial = { shifts, points: tried, step, mostLag: spec.mostLag };
  const search = await searchBars(bar, trial, computer);
  const { plateError, outcomes: more } = await plateErrorAt(question, points[0], computer);
  const { best } = search;
  return {
    boosted: isBoosted(engine),
    ...{ spec, cylinders, bar, points, step, search, triedAt },
    outcomes: [...outcomes, ...more],
    answer: stepAnswer(bar, step.from, step.to, step.gas, step.frequency, WATCHED),
    ...(plateError && { plateError }),
    volumes: await tryAll(withVolumes(bar), trial, computer),
    ...(best && { confirmed: await confirmed(best.bar, points, question, computer) }),
    load: loadOf(spec, points, engine.ambient.pressure),
  };
}

/** A bar in time at every point; the worst. */
async function confirmed(
  bar: PressureBar,
  points: readonly SignalPoint[],
  { spec, engine }: SignalQuestion,
  computer: Computer,
): Promise<Confirmed> {
  const cylinders = engine.cylinder.count;
  const shifts = shiftsOf(spec.hoses, cylinders);
  const found = await Promise.all(
    points.map(async (worst): Promise<Confirmed> => {
      const { history, frequency, gas } = worst;
      const [one] = await computer.task('readings', [
        { bar, history, shifts, gas, frequency, cylinders },
      ]);
      return { ...one!, worst };
    }),
  );
  return found.reduce((worst, one) => (one.ripple > worst.ripple ? one : worst));
}

/** All runners step from the lowest mean there is to what feeds them, as when all plates are snapped open. */
function stepOf(points: readonly SignalPoint[], engine: EngineSpecification): Step {
  const { ambient, cylinder, intake } = engine;
  const to = intake.feed.pressure;
  const from = Math.min(...points.map(({ mean }) => mean));
  const gas = airInHoses(ambient, (from + to) / 2);
  return { from, to, gas, frequency: cylinder.count * points[0]!.frequency };
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
