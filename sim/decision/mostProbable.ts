/**
 * Unknowns from readings when each has a normal prior about zero: the least of
 *
 *   sum_j ((y_j - f_j(x)) / s_j)^2 + sum_k (x_k / d_k)^2
 *
 *   y  readings, each of standard uncertainty s   f  what unknowns x would read   d  prior deviations
 *
 * by Gauss-Newton steps, halved while they do not help. Covariance: the inverse of J'J / s^2 + 1 / d^2 there,
 * which is the posterior's to first order. The least itself is distributed as chi squared with as many
 * degrees of freedom as there are readings. Source: Gelman et al., Bayesian Data Analysis, ch. 14 (from memory).
 */
import { inverse, Matrix, solve } from 'ml-matrix';
import { square } from '../elementary/powers.ts';

export interface ReadingsQuestion {
  readings: readonly number[];
  /** Standard uncertainty of each reading. */
  noise: readonly number[];
  /** Prior standard deviation of each unknown. */
  deviations: readonly number[];
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
  let values = question.deviations.map(() => 0);
  let least = misfit(question, values);
  for (let i = 0; i < MOST_STEPS; i++) {
    const { information, pull } = linearised(question, values);
    const step = solve(information, Matrix.columnVector(pull)).getColumn(0);
    const taken = shortened(question, values, step, least);
    if (!taken) break;
    ({ values, least } = taken);
    if (taken.moved < STILL) break;
  }
  return { values, covariance: inverse(linearised(question, values).information), least };
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

/** Normal equations at x, by central differences. */
function linearised(question: ReadingsQuestion, x: readonly number[]) {
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
  const data = slopes.transpose();
  const priors = Matrix.diag(deviations.map((d) => 1 / square(d)));
  const pull = data.mmul(rest).getColumn(0);
  return {
    information: Matrix.add(data.mmul(slopes), priors),
    pull: pull.map((force, k) => force - x[k]! / square(deviations[k]!)),
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
