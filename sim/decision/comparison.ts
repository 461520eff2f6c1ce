/**
 * A measured run beside the prediction, at the same speeds.
 *
 * What a dyno reads is brake torque; what is computed is indicated torque, gas exchange included:
 *
 *   T_brake = s T_indicated - phi p_f V / (4 pi),     VE_measured = s VE
 *
 *   s    scale [-]: completeness and speed of burning, the dyno's own calibration, driveline of a
 *        roller dyno; for volumetric efficiency the calibration of the air meter
 *   phi  share of the friction correlation [-], 1 before any fit
 *   p_f  friction mean effective pressure [Pa]    V  swept volume of the engine [m^3]
 *
 *   p_f = (0.97 + 0.15 n + 0.05 n^2) bar,   n = speed / 1000 rpm
 *
 * Barnes-Moss 1975 as Heywood (1988) eq. 13.6 gives it for four-cylinder engines of 0.85 to 2 l wide
 * open, from memory. It was measured by motoring, so it counts the pumping loss that the computed
 * torque has too; and it rises steeply above 6000 rpm, beyond what it was fitted to. Hence a shape is
 * compared, never a level: s is free, and phi is doubtful to +-30 % (common practice, no source).
 */
import { square } from '../elementary/powers.ts';
import { bestBetween } from './bestBetween.ts';

/** What was measured. */
export type ComparedFigure = 'brake-torque' | 'volumetric-efficiency';

/** A curve to compare with, at the speeds of the computation. */
export interface MeasuredCurve {
  figure: ComparedFigure;
  /** Speeds [rpm], rising. */
  speeds: readonly number[];
  /** Brake torque [N m] or volumetric efficiency [-]. */
  values: readonly number[];
}

export interface Comparison {
  figure: ComparedFigure;
  speeds: number[];
  measured: number[];
  /** Predicted in what was measured, scale and friction applied. */
  predicted: number[];
  scale: number;
  /** Pearson correlation of the two curves [-]. */
  correlation: number;
  /** Root mean square of the difference over the mean of the measured curve [%]. */
  differencePercent: number;
  /** Where each curve is highest [rpm]; absent where that is an end of the range. */
  peaks: { measured?: number; predicted?: number };
  /** Predicted less measured peak speed [rpm] and [% of the measured]; absent without both peaks. */
  peakError?: { rpm: number; percent: number };
}

const BAR = 1e5;

/** Friction torque by the correlation above [N m]. */
export function frictionTorque(speed: number, sweptVolume: number): number {
  const n = speed / 1000;
  return ((0.97 + 0.15 * n + 0.05 * n * n) * BAR * sweptVolume) / (4 * Math.PI);
}

/** What is subtracted at each speed before phi; nothing for volumetric efficiency. */
export function frictionCurve(
  { figure, speeds }: Pick<MeasuredCurve, 'figure' | 'speeds'>,
  sweptVolume: number,
): number[] {
  if (figure === 'volumetric-efficiency') return speeds.map(() => 0);
  return speeds.map((speed) => frictionTorque(speed, sweptVolume));
}

/**
 * Compares. Only the scale is fitted, by least squares; friction is as given.
 *
 * @param computed indicated torque [N m] or volumetric efficiency [-] at the speeds measured
 * @param friction what to subtract after scaling, as many
 */
export function comparison(
  measured: MeasuredCurve,
  computed: readonly number[],
  friction: readonly number[],
): Comparison {
  const { values } = measured;
  const gross = values.map((value, i) => value + friction[i]!);
  const scale = dot(gross, computed) / dot(computed, computed);
  return compared(
    measured,
    computed.map((value, i) => scale * value - friction[i]!),
    scale,
  );
}

