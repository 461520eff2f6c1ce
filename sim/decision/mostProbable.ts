/**
 * Unknowns from readings when each has a normal prior about zero: the least of
 *
 *   sum_j ((y_j - f_j(x)) / s_j)^2 + sum_k (x_k / d_k)^2
 *
 *   y  readings, each of standard uncertainty s   f  what unknowns x would read   d  prior deviations
 *
 * by Gauss-Newton steps, halved while they do not help. Covariance: P, the inverse of J'J / s^2 + 1 / d^2 there,
 * which is the posterior's to first order. The least itself is distributed as chi squared with as many
 * degrees of freedom as there are readings. Source: Gelman et al., Bayesian Data Analysis, ch. 14 (from memory).
 *
 * Unknowns that scale others are not fitted but considered: they stay at zero, for the most probable value of a
 * product is not its middle, and their doubt U is carried through, covariance P + S U S' with
 * S = -P J' Jc / s^2. Source: Schmidt's consider filter; Tapley, Schutz & Born, Statistical Orbit
 * Determination, ch. 6 (from memory).
 */
import { inverse, Matrix, solve } from 'ml-matrix';
import { square } from '../elementary/powers.ts';

export interface ReadingsQuestion {
  readings: readonly number[];
  /** Standard uncertainty of each reading. */
  noise: readonly number[];
  /** Prior standard deviation of each unknown. */
  deviations: readonly number[];
  /** Places of unknowns that are considered; none where absent. */
  considered?: readonly number[];
  /** What each reading would be. */
  model(unknowns: readonly number[]): number[];
}

export interface MostProbable {
  values: number[];
  covariance: Matrix;
  /** The least: chi squared of readings and priors together. */
  least: number;
}

const MOST_STEPS = 60;
const MOST_HALVINGS = 12;
/** Change in prior deviations below which a step no longer matters. */
const STILL = 1e-9;
/** Step of a slope in prior deviations; models may be tables, straight between their places. */
const SLOPE_STEP = 1e-2;

export function mostProbable(question: ReadingsQuestion): MostProbable {
  const { deviations, considered = [] } = question;
  const fitted = [...deviations.keys()].filter((k) => !considered.includes(k));
  let values = deviations.map(() => 0);
  let least = misfit(question, values);
  for (let i = 0; i < MOST_STEPS; i++) {
    const { information, pull } = linearised(question, values, fitted);
    const found = solve(information, Matrix.columnVector(pull)).getColumn(0);
    const step = deviations.map((_, k) => found[fitted.indexOf(k)] ?? 0);
    const taken = shortened(question, values, step, least);
    if (!taken) break;
    ({ values, least } = taken);
    if (taken.moved < STILL) break;
  }
  return { values, covariance: covarianceAt(question, values, fitted), least };
}

/** Covariance of all unknowns in their order. */
function covarianceAt(
  question: ReadingsQuestion,
  values: readonly number[],
  fitted: readonly number[],
): Matrix {
  const { deviations, considered = [] } = question;
  const { information, slopes } = linearised(question, values, fitted);
  const own = inverse(information);
  const whole = Matrix.zeros(values.length, values.length);
  fitted.forEach((k, i) => {
    fitted.forEach((l, j) => {
      whole.set(k, l, own.get(i, j));
    });
  });
  const data = slopes.subMatrixColumn([...fitted]).transpose();
  for (const c of considered) {
    const response = own.mmul(data).mmul(slopes.getColumnVector(c)).mul(-deviations[c]!);
    const moved = deviations.map((d, k) => {
      if (k === c) return d;
      return fitted.includes(k) ? response.get(fitted.indexOf(k), 0) : 0;
    });
    moved.forEach((x, k) => {
      moved.forEach((y, l) => {
        whole.set(k, l, whole.get(k, l) + x * y);
      });
    });
  }
  return whole;
}

/** The longest of the step and its halves that helps; undefined where none does. */
function shortened(
  question: ReadingsQuestion,
  from: readonly number[],
  step: readonly number[],
  least: number,
) {
  for (let h = 0, share = 1; h < MOST_HALVINGS; h++, share /= 2) {
    const values = from.map((x, k) => x + share * step[k]!);
    const found = misfit(question, values);
    const moved = Math.max(...step.map((s, k) => Math.abs((share * s) / question.deviations[k]!)));
    if (found < least || moved < STILL) return { values, least: Math.min(found, least), moved };
  }
  return undefined;
}

function misfit({ readings, noise, deviations, model }: ReadingsQuestion, x: readonly number[]) {
  const read = model(x);
  const data = readings.reduce((sum, y, j) => sum + square((y - read[j]!) / noise[j]!), 0);
  return deviations.reduce((sum, d, k) => sum + square(x[k]! / d), data);
}

/** Slopes of all readings over their noise, and normal equations of the fitted unknowns, by differences. */
function linearised(question: ReadingsQuestion, x: readonly number[], fitted: readonly number[]) {
  const { readings, noise, deviations, model } = question;
  const slopes = new Matrix(readings.length, x.length);
  for (const [k, d] of deviations.entries()) {
    const [up, down] = [SLOPE_STEP, -SLOPE_STEP].map((by) =>
      model(x.map((value, l) => (l === k ? value + by * d : value))),
    );
    const slope = readings.map((_, j) => (up![j]! - down![j]!) / (2 * SLOPE_STEP * d * noise[j]!));
    slopes.setColumn(k, slope);
  }
  const read = model(x);
  const rest = Matrix.columnVector(readings.map((y, j) => (y - read[j]!) / noise[j]!));
  const own = slopes.subMatrixColumn([...fitted]);
  const data = own.transpose();
  const priors = Matrix.diag(fitted.map((k) => 1 / square(deviations[k]!)));
  const pull = data.mmul(rest).getColumn(0);
  return {
    slopes,
    information: Matrix.add(data.mmul(own), priors),
    pull: pull.map((force, i) => force - x[fitted[i]!]! / square(deviations[fitted[i]!]!)),
  };
}

/** Standard deviation of a weighted sum of the unknowns. */
export function deviationOf(covariance: Matrix, weights: readonly number[]): number {
  const row = Matrix.rowVector([...weights]);
  return Math.sqrt(Math.max(row.mmul(covariance).mmul(row.transpose()).get(0, 0), 0));
}

/** Weights of what one of `count` unknowns from `first` on has above their mean, among `all`. */
export function aboveMean(first: number, count: number, one: number, all: number): number[] {
  return Array.from({ length: all }, (_, k) => {
    const among = k >= first && k < first + count ? 1 / count : 0;
    return (k === first + one ? 1 : 0) - among;
  });
}
