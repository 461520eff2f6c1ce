/**
 * At most three inputs fitted to a measured run, with how well the run fixes them.
 *
 * The most probable values for normal errors and priors are found by least squares (priorFit.ts). So
 * that it costs few runs of the gas, the prediction is replaced by the quadratic in the unknowns through
 * runs at a centre, a step either way along each unknown and one along each pair; the centre then moves
 * to the estimate and the step is halved, until the estimate stays.
 *
 * Refused: unknowns that the run cannot tell apart (identifiability.ts), and an unknown that it hardly
 * narrows against the prior.
 */
import type { EngineSpecification } from '../specification.ts';
import { isFailure, type PointOutcome, type PointRunner } from '../sweep/runner.ts';
import { type SweepObserver, sweep } from '../sweep/sweep.ts';
import { type Comparison, compared, type MeasuredCurve } from './comparison.ts';
import { correlationOf, indistinct, silent } from './identifiability.ts';
import {
  birge,
  covariance,
  type Fit,
  type FitQuestion,
  leastSquares,
  nuisancesOf,
  type PredictedNear,
  reach,
  type Unknown,
} from './priorFit.ts';
import { designSize, quadraticDesign, quadraticThrough } from './quadraticResponse.ts';
import { studentT } from './studentT.ts';

/** Most unknowns that one run can be asked for. */
export const MOST_UNKNOWNS = 3;

export interface CalibrationQuestion extends FitQuestion {
  /** The engine with those values of the unknowns. */
  engineAt(values: readonly number[]): EngineSpecification;
}

/** What the run says of one unknown. */
export interface FittedUnknown extends Unknown {
  value: number;
  /** Standard deviation after the fit, and the interval of 95 % confidence. */
  sigma: number;
  interval: readonly [number, number];
}

export interface Calibration {
  unknowns: FittedUnknown[];
  scale: number;
  frictionShare: number;
  /** Chi squared over the degrees of freedom; well above 1 the model does not explain the run. */
  misfit: number;
  /** Correlation of the estimates, [unknown][unknown]. */
  correlation: number[][];
  /** Prediction with the values found. */
  comparison: Comparison;
  /** Speeds left out because a point there failed or did not settle [rpm]. */
  leftOut: number[];
  /** Points computed. */
  points: number;
}

/** Why no values are given. */
export interface CalibrationRefusal {
  refused: string;
  points: number;
}

export function isRefusal(
  outcome: Calibration | CalibrationRefusal,
): outcome is CalibrationRefusal {
  return 'refused' in outcome;
}

/** Deviation after over deviation before, above which the data have said too little. */
const LEAST_NARROWING = 0.9;

const ROUNDS = 5;

/** Move of the centre at which it has stayed [prior standard deviations]. */
const STAYED = 0.05;

