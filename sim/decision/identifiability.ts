/**
 * Whether a run can tell unknowns apart, judged without priors. The columns of the sensitivity matrix
 * first lose all that scale and friction can imitate (their projection; in the normal equations, the
 * Schur complement). Two unknowns are taken for one where the correlation of their estimates is above
 * 0.95 in absolute value (common practice, no source), and several where a condition index of the
 * columns, each scaled to length 1, is above 30 (Belsley, Kuh & Welsch, Regression Diagnostics, 1980,
 * from memory).
 */
import { inverse, Matrix, SingularValueDecomposition } from 'ml-matrix';

const MOST_CORRELATION = 0.95;
const MOST_CONDITION_INDEX = 30;

/** Length of a column below which the run does not feel the unknown at all. */
const FELT = 1e-6;

/** Condition index beyond which the normal equations are not worth inverting. */
const SINGULAR = 1e6;

/**
 * @param names of the unknowns, whose columns come first
 * @param sensitivity [speed][unknown, then scale and friction share], over the uncertainty
 * @returns why they cannot be told apart, or undefined where they can
 */
export function indistinct(names: readonly string[], sensitivity: Matrix): string | undefined {
  const n = names.length;
  const free = withoutNuisances(sensitivity, n);
  const lengths = names.map((_, k) => free.getColumnVector(k).norm());
  const unfelt = lengths.findIndex((length) => !(length > FELT));
  if (unfelt >= 0) return silent(names[unfelt]!);
  return n > 1 ? alike(names, scaledColumns(free, lengths)) : undefined;
}

/** An unknown that the run says too little about. */
export function silent(name: string): string {
  return (
    `the run says too little about ${name}: its doubt after the fit is hardly smaller than before; ` +
    'leave it as it is, or measure it on the engine'
  );
}

function alike(names: readonly string[], unit: Matrix): string | undefined {
  const values = new SingularValueDecomposition(unit).diagonal;
  const index = Math.max(...values) / Math.min(...values);
  const gram = unit.transpose().mmul(unit);
  const worst = index > SINGULAR ? closestPair(gram) : closestPair(correlationOf(inverse(gram)));
  const told =
    `the run cannot tell ${names[worst.k]} and ${names[worst.l]} apart: ` +
    'at these speeds they bend the curve alike';
  const remedy = 'fit one of them, measure the other, or add a run with trumpets of another length';
  if (worst.size > MOST_CORRELATION) {
    return `${told} (correlation ${worst.size.toFixed(3)}, limit ${MOST_CORRELATION}); ${remedy}`;
  }
  if (index <= MOST_CONDITION_INDEX) return undefined;
  return `${told} (condition index ${index.toFixed(0)}, limit ${MOST_CONDITION_INDEX}); ${remedy}`;
}

/** The largest entry off the diagonal. */
function closestPair(matrix: Matrix): { k: number; l: number; size: number } {
  let worst = { k: 0, l: 1, size: -1 };
  for (let k = 0; k < matrix.rows; k++) {
    for (let l = k + 1; l < matrix.rows; l++) {
      const size = Math.abs(matrix.get(k, l));
      if (size > worst.size) worst = { k, l, size };
    }
  }
  return worst;
}

/** The unknowns' columns with all that scale and friction can imitate taken out. */
function withoutNuisances(sensitivity: Matrix, n: number): Matrix {
  const rows = sensitivity.rows;
  const ours = sensitivity.subMatrix(0, rows - 1, 0, n - 1);
  const theirs = sensitivity.subMatrix(0, rows - 1, n, sensitivity.columns - 1);
  const normal = theirs.transpose().mmul(theirs);
  return Matrix.sub(ours, theirs.mmul(inverse(normal)).mmul(theirs.transpose()).mmul(ours));
}

function scaledColumns(matrix: Matrix, lengths: readonly number[]): Matrix {
  const copy = matrix.clone();
  for (const [k, length] of lengths.entries()) copy.mulColumn(k, 1 / length);
  return copy;
}

/** Correlations of a matrix of covariances. */
export function correlationOf(covariances: Matrix): Matrix {
  const copy = covariances.clone();
  for (let k = 0; k < copy.rows; k++) {
    const deviation = Math.sqrt(covariances.get(k, k));
    copy.mulRow(k, 1 / deviation).mulColumn(k, 1 / deviation);
  }
  return copy;
}
