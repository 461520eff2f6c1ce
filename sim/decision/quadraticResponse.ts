/**
 * A quadratic in a few variables through as many points as it has terms: the centre c, a step h either
 * way along each axis, and a step along both axes of each pair,
 *
 *   f(c + h d) = f0 + sum_k (d_k (f_k+ - f_k-) / 2 + d_k^2 (f_k+ + f_k- - 2 f0) / 2)
 *                + sum_k<l d_k d_l (f_kl - f_k+ - f_l+ + f0)
 *
 * exact for every quadratic.
 */

/** How many points n variables need: (n + 1)(n + 2) / 2. */
export function designSize(n: number): number {
  return ((n + 1) * (n + 2)) / 2;
}

/** The points: centre, then up and down each axis, then the pairs. */
export function quadraticDesign(centre: readonly number[], step: number): number[][] {
  const moved = (...axes: [number, number][]) =>
    centre.map((x, k) => x + step * (axes.find(([at]) => at === k)?.[1] ?? 0));
  return [
    [...centre],
    ...centre.flatMap((_, k) => [moved([k, 1]), moved([k, -1])]),
    ...pairs(centre.length).map(([k, l]) => moved([k, 1], [l, 1])),
  ];
}

/**
 * The quadratics through curves computed at the points of the design, one a place of the curve.
 *
 * @param curves [point of the design][place]
 */
export function quadraticThrough(
  centre: readonly number[],
  step: number,
  curves: readonly (readonly number[])[],
): (x: readonly number[], place: number) => number {
  const n = centre.length;
  const crossed = pairs(n);
  return (x, j) => {
    const middle = curves[0]![j]!;
    const up = (k: number) => curves[1 + 2 * k]![j]!;
    const down = (k: number) => curves[2 + 2 * k]![j]!;
    const d = x.map((at, k) => (at - centre[k]!) / step);
    const along = d.reduce((sum, t, k) => {
      return sum + (t * (up(k) - down(k)) + t * t * (up(k) + down(k) - 2 * middle)) / 2;
    }, middle);
    return crossed.reduce((sum, [k, l], p) => {
      const both = curves[1 + 2 * n + p]![j]!;
      return sum + d[k]! * d[l]! * (both - up(k) - up(l) + middle);
    }, along);
  };
}

function pairs(n: number): [number, number][] {
  const axes = Array.from({ length: n }, (_, k) => k);
  return axes.flatMap((k) => axes.slice(k + 1).map((l): [number, number] => [k, l]));
}