/** Fits. Throws nothing of its own: where values cannot be given, the reason is returned. */
export async function calibrate(
  asked: CalibrationQuestion,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<Calibration | CalibrationRefusal> {
  let question = asked;
  let centre = asked.unknowns.map(() => 0);
  let points = 0;
  for (let round = 0, step = 1; ; round++, step /= 2) {
    const early = refusalBefore(question, asked);
    if (early !== undefined) return { refused: early, points };
    points += designSize(asked.unknowns.length) * question.measured.speeds.length;
    const response = await responseAround(question, centre, step, runner, observer);
    question = response.question;
    const fewer = refusalBefore(question, asked);
    if (fewer !== undefined) return { refused: fewer, points };
    const fit = leastSquares(question, response, step);
    const doubt = refusalAfter(question, fit);
    if (doubt !== undefined) return { refused: doubt, points };
    const moved = Math.max(...fit.u.map((u, k) => Math.abs(u - centre[k]!)));
    centre = fit.u;
    if (moved > STAYED && round < ROUNDS - 1) continue;
    points += question.measured.speeds.length;
    const last = await computedAt(question, [centre], runner, observer);
    const leftOut = asked.measured.speeds.filter((x) => !last.question.measured.speeds.includes(x));
    return { ...calibration(last.question, fit, last.curves[0]!), leftOut, points };
  }
}

/** What forbids a fit; speeds whose points failed or did not settle are already left out. */
function refusalBefore(
  { measured, unknowns }: CalibrationQuestion,
  asked: CalibrationQuestion,
): string | undefined {
  const { length } = unknowns;
  if (length === 0 || length > MOST_UNKNOWNS) {
    return `${length} unknowns: one run is asked for one to ${MOST_UNKNOWNS}`;
  }
  const least = length + nuisancesOf(measured.figure).length + 3;
  const speeds = measured.speeds.length;
  if (speeds >= least) return undefined;
  const lost = asked.measured.speeds.length - speeds;
  const why = lost > 0 ? `, ${lost} more left out because points failed or did not settle` : '';
  return (
    `the run covers ${speeds} speeds of the scenario${why}; ` +
    `${length} unknowns need at least ${least}`
  );
}

/** The computed figure near a centre, at the speeds whose points are all sound. */
interface Response extends PredictedNear {
  question: CalibrationQuestion;
}

async function responseAround(
  question: CalibrationQuestion,
  wanted: readonly number[],
  step: number,
  runner: PointRunner,
  observer: SweepObserver,
): Promise<Response> {
  const centre = wanted.map((u, k) => {
    const [low, high] = reach(question.unknowns[k]!);
    return Math.min(Math.max(u, low + step), Math.max(low + step, high - step));
  });
  const design = quadraticDesign(centre, step);
  const { question: kept, curves } = await computedAt(question, design, runner, observer);
  return { question: kept, centre, at: quadraticThrough(centre, step, curves) };
}

/** The computed figure at rows of u, [row][speed], without speeds where a point is unsound. */
async function computedAt(
  question: CalibrationQuestion,
  rows: readonly (readonly number[])[],
  runner: PointRunner,
  observer: SweepObserver,
): Promise<{ question: CalibrationQuestion; curves: number[][] }> {
  const { measured, friction, unknowns, engineAt } = question;
  const engines = rows.map((row) =>
    engineAt(row.map((u, k) => unknowns[k]!.start + u * unknowns[k]!.deviation)),
  );
  const table = await sweep(engines, measured.speeds, runner, observer);
  const sound = (_: unknown, j: number) =>
    table.every((outcomes) => !isFailure(outcomes[j]!) && outcomes[j]!.settled);
  const { speeds, values } = measured;
  return {
    question: {
      ...question,
      measured: { ...measured, speeds: speeds.filter(sound), values: values.filter(sound) },
      friction: friction.filter(sound),
    },
    curves: table.map((outcomes) => computedFigure(measured, outcomes).filter(sound)),
  };
}

/** Indicated torque [N m] or volumetric efficiency [-] of each point; NaN where it failed. */
export function computedFigure(
  { figure }: Pick<MeasuredCurve, 'figure'>,
  outcomes: readonly PointOutcome[],
): number[] {
  return outcomes.map((outcome) => {
    if (isFailure(outcome)) return Number.NaN;
    return figure === 'brake-torque' ? outcome.indicatedTorque : outcome.volumetricEfficiency;
  });
}

/** What stands against giving values, or nothing. */
function refusalAfter({ unknowns }: CalibrationQuestion, fit: Fit): string | undefined {
  const names = unknowns.map(({ name }) => name);
  const alike = indistinct(names, fit.sensitivity);
  if (alike !== undefined) return alike;
  const after = covariance(fit);
  const wide = names.findIndex((_, k) => birge(fit) * Math.sqrt(after.get(k, k)) > LEAST_NARROWING);
  return wide < 0 ? undefined : silent(names[wide]!);
}

function calibration(
  { measured, friction, unknowns }: CalibrationQuestion,
  fit: Fit,
  computed: readonly number[],
): Omit<Calibration, 'points' | 'leftOut'> {
  const covariances = covariance(fit);
  const n = unknowns.length;
  const t = studentT(0.95, fit.freedom);
  const predicted = computed.map((value, j) => fit.scale * value - fit.share * friction[j]!);
  return {
    unknowns: unknowns.map((unknown, k) => {
      const { start, deviation, low, high } = unknown;
      const value = start + fit.u[k]! * deviation;
      const sigma = Math.sqrt(covariances.get(k, k)) * birge(fit) * deviation;
      const held = (x: number) => Math.min(high, Math.max(low, x));
      return {
        ...unknown,
        value,
        sigma,
        interval: [held(value - t * sigma), held(value + t * sigma)],
      };
    }),
    scale: fit.scale,
    frictionShare: fit.share,
    misfit: fit.misfit,
    correlation: correlationOf(covariances.subMatrix(0, n - 1, 0, n - 1)).to2DArray(),
    comparison: compared(measured, predicted, fit.scale),
  };
}
