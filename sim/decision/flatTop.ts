/** How flat the best is: the lengths around it that lose next to nothing. */

export interface FlatTop {
  from: number;
  to: number;
}

/**
 * The stretch around the best abscissa on which y stays within the share `loss` of the best y,
 * y running straight between the points given.
 *
 * @param xs rising
 * @param ys as many, positive; at least one is a number
 */
export function flatTop(xs: readonly number[], ys: readonly number[], loss: number): FlatTop {
  const best = ys.reduce((at, y, i) => (y > ys[at]! || Number.isNaN(ys[at]!) ? i : at), 0);
  const level = (1 - loss) * ys[best]!;
  const reach = (step: 1 | -1): number => {
    let i = best;
    while (ys[i + step]! >= level) i += step;
    const beyond = ys[i + step];
    if (beyond === undefined || Number.isNaN(beyond)) return xs[i]!;
    return xs[i]! + ((ys[i]! - level) / (ys[i]! - beyond)) * (xs[i + step]! - xs[i]!);
  };
  return { from: reach(-1), to: reach(1) };
}
