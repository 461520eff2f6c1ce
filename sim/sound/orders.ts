/**
 * What repeats every cycle as a Fourier series.
 *
 *   x(t) = x0 + sum over k of Re(X_k exp(i 2 pi k f t)),   X_k = (2/T) int x exp(-i 2 pi k f t) dt
 *
 *   f  cycles a second [Hz]   T = 1/f   k  harmonic of the cycle; the engine order is k/2, by revolutions
 *
 * The integral is the trapezoidal rule over the samples, which is exact for what they resolve where they
 * lie evenly. Summed plainly with the functions of sim/elementary, so that its bits are the same on every
 * runtime, which those of a library's fast transform are not.
 */
import { CYCLE } from '../crankAngle.ts';
import { cos, sin } from '../elementary/angles.ts';

/** Amplitudes X_k from k = 1 on; the mean is left out. */
export interface Orders {
  /** Cycles a second [Hz]. */
  fundamental: number;
  re: number[];
  im: number[];
}

/** Cycles of a four-stroke engine a second [Hz] at a speed [rpm]. */
export const cycleFrequency = (speed: number): number => speed / 120;

/** Engine order of an entry of `re` and `im`, counted from 0. */
export const orderOf = (entry: number): number => (entry + 1) / 2;

/** Frequency of an entry [Hz]. */
export const frequencyOf = ({ fundamental }: Orders, entry: number): number =>
  (entry + 1) * fundamental;

/**
 * The series of samples over one cycle.
 *
 * @param angle crank angles, rising, less than one cycle from first to last [deg]
 * @param value one sample an angle
 * @param most highest harmonic; none beyond what the samples resolve are given
 */
export function ordersOf(
  angle: readonly number[],
  value: readonly number[],
  fundamental: number,
  most: number,
): Orders {
  const count = Math.min(Math.floor(most), Math.floor((angle.length - 1) / 2));
  const share = widths(angle).map((width, i) => (2 * width * value[i]!) / CYCLE);
  const sums = Array.from({ length: count }, (_, entry) => {
    let [re, im] = [0, 0];
    for (const [i, part] of share.entries()) {
      const phase = phaseOf((entry + 1) * (angle[i]! / CYCLE));
      re += part * cos(phase);
      im -= part * sin(phase);
    }
    return { re, im };
  });
  return { fundamental, re: sums.map(({ re }) => re), im: sums.map(({ im }) => im) };
}

/** Half the way to both neighbours, round the cycle [deg]. */
function widths(angle: readonly number[]): number[] {
  const last = angle.length - 1;
  return angle.map((_, i) => {
    const before = i > 0 ? angle[i - 1]! : angle[last]! - CYCLE;
    const after = i < last ? angle[i + 1]! : angle[0]! + CYCLE;
    return (after - before) / 2;
  });
}

/** Turns as an angle of the first turn [rad]. */
export const phaseOf = (turns: number): number => 2 * Math.PI * (turns - Math.floor(turns));
