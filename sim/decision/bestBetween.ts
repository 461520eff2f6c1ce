/** The top of a curve known at a few points: a parabola through the best and its neighbours. */

/** Where y is greatest by that parabola, between the neighbours of the best point. */
export function bestBetween(xs: readonly number[], ys: readonly number[]): number {
  const best = ys.reduce((at, y, i) => (y > ys[at]! || Number.isNaN(ys[at]!) ? i : at), 0);
  if (best === 0 || best === xs.length - 1) return xs[best]!;
  const [x0, x1, x2] = [xs[best - 1]!, xs[best]!, xs[best + 1]!];
  const left = (ys[best]! - ys[best - 1]!) / (x1 - x0);
  const right = (ys[best + 1]! - ys[best]!) / (x2 - x1);
  if (!(left > right)) return x1;
  // Slope falls straight from `left` at the middle of the first gap to `right` at that of the second.
  const top = 0.5 * (x0 + x1) + (left / (left - right)) * 0.5 * (x2 - x0);
  return Math.min(Math.max(top, x0), x2);
}
