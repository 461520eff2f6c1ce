/**
 * Straight-line interpolation in a table with rising abscissae; held at the first and last value
 * beyond the table. It is monotone wherever the table is.
 *
 * @param xs abscissae, strictly rising, at least one
 * @param ys ordinates, as many
 */
export function interpolateLinear(xs: readonly number[], ys: readonly number[], x: number): number {
  const last = xs.length - 1;
  if (x <= xs[0]!) return ys[0]!;
  if (x >= xs[last]!) return ys[last]!;
  const right = xs.findIndex((abscissa) => abscissa > x);
  const fraction = (x - xs[right - 1]!) / (xs[right]! - xs[right - 1]!);
  return ys[right - 1]! + fraction * (ys[right]! - ys[right - 1]!);
}
