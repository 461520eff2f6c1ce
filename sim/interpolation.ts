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
  const right = firstAbove(xs, x);
  const fraction = (x - xs[right - 1]!) / (xs[right]! - xs[right - 1]!);
  return ys[right - 1]! + fraction * (ys[right]! - ys[right - 1]!);
}

/** Index of the first of rising numbers that is greater than x; their count where none is. */
export function firstAbove(xs: readonly number[], x: number): number {
  let [low, high] = [0, xs.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (xs[middle]! > x) high = middle;
    else low = middle + 1;
  }
  return low;
}
