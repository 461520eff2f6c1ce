/**
 * A slope that makes no new extreme: of the two differences a and b beside a cell the mean, but at
 * most theta times the smaller, and none where they disagree,
 *
 *   |s| = min(|a + b| / 2, theta min(|a|, |b|)),   theta = 1 minmod ... 2 monotonised central.
 *
 * Source: van Leer (1977), J. Comput. Phys. 23:276 (monotonised central); the family of theta as in
 * Kurganov & Tadmor (2000), J. Comput. Phys. 160:241 (from memory).
 */

import { K, max, min, type V } from './lanes.ts';
import { THETA } from './layout.ts';

export function limited(a: V, b: V): V {
  const mean: V = 0.5 * (a + b);
  const rise: V = max(0, min(K[THETA] * min(a, b), mean));
  const fall: V = min(0, max(K[THETA] * max(a, b), mean));
  return rise + fall;
}
