/**
 * A value between computed ones by a cubic through the points whose slopes never overshoot them:
 * Fritsch & Butland (1984), SIAM J. Sci. Stat. Comput. 5:300, the weighted harmonic mean of the
 * neighbouring slopes.
 */

/** y at x for points at rising xs; undefined outside them. */
export function between(
  xs: readonly number[],
  ys: readonly number[],
  x: number,
): number | undefined {
  const i = xs.findIndex((right, k) => k > 0 && x <= right) - 1;
  if (i < 0 || x < xs[0]!) return undefined;
  const h = xs[i + 1]! - xs[i]!;
  const t = (x - xs[i]!) / h;
  const [y0, y1] = [ys[i]!, ys[i + 1]!];
  const [m0, m1] = [slope(xs, ys, i), slope(xs, ys, i + 1)];
  const s = 1 - t;
  return y0 * s * s * (1 + 2 * t) + y1 * t * t * (1 + 2 * s) + h * s * t * (m0 * s - m1 * t);
}

function slope(xs: readonly number[], ys: readonly number[], i: number): number {
  const secant = (k: number) => (ys[k + 1]! - ys[k]!) / (xs[k + 1]! - xs[k]!);
  if (i === 0) return secant(0);
  if (i === xs.length - 1) return secant(i - 1);
  const [left, right] = [secant(i - 1), secant(i)];
  if (left * right <= 0) return 0;
  const [a, b] = [xs[i]! - xs[i - 1]!, xs[i + 1]! - xs[i]!];
  return (3 * (a + b)) / ((2 * b + a) / left + (b + 2 * a) / right);
}
