/**
 * Rows and columns of a table that is read with straight lines: where lines are worst, a value is put
 * between, until they err by no more than asked or the table is as long as allowed.
 *
 *   error of a straight line in the middle of a step h = h^2 |f''| / 8
 *
 * f'' from three neighbours on either side of the step, the greater counts; relative to the line there.
 * Source: any text on interpolation. An estimate: waves narrower than the steps escape it.
 */

/** Figures of a table, [row][column]; NaN where there is none. */
export type Figures = readonly (readonly number[])[];

/** A step between two values of an axis and what straight lines err there at worst [-]. */
export interface Step {
  /** Index of its lower end. */
  at: number;
  error: number;
  /** Where that is: index of the other axis, and the place between its ends. */
  across: number;
  worst: number;
}

/** Steps of the axis along rows, in their order. */
export function stepErrors(xs: readonly number[], rows: Figures): Step[] {
  const columns = transposed(rows);
  return xs.slice(1).map((_, at) => {
    const worst = 0.5 * (xs[at]! + xs[at + 1]!);
    const step = { at, error: 0, across: 0, worst };
    columns.forEach((ys, across) => {
      const error = stepError(xs, ys, at);
      if (error > step.error) Object.assign(step, { error, across });
    });
    return step;
  });
}

export function transposed(rows: Figures): number[][] {
  return (rows[0] ?? []).map((_, j) => rows.map((row) => row[j]!));
}

function stepError(xs: readonly number[], ys: readonly number[], at: number): number {
  const h = xs[at + 1]! - xs[at]!;
  const bends = [at - 1, at].filter((i) => i >= 0 && i + 2 < xs.length);
  const bend = Math.max(...bends.map((i) => Math.abs(dividedDifference(xs, ys, i))));
  return (0.25 * h * h * bend) / Math.abs(0.5 * (ys[at]! + ys[at + 1]!));
}

/** Half of f'' through three neighbours from `i` on. */
function dividedDifference(xs: readonly number[], ys: readonly number[], i: number): number {
  const slope = (k: number) => (ys[k + 1]! - ys[k]!) / (xs[k + 1]! - xs[k]!);
  return (slope(i + 1) - slope(i)) / (xs[i + 2]! - xs[i]!);
}

/**
 * Values to put between, at most `room`: every step is cut into equal parts, one more at a time where lines
 * are worst, their error falling with the square of the part. Rounded ones that are there already are left out.
 */
export function valuesBetween(
  xs: readonly number[],
  steps: readonly Pick<Step, 'at' | 'error'>[],
  { limit, room, rounded }: { limit: number; room: number; rounded: (x: number) => number },
): number[] {
  const values = partsOf(steps, limit, room).flatMap((count, k) => {
    const [from, to] = [xs[steps[k]!.at]!, xs[steps[k]!.at + 1]!];
    return inside(count).map((part) => rounded(from + part * (to - from)));
  });
  return [...new Set(values)].filter((x) => !xs.includes(x));
}

/** How many values straight lines would want along an axis until they err by no more than `limit`. */
export function valuesWanted(steps: readonly Pick<Step, 'error'>[], limit: number): number {
  return steps.reduce(
    (sum, { error }) => sum + Math.max(1, Math.ceil(Math.sqrt(error / limit))),
    1,
  );
}

/** Equal parts of every step. */
function partsOf(steps: readonly Pick<Step, 'error'>[], limit: number, room: number): number[] {
  const parts = steps.map(() => 1);
  const left = (k: number) => steps[k]!.error / (parts[k]! * parts[k]!);
  for (let put = 0; put < room; put++) {
    const worst = parts.reduce((most, _, k) => (left(k) > left(most) ? k : most), 0);
    if (left(worst) <= limit) break;
    parts[worst]!++;
  }
  return parts;
}

const inside = (count: number) => Array.from({ length: count - 1 }, (_, i) => (i + 1) / count);
