/**
 * A periodic history as a mean and harmonics, and back.
 *   c_k = (1/n) sum x_j e^(-i 2 pi k j / n),  x_j = c_0 + 2 Re sum_k c_k e^(i 2 pi k j / n)
 * Source: any text on Fourier series. By direct sums over one table of angles: a cycle has 720 samples and
 * some tens of harmonics that count.
 */
import Complex from 'complex.js';
import { cos, sin } from '../elementary/angles.ts';

interface Circle {
  cos: Float64Array;
  sin: Float64Array;
}

const CIRCLES = new Map<number, Circle>();

function circle(n: number): Circle {
  const angle = (j: number) => (2 * Math.PI * j) / n;
  const known = CIRCLES.get(n) ?? {
    cos: Float64Array.from({ length: n }, (_, j) => cos(angle(j))),
    sin: Float64Array.from({ length: n }, (_, j) => sin(angle(j))),
  };
  CIRCLES.set(n, known);
  return known;
}

/** Harmonics 1 to `count`, at the places 0 to count - 1, of evenly spaced samples of one period. */
export function harmonicsOf(samples: readonly number[], count: number): Complex[] {
  const n = samples.length;
  const turn = circle(n);
  return Array.from({ length: count }, (_, i) => {
    let [re, im] = [0, 0];
    for (let j = 0; j < n; j++) {
      const at = ((i + 1) * j) % n;
      re += samples[j]! * turn.cos[at]!;
      im -= samples[j]! * turn.sin[at]!;
    }
    return new Complex(re / n, im / n);
  });
}

/** `n` evenly spaced samples of the period that has these harmonics. */
export function samplesOf(mean: number, harmonics: readonly Complex[], n: number): number[] {
  const turn = circle(n);
  return Array.from({ length: n }, (_, j) => {
    const swing = harmonics.reduce((sum, { re, im }, i) => {
      const at = ((i + 1) * j) % n;
      return sum + re * turn.cos[at]! - im * turn.sin[at]!;
    }, 0);
    return mean + 2 * swing;
  });
}
