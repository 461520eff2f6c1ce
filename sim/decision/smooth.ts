/**
 * A smooth curve through computed points: cubic between neighbours, with the slope at each point of
 * the parabola through it and its neighbours (at the ends, of the last three points).
 *
 *   y = y0 s^2 (1 + 2 t) + y1 t^2 (1 + 2 s) + h s t (m0 s - m1 t),   t = (x - x0) / h, s = 1 - t
 *
 * The error falls with the third power of the distance of points and the slope has no steps. Source:
 * piecewise cubic Bessel interpolation, de Boor, A Practical Guide to Splines (1978) ch. IV (from memory).
 */

/**
 * The curve at other abscissae.
 *
 * @param xs rising
 * @param ys as many; NaN makes the stretches beside it NaN
 * @param at within the ends of xs, rising
 */
export function smoothAt(
  xs: readonly number[],
  ys: readonly number[],
  at: readonly number[],
): number[] {
  const slopes = xs.map((_, i) => slopeAt(xs, ys, i));
  let i = 0;
  return at.map((x) => {
    while (i + 2 < xs.length && x > xs[i + 1]!) i++;
    if (x === xs[i]) return ys[i]!;
    if (x === xs[i + 1] || xs.length === 1) return ys[xs.length === 1 ? 0 : i + 1]!;
    const h = xs[i + 1]! - xs[i]!;
    const t = (x - xs[i]!) / h;
    const s = 1 - t;
    const bend = h * s * t * (slopes[i]! * s - slopes[i + 1]! * t);
    return ys[i]! * s * s * (1 + 2 * t) + ys[i + 1]! * t * t * (1 + 2 * s) + bend;
  });
}

/** Slope at point i of the parabola through it and its neighbours. */
function slopeAt(xs: readonly number[], ys: readonly number[], i: number): number {
  const last = xs.length - 1;
  if (last < 1) return 0;
  const secant = (k: number) => (ys[k + 1]! - ys[k]!) / (xs[k + 1]! - xs[k]!);
  if (last === 1) return secant(0);
  const middle = Math.min(Math.max(i, 1), last - 1);
  const [left, right] = [secant(middle - 1), secant(middle)];
  const bend = (right - left) / (xs[middle + 1]! - xs[middle - 1]!);
  // The slope of the parabola falls straight from `left` at the middle of the first gap.
  return left + bend * (2 * xs[i]! - xs[middle - 1]! - xs[middle]!);
}