/** Two finished curves. */
export function compared(
  { figure, speeds, values }: MeasuredCurve,
  predicted: readonly number[],
  scale: number,
): Comparison {
  const rest = values.map((value, i) => predicted[i]! - value);
  const peaks = {
    ...peakOf('measured', speeds, values),
    ...peakOf('predicted', speeds, predicted),
  };
  const error =
    peaks.measured === undefined || peaks.predicted === undefined
      ? undefined
      : peaks.predicted - peaks.measured;
  return {
    figure,
    speeds: [...speeds],
    measured: [...values],
    predicted: [...predicted],
    scale,
    correlation: pearson(values, predicted),
    differencePercent: (100 * Math.sqrt(dot(rest, rest) / rest.length)) / Math.abs(mean(values)),
    peaks,
    ...(error !== undefined && {
      peakError: { rpm: error, percent: (100 * error) / peaks.measured! },
    }),
  };
}

function peakOf<Name extends string>(
  name: Name,
  speeds: readonly number[],
  values: readonly number[],
): Partial<Record<Name, number>> {
  const top = Math.max(...values);
  if (values[0] === top || values.at(-1) === top) return {};
  return { [name]: bestBetween(speeds, values) } as Partial<Record<Name, number>>;
}

/** Correlation coefficient of two columns [-]; NaN where one does not vary. */
export function pearson(xs: readonly number[], ys: readonly number[]): number {
  const [x0, y0] = [mean(xs), mean(ys)];
  const dx = xs.map((x) => x - x0);
  const dy = ys.map((y) => y - y0);
  return dot(dx, dy) / Math.sqrt(dot(dx, dx) * dot(dy, dy));
}

const dot = (xs: readonly number[], ys: readonly number[]) =>
  xs.reduce((sum, x, i) => sum + x * ys[i]!, 0);

const mean = (xs: readonly number[]) => xs.reduce((sum, x) => sum + x, 0) / xs.length;

/**
 * A run of any speeds at the speeds of the computation that it covers. Where three or more rows lie
 * within half a step of a speed, a straight line through them is read there, which evens out noise;
 * elsewhere the run is read straight between its neighbours.
 *
 * @param speeds speeds of the computation [rpm], rising
 */
export function alignedTo(
  speeds: readonly number[],
  run: { speeds: readonly number[]; values: readonly number[] },
): { speeds: number[]; values: number[] } {
  const [first, last] = [run.speeds[0]!, run.speeds.at(-1)!];
  const kept = speeds.filter((speed) => speed >= first && speed <= last);
  return { speeds: kept, values: kept.map((speed) => readAt(speed, halfStep(speeds, speed), run)) };
}

function halfStep(speeds: readonly number[], speed: number): number {
  const gaps = speeds.slice(1).map((next, i) => next - speeds[i]!);
  const at = speeds.indexOf(speed);
  return (
    0.5 * Math.min(gaps[at] ?? Number.POSITIVE_INFINITY, gaps[at - 1] ?? Number.POSITIVE_INFINITY)
  );
}

function readAt(
  speed: number,
  half: number,
  { speeds, values }: { speeds: readonly number[]; values: readonly number[] },
): number {
  const near = speeds.flatMap((x, i) =>
    Math.abs(x - speed) <= half ? [{ x: x - speed, y: values[i]! }] : [],
  );
  if (near.length >= 3) return intercept(near);
  const right = Math.max(
    1,
    speeds.findIndex((x) => x >= speed),
  );
  const [x0, x1] = [speeds[right - 1]!, speeds[right]!];
  return values[right - 1]! + ((speed - x0) / (x1 - x0)) * (values[right]! - values[right - 1]!);
}

/** Value at x = 0 of the straight line through the points. */
function intercept(points: readonly { x: number; y: number }[]): number {
  const xs = points.map(({ x }) => x);
  const [x0, y0] = [mean(xs), mean(points.map(({ y }) => y))];
  const spread = dot(xs, xs) - xs.length * square(x0);
  const slope = points.reduce((sum, { x, y }) => sum + (x - x0) * (y - y0), 0) / spread;
  return y0 - slope * x0;
}
