/**
 * At most three inputs fitted to a measured run, with how well the run fixes them.
 *
 * Unknown k is counted in prior standard deviations from where the scenario has it, u_k. The estimate
 * is the least of
 *
 *   sum_j ((y_j - s f_j(u) + phi t_j) / sigma)^2 + sum_k u_k^2 + ((s - 1) / d_s)^2 + ((phi - 1) / d_phi)^2
 *
 *   y_j  measured figure at speed j    f_j  computed figure    t_j  friction by correlation
 *   s    scale, phi  share of friction (comparison.ts), never asked for and always fitted along
 *   sigma  standard uncertainty of the measured figure
 *
 * that is the most probable value for normal errors and normal priors (Gelman et al., Bayesian Data
 * Analysis, ch. 14, from memory), found by Levenberg-Marquardt. So that it costs few runs of the gas,
 * f is replaced by the quadratic in u through runs at a centre, a step either way along each unknown
 * and one along each pair; the centre then moves to the estimate and the step is halved, until the
 * estimate stays.
 *
 * Covariance: the inverse of the sum of J'J / sigma^2 and the priors, scaled up by chi^2 over the
 * degrees of freedom where that is above 1 (Birge's ratio); intervals by Student's t (JCGM 100:2008,
 * annex G). Errors of the model itself run together from speed to speed, which no such interval sees:
 * it says how well the run fixes the unknown if the model is right.
 *
 * Refused: unknowns that the run cannot tell apart (identifiability.ts), and an unknown that it hardly
 * narrows against the prior.
 */
import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { inverse, Matrix } from 'ml-matrix';
import type { EngineSpecification } from '../specification.ts';
import { isFailure, type PointOutcome, type PointRunner } from '../sweep/runner.ts';
import { type SweepObserver, sweep } from '../sweep/sweep.ts';
import { type Comparison, compared, type MeasuredCurve } from './comparison.ts';
import { correlationOf, indistinct, silent } from './identifiability.ts';
import { designSize, quadraticDesign, quadraticThrough } from './quadraticResponse.ts';

/** Most unknowns that one run can be asked for. */
export const MOST_UNKNOWNS = 3;

/** An input to fit. */
export interface Unknown {
  name: string;
  /** Where the scenario has it, and how far it may be off: prior mean and standard deviation. */
  start: number;
  deviation: number;
  /** Values that make sense, start within. */
  low: number;
  high: number;
}

