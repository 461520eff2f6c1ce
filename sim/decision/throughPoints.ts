/** The polynomial through a few points, by Lagrange: the parabola where there are three. */

export interface Place {
  x: number;
  y: number;
}

/** Its value at x; the points differ in x. */
export function throughPoints(points: readonly Place[], x: number): number {
  return points.reduce((sum, one) => {
    const others = points.filter((other) => other !== one);
    const share = others.reduce(
      (product, other) => (product * (x - other.x)) / (one.x - other.x),
      1,
    );
    return sum + share * one.y;
  }, 0);
}
