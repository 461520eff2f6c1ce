/**
 * Quantile of Student's t distribution for whole degrees of freedom n, from its closed form:
 *   A(t|n), the probability within +-t, is a finite sum in s = sin, c = cos of theta = atan(t / sqrt n):
 *   n even: s (1 + 1/2 c2 + 1 3 / (2 4) c4 + ... + 1 3 .. (n - 3) / (2 4 .. (n - 2)) c^(n-2))
 *   n odd:  2/pi (theta + s (c + 2/3 c3 + ... + 2 4 .. (n - 3) / (1 3 .. (n - 2)) c^(n-2))), n = 1: 2/pi theta
 * A grows with theta, which is found by halving.
 * Source: Abramowitz, M. and Stegun, I. A., Handbook of Mathematical Functions, NBS 1964, 26.7.3 and 26.7.4.
 */
import { cos, sin, tan } from '../elementary/angles.ts';

/** Halvings after which an angle below pi/2 moves no more. */
const HALVINGS = 60;

/** The t that so large a share of the distribution lies within, on either side; 0 < share < 1. */
export function studentT(share: number, freedom: number): number {
  let [low, high] = [0, Math.PI / 2];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (within(middle, freedom) < share) low = middle;
    else high = middle;
  }
  return Math.sqrt(freedom) * tan((low + high) / 2);
}

function within(theta: number, freedom: number): number {
  const [s, c] = [sin(theta), cos(theta)];
  const odd = freedom % 2 === 1;
  let term = odd ? c : 1;
  let sum = freedom === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k <= freedom - 2; k += 2) {
    term *= (c * c * (k - 1)) / k;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (theta + s * sum) : s * sum;
}
