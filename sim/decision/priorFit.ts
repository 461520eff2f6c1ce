/**
 * Inputs fitted to a measured curve by least squares with priors. Unknown k is counted in prior
 * standard deviations from where the scenario has it, u_k; the estimate is the least of
 *
 *   sum_j ((y_j - s f_j(u) + phi t_j) / sigma)^2 + sum_k u_k^2 + ((s - 1) / d_s)^2 + ((phi - 1) / d_phi)^2
 *
 *   y_j  measured figure at speed j    f_j  computed figure    t_j  friction by correlation
 *   s    scale, phi  share of friction (comparison.ts), never asked for and always fitted along
 *   sigma  standard uncertainty of the measured figure
 *
 * that is the most probable value for normal errors and normal priors (Gelman et al., Bayesian Data
 * Analysis, ch. 14, from memory), found by Levenberg-Marquardt.
 *
 * Covariance: the inverse of the sum of J'J / sigma^2 and the priors, scaled up by chi^2 over the
 * degrees of freedom where that is above 1 (Birge's ratio); intervals by Student's t (JCGM 100:2008,
 * annex G). Errors of the model itself run together from speed to speed, which no such interval sees:
 * it says how well the run fixes the unknown if the model is right.
 */

import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { inverse, Matrix } from 'ml-matrix';
import { square } from '../elementary/powers.ts';
import type { MeasuredCurve } from './comparison.ts';

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

export interface FitQuestion {
  measured: MeasuredCurve;
  /** Friction at each speed before its share is fitted (comparison.ts); all 0 for none. */
  friction: readonly number[];
  unknowns: readonly Unknown[];
  /** Standard uncertainty of the measured figure, relative to its mean [-]. */
  noise: number;
}

/** The computed figure near a centre, by unknowns in prior standard deviations and speed. */
export interface PredictedNear {
  centre: readonly number[];
  at(u: readonly number[], j: number): number;
}

/** Prior standard deviations of the scale and, for torque, of the friction share; common practice, no source. */
export function nuisancesOf(figure: MeasuredCurve['figure']): readonly number[] {
  return figure === 'brake-torque' ? [0.15, 0.3] : [0.05];
}

/** Farthest from the start that an estimate is looked for [prior standard deviations]. */
const REACH = 4;

/** Bounds of an unknown [prior standard deviations from the start]. */
export function reach({ start, deviation, low, high }: Unknown): [number, number] {
  return [Math.max(-REACH, (low - start) / deviation), Math.min(REACH, (high - start) / deviation)];
}

export interface Fit {
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

/** A fit's figures by its parameters: the unknowns, then scale and share, in prior standard deviations. */
interface Problem {
  /** Standard uncertainty of a measured value. */
  sigma: number;
  /** Unknowns, and all parameters. */
  n: number;
  all: number;
  scaleOf(p: readonly number[]): number;
  shareOf(p: readonly number[]): number;
  predicted(p: readonly number[], j: number): number;
}

function problemOf({ measured, ...question }: FitQuestion, response: PredictedNear): Problem {
  const { friction, noise, unknowns } = question;
  const { values } = measured;
  const n = unknowns.length;
  const nuisances = nuisancesOf(measured.figure);
  const [scaleDeviation, shareDeviation = 0] = nuisances;
  const scaleOf = (p: readonly number[]) => 1 + p[n]! * scaleDeviation!;
  const shareOf = (p: readonly number[]) => 1 + (p[n + 1] ?? 0) * shareDeviation;
  return {
    sigma: (noise * values.reduce((sum, y) => sum + Math.abs(y), 0)) / values.length,
    n,
    all: n + nuisances.length,
    scaleOf,
    shareOf,
    predicted: (p, j) => scaleOf(p) * response.at(p.slice(0, n), j) - shareOf(p) * friction[j]!,
  };
}

/** Where each parameter may go: no farther than two steps from where the quadratic can be trusted. */
function boundsOf(
  unknowns: readonly Unknown[],
  centre: readonly number[],
  step: number,
  all: number,
) {
  const bounds = unknowns.map((unknown, k) => {
    const [low, high] = reach(unknown);
    return [Math.max(low, centre[k]! - 2 * step), Math.min(high, centre[k]! + 2 * step)];
  });
  const far = new Array<[number, number]>(all - unknowns.length).fill([-20, 20]);
  return [...bounds, ...far];
}

/** d(prediction)/d(parameter) over sigma, by central differences. */
function sensitivityAt(p: readonly number[], speeds: number, problem: Problem): Matrix {
  const slope = (j: number, k: number) => {
    const [up, down] = [1e-4, -1e-4].map((by) => p.map((x, l) => (l === k ? x + by : x)));
    return (problem.predicted(up!, j) - problem.predicted(down!, j)) / 2e-4 / problem.sigma;
  };
  const rows = Array.from({ length: speeds }, (_, j) => p.map((__, k) => slope(j, k)));
  return new Matrix(rows);
}

/** Fits, with values no farther than two steps from the centre of the prediction. */
export function leastSquares(question: FitQuestion, response: PredictedNear, step: number): Fit {
  const { speeds, values } = question.measured;
  const problem = problemOf(question, response);
  const { sigma, n, all, predicted } = problem;
  const m = speeds.length;
  const bounds = boundsOf(question.unknowns, response.centre, step, all);
  // Every parameter is in prior standard deviations, so its prior is one more row: 0 +- 1.
  const { parameterValues: p } = levenbergMarquardt(
    {
      x: Array.from({ length: m + all }, (_, i) => i),
      y: [...values.map((y) => y / sigma), ...new Array<number>(all).fill(0)],
    },
    // Rows are divided by their uncertainty here: version 5.1 of the library weighs its steps by
    // 1 / sigma^2 but judges them by sigma^2 where weights differ.
    (parameters) => (i) => (i < m ? predicted(parameters, i) / sigma : parameters[i - m]!),
    {
      initialValues: [...response.centre, ...new Array<number>(all - n).fill(0)],
      minValues: bounds.map(([low]) => low!),
      maxValues: bounds.map(([, high]) => high!),
      gradientDifference: 1e-4,
      centralDifference: true,
      maxIterations: 200,
      errorTolerance: 1e-9,
    },
  );
  const chi = values.reduce((sum, y, j) => sum + square((y - predicted(p, j)) / sigma), 0);
  const freedom = m - all;
  return {
    u: p.slice(0, n),
    scale: problem.scaleOf(p),
    share: problem.shareOf(p),
    sensitivity: sensitivityAt(p, m, problem),
    priors: new Array<number>(all).fill(1),
    misfit: chi / freedom,
    freedom,
  };
}

/** By what the residuals exceed the stated noise (Birge 1932); never below 1. */
export function birge({ misfit }: Fit): number {
  return Math.sqrt(Math.max(1, misfit));
}

/** Covariance of all parameters, in prior standard deviations; Birge's ratio not yet in it. */
export function covariance({ sensitivity, priors }: Fit): Matrix {
  const information = sensitivity.transpose().mmul(sensitivity);
  return inverse(Matrix.add(information, Matrix.diag(priors)));
}
