/** Where straight lines should be worst, along rows, along columns and between both: what they really err there, computed. */
import type { Step } from '../../decision/loadGrid.ts';
import { airOf, type Grid } from './cell.ts';
import type { LoadPoint } from './compute.ts';

/** A place on lines of the table: their air over that computed there, less one [-]. */
export interface LineCheck {
  angle: number;
  speed: number;
  error: number;
}

/** Steps of either axis that are looked at, and cells between both. */
const CHECKS = 2;

export async function lineChecks(grid: Grid, point: LoadPoint): Promise<LineCheck[]> {
  return Promise.all(
    places(grid).map(async ({ angle, speed }) => {
      const error = onLines(grid, angle, speed) / airOf(await point(angle, speed)) - 1;
      return { angle, speed, error };
    }),
  );
}

function places({ angles, speeds, angleSteps, speedSteps }: Grid) {
  const [ofAngle, ofSpeed] = [worst(angleSteps), worst(speedSteps)];
  return [
    ...ofAngle.map((step) => ({ angle: step.worst, speed: speeds[step.across]! })),
    ...ofSpeed.map((step) => ({ angle: angles[step.across]!, speed: step.worst })),
    ...ofSpeed.map((step) => ({ angle: ofAngle[0]!.worst, speed: step.worst })),
  ];
}

const worst = (steps: readonly Step[]) =>
  [...steps].sort((a, b) => b.error - a.error).slice(0, CHECKS);

/** Air of the lines: along the speeds of the rows on either side, then between these. */
function onLines({ angles, speeds, outcomes }: Grid, angle: number, speed: number): number {
  const [i, j] = [stepOf(angles, angle), stepOf(speeds, speed)];
  const row = (k: number) =>
    between(speeds, j, speed, airOf(outcomes[k]![j]!), airOf(outcomes[k]![j + 1]!));
  return between(angles, i, angle, row(i), row(i + 1));
}

const stepOf = (xs: readonly number[], x: number) =>
  Math.max(xs.findIndex((end, k) => k > 0 && end >= x) - 1, 0);

function between(xs: readonly number[], at: number, x: number, low: number, high: number): number {
  return low + ((x - xs[at]!) / (xs[at + 1]! - xs[at]!)) * (high - low);
}
