/**
 * At which speeds a curve must be computed so that what lies between is known.
 *
 * A stretch between neighbours is halved while it is wider than the ripple allows, and while the cubic
 * through four neighbours is in doubt by more than a share of the curve,
 *
 *   |y[x_i-2 ... x_i+2]| |x - x_i-1| |x - x_i| |x - x_i+1| |x - x_i+2|,   x in the middle,
 *
 * the next term of Newton's form with the divided difference of five neighbours (any text on numerical
 * analysis, e.g. Hildebrand, from memory). What to compute follows from the points alone, so it depends
 * on no order, worker or earlier stop.
 */

export interface ResolutionRule {
  /** Doubt that is left in a curve [share of it]. */
  tolerance: number;
  /** Widest distance of speeds in a stretch [rpm]. */
  widest(from: number, to: number): number;
  /** Whether a stretch of speeds matters. */
  matters(from: number, to: number): boolean;
}

/** Narrowest stretch that refinement leaves [rpm]; an engine does not hold its speed better. */
const FINEST = 20;

/** Speeds to compute next [rpm], whole, rising; none where the curve is resolved. */
export function speedsBetween(
  speeds: readonly number[],
  values: readonly number[],
  rule: ResolutionRule,
): number[] {
  return stretches(speeds, values, rule)
    .filter(({ open, width }) => open && width >= 2 * FINEST)
    .map(({ from, width }) => Math.round(from + width / 2));
}

/** Whether refinement came to its limit before the curve was known. */
export function isOpen(
  speeds: readonly number[],
  values: readonly number[],
  rule: ResolutionRule,
): boolean {
  return stretches(speeds, values, rule).some(({ open }) => open);
}

function stretches(speeds: readonly number[], values: readonly number[], rule: ResolutionRule) {
  const scale = Math.max(...values.filter(Number.isFinite).map(Math.abs));
  return speeds.slice(0, -1).map((from, i) => {
    const to = speeds[i + 1]!;
    const width = to - from;
    const known = Number.isFinite(values[i]) && Number.isFinite(values[i + 1]);
    const doubtful = () =>
      width > rule.widest(from, to) || doubt(speeds, values, i) > rule.tolerance * scale;
    return { from, width, open: known && rule.matters(from, to) && doubtful() };
  });
}

/** Error of the cubic through the neighbours in the middle of stretch i; 0 where too few are known. */
function doubt(xs: readonly number[], ys: readonly number[], i: number): number {
  const middle = 0.5 * (xs[i]! + xs[i + 1]!);
  const first = Math.max(0, Math.min(i - 1, xs.length - 4));
  const near = xs.slice(first, first + 4);
  const reach = near.reduce((product, x) => product * Math.abs(middle - x), 1);
  const windows = [-3, -2, -1, 0].map((k) => Math.abs(dividedDifference(xs, ys, i + k)));
  return Math.max(...windows.filter(Number.isFinite), 0) * reach;
}

/** Fourth divided difference of five neighbours from the given one on; NaN where they are not there. */
function dividedDifference(xs: readonly number[], ys: readonly number[], first: number): number {
  if (first < 0 || first + 5 > xs.length) return Number.NaN;
  let sum = 0;
  for (let j = first; j < first + 5; j++) {
    let product = 1;
    for (let k = first; k < first + 5; k++) if (k !== j) product *= xs[j]! - xs[k]!;
    sum += ys[j]! / product;
  }
  return sum;
}
