/** A measured run beside the prediction of a scenario, and what it says of a few unknowns. */
import { sweptVolume } from '../../cylinder/crank.ts';
import {
  type Calibration,
  type CalibrationRefusal,
  calibrate,
  computedFigure,
} from '../../decision/calibration.ts';
import {
  alignedTo,
  type Comparison,
  comparison,
  frictionCurve,
} from '../../decision/comparison.ts';
import { FEWEST_ROWS, type MeasuredRun } from '../../scenario/measuredRun.ts';
import { readScenario } from '../../scenario/read.ts';
import {
  engineWith,
  type ScenarioUnknown,
  scenarioUnknowns,
  type UnknownName,
} from '../../scenario/unknowns.ts';
import { isFailure, type PointOutcome, type PointRunner } from '../../sweep/runner.ts';
import { type SweepObserver, sweep, withLength } from '../../sweep/sweep.ts';
import { inScenarioAir } from './air.ts';

export interface MeasuredQuestion {
  /** The scenario file and its name. */
  text: string;
  name: string;
  run: MeasuredRun;
  /** Trumpet length of the run [m]. */
  length: number;
  /** What to fit; empty to compare only. */
  fit: readonly UnknownName[];
  /** Standard uncertainty of a measured figure, relative to the mean [-]. */
  noise?: number;
}

/** Repeatability of a figure off a good engine dyno; common practice, no source. */
const USUAL_NOISE = 0.01;

export interface MeasuredStudy {
  run: MeasuredRun;
  length: number;
  /** What the figures were multiplied by to come to the air of the scenario, and why. */
  air: { factor: number; words: string };
  comparison: Comparison;
  /** Speeds left out because their point failed or did not settle [rpm]. */
  leftOut: number[];
  unknowns: ScenarioUnknown[];
  /** Absent where nothing was to be fitted. */
  calibration?: Calibration | CalibrationRefusal;
  /** The points of the scenario itself at the speeds compared. */
  outcomes: PointOutcome[];
}

/** Why a run cannot be compared at all. */
export interface NoComparison {
  problem: string;
}

/** Compares, and fits where asked. */
export async function measuredStudy(
  question: MeasuredQuestion,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<MeasuredStudy | NoComparison> {
  const { text, name, length, fit, noise = USUAL_NOISE } = question;
  const scenario = readScenario(text, name);
  const { run, ...air } = inScenarioAir(question.run, scenario.engine.ambient);
  const { figure } = run;
  const aligned = alignedTo(scenario.speeds, run);
  if (aligned.speeds.length < FEWEST_ROWS) return { problem: tooFew(aligned.speeds.length) };
  const unknowns = scenarioUnknowns(text, name, fit);
  const engineAt = (values: readonly number[]) =>
    withLength(engineWith(text, name, unknowns, values), length);
  const engine = engineAt(unknowns.map(({ start }) => start));
  const [outcomes] = await sweep([engine], aligned.speeds, runner, observer);
  const sound = (_: unknown, j: number) => !isFailure(outcomes![j]!) && outcomes![j]!.settled;
  const measured = {
    figure,
    speeds: aligned.speeds.filter(sound),
    values: aligned.values.filter(sound),
  };
  if (measured.speeds.length < FEWEST_ROWS) return { problem: tooFew(measured.speeds.length) };
  const friction = frictionCurve(measured, engine.cylinder.count * sweptVolume(engine.cylinder));
  const computed = computedFigure(run, outcomes!).filter(sound);
  const compared = {
    run,
    length,
    air,
    comparison: comparison(measured, computed, friction),
    leftOut: aligned.speeds.filter((x) => !measured.speeds.includes(x)),
    unknowns,
    outcomes: outcomes!,
  };
  if (unknowns.length === 0) return compared;
  const asked = { measured, friction, unknowns, engineAt, noise };
  return { ...compared, calibration: await calibrate(asked, runner, observer) };
}

function tooFew(count: number): string {
  return (
    `the run and the scenario share ${count} speeds whose points settle; a comparison needs at ` +
    `least ${FEWEST_ROWS}: bring speeds of the scenario into the range of the run`
  );
}