export interface CalibrationQuestion {
  measured: MeasuredCurve;
  /** Friction at each speed before its share is fitted (comparison.ts); all 0 for none. */
  friction: readonly number[];
  unknowns: readonly Unknown[];
  /** The engine with those values of the unknowns. */
  engineAt(values: readonly number[]): EngineSpecification;
  /** Standard uncertainty of the measured figure, relative to its mean [-]. */
  noise: number;
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

/** Prior standard deviations of scale and friction share; common practice, no source. */
const NUISANCE = {
  'brake-torque': { scale: 0.15, friction: 0.3 },
  'volumetric-efficiency': { scale: 0.05, friction: 0 },
} as const;

/** Deviation after over deviation before, above which the data have said too little. */
const LEAST_NARROWING = 0.9;

const ROUNDS = 5;

/** Move of the centre at which it has stayed [prior standard deviations]. */
const STAYED = 0.05;

/** Farthest from the start that an estimate is looked for [prior standard deviations]. */
const REACH = 4;

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
  const nuisances = measured.figure === 'brake-torque' ? 2 : 1;
  const least = length + nuisances + 3;
  const speeds = measured.speeds.length;
  if (speeds >= least) return undefined;
  const lost = asked.measured.speeds.length - speeds;
  const why = lost > 0 ? `, ${lost} more left out because points failed or did not settle` : '';
  return (
    `the run covers ${speeds} speeds of the scenario${why}; ` +
    `${length} unknowns need at least ${least}`
  );
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

/** The computed figure near a centre, by speed. */
interface Response {
  /** The question at the speeds whose points are all sound. */
  question: CalibrationQuestion;
  centre: readonly number[];
  at(u: readonly number[], j: number): number;
}

/** Bounds of an unknown [prior standard deviations from the start]. */
function reach({ start, deviation, low, high }: Unknown): [number, number] {
  return [Math.max(-REACH, (low - start) / deviation), Math.min(REACH, (high - start) / deviation)];
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

interface Fit {
  u: number[];
  scale: number;
  share: number;
  /** Sensitivity of the prediction [speed][unknown, scale, share] over sigma. */
  sensitivity: Matrix;
  /** 1 / prior variance of each. */
  priors: number[];
  misfit: number;
  freedom: number;
}

function leastSquares(question: CalibrationQuestion, response: Response, step: number): Fit {
  const { measured, friction, unknowns } = question;
  const { speeds, values } = measured;
  const { scale: scaleDeviation, friction: shareDeviation } = NUISANCE[measured.figure];
  const sigma = (question.noise * values.reduce((sum, y) => sum + Math.abs(y), 0)) / values.length;
  const n = unknowns.length;
  const m = speeds.length;
  // Every parameter is in prior standard deviations, so its prior is one more row: 0 +- 1.
  const nuisances = shareDeviation > 0 ? [scaleDeviation, shareDeviation] : [scaleDeviation];
  const all = n + nuisances.length;
  const predicted = (p: readonly number[], j: number) => {
    const scale = 1 + p[n]! * scaleDeviation;
    const share = 1 + (p[n + 1] ?? 0) * shareDeviation;
    return scale * response.at(p.slice(0, n), j) - share * friction[j]!;
  };
  const bounds = unknowns.map((unknown, k) => {
    const [low, high] = reach(unknown);
    // No farther than the quadratic can be trusted.
    return [
      Math.max(low, response.centre[k]! - 2 * step),
      Math.min(high, response.centre[k]! + 2 * step),
    ];
  });
  const far = nuisances.map(() => [-20, 20]);
  const { parameterValues: p } = levenbergMarquardt(
    {
      x: Array.from({ length: m + all }, (_, i) => i),
      y: [...values.map((y) => y / sigma), ...new Array<number>(all).fill(0)],
    },
    // Rows are divided by their uncertainty here: version 5.1 of the library weighs its steps by
    // 1 / sigma^2 but judges them by sigma^2 where weights differ.
    (parameters) => (i) => (i < m ? predicted(parameters, i) / sigma : parameters[i - m]!),
    {
      initialValues: [...response.centre, ...nuisances.map(() => 0)],
      minValues: [...bounds, ...far].map(([low]) => low!),
      maxValues: [...bounds, ...far].map(([, high]) => high!),
      gradientDifference: 1e-4,
      centralDifference: true,
      maxIterations: 200,
      errorTolerance: 1e-9,
    },
  );
  const slope = (j: number, k: number) => {
    const [up, down] = [1e-4, -1e-4].map((by) => p.map((x, l) => (l === k ? x + by : x)));
    return (predicted(up!, j) - predicted(down!, j)) / 2e-4 / sigma;
  };
  const sensitivity = new Matrix(
    speeds.map((_, j) => Array.from({ length: all }, (__, k) => slope(j, k))),
  );
  const chi = values.reduce((sum, y, j) => sum + ((y - predicted(p, j)) / sigma) ** 2, 0);
  const freedom = m - all;
  return {
    u: p.slice(0, n),
    scale: 1 + p[n]! * scaleDeviation,
    share: 1 + (p[n + 1] ?? 0) * shareDeviation,
    sensitivity,
    priors: new Array<number>(all).fill(1),
    misfit: chi / freedom,
    freedom,
  };
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

/** By what the residuals exceed the stated noise (Birge 1932); never below 1. */
function birge({ misfit }: Fit): number {
  return Math.sqrt(Math.max(1, misfit));
}

/** Covariance of all parameters, in prior standard deviations; Birge's ratio not yet in it. */
function covariance({ sensitivity, priors }: Fit): Matrix {
  const information = sensitivity.transpose().mmul(sensitivity);
  return inverse(Matrix.add(information, Matrix.diag(priors)));
}

function calibration(
  { measured, friction, unknowns }: CalibrationQuestion,
  fit: Fit,
  computed: readonly number[],
): Omit<Calibration, 'points' | 'leftOut'> {
  const covariances = covariance(fit);
  const n = unknowns.length;
  const t = tQuantile(0.975, fit.freedom);
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
