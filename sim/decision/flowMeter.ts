/**
 * What a flow meter reads of a flow that pulsates, by what it is built on:
 *
 *   signal     s = |w|^n                     blind to direction
 *   lag        tau dy/dt = s - y             y alike from cycle to cycle
 *   reading    mean of y^(1/n)               linearised after the lag
 *
 *   w    mass flow, towards the engine above zero [kg/s]
 *   n    2 for a difference of pressure, 1 for what follows the flow itself, about 0.5 for the heat of a hot
 *        element and half of that for its voltage
 *   tau  time constant [s]; endless: the mean of the signal is linearised
 *
 * Over the true mean, of a sine of relative amplitude a: n = 2 averaged sqrt(1 + a^2/2); n = 1 without lag 1 up
 * to a = 1, beyond it (2/pi)(asin(1/a) + sqrt(a^2 - 1)); n = 0.5 averaged 8/pi^2 at a = 1. With n = 2 averaged in
 * general sqrt(1 + (rms of the fluctuation / mean)^2), the square-root error.
 *
 * Source: ISO/TR 3313 for the square-root error, from memory, which asks that the flow does not reverse; King,
 * L.V., Phil. Trans. R. Soc. A 214 (1914) 373, from memory: heat of a wire = A + B sqrt(speed), and a constant A
 * drops out of the mean of the heat. A meter that follows neither law is not in it.
 */
import { exp, expm1, power } from '../elementary/powers.ts';

/** How a meter makes a reading of the flow. */
export interface MeterLaw {
  /** n [-] */
  exponent: number;
  /** tau [s]; Infinity where the mean of the signal is what is read. */
  lag: number;
}

/** A flow over one cycle. */
export interface Pulsation {
  /** Mean, greatest and least [kg/s]. */
  mean: number;
  most: number;
  least: number;
  /** Root mean square of the fluctuation over the mean [-]. */
  unsteadiness: number;
  /** What flows back over what stays [-]. */
  back: number;
}

/** Fluctuation over the mean below which a flow counts as steady [-]; ISO/TR 3313, from memory. */
export const STEADY = 0.05;

const meanOf = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** @param flow of one cycle at even times [kg/s] */
export function pulsationOf(flow: readonly number[]): Pulsation {
  const mean = meanOf(flow);
  const variance = meanOf(flow.map((w) => (w - mean) * (w - mean)));
  return {
    mean,
    most: Math.max(...flow),
    least: Math.min(...flow),
    unsteadiness: Math.sqrt(variance) / mean,
    back: meanOf(flow.map((w) => Math.max(-w, 0))) / mean,
  };
}

/**
 * Mean reading over the true mean [-].
 *
 * @param flow of one cycle at even times [kg/s]
 * @param period of that cycle [s]
 */
export function readingOverMean(
  flow: readonly number[],
  { exponent, lag }: MeterLaw,
  period: number,
): number {
  const signal = flow.map((w) => power(Math.abs(w), exponent));
  const linear = (s: number) => power(s, 1 / exponent);
  return meanOf(lagged(signal, lag, period).map(linear)) / meanOf(flow);
}

/** A signal of one cycle behind a first-order lag, alike from cycle to cycle; each value held for its share. */
export function lagged(signal: readonly number[], lag: number, period: number): number[] {
  if (lag === Number.POSITIVE_INFINITY) return [meanOf(signal)];
  if (lag === 0) return [...signal];
  const kept = exp(-period / (signal.length * lag));
  const cycle = (from: number) => {
    let level = from;
    return signal.map((s) => {
      level = s + (level - s) * kept;
      return level;
    });
  };
  return cycle(cycle(0).at(-1)! / -expm1(-period / lag));
}
