/**
 * An end that lets outgoing waves pass: the arriving gas meets still gas of the state outside, with
 * nothing coming back,
 *
 *   p = (p_a + p_o + Z v_a) / 2,   Z = rho_a c_a   (linear characteristics)
 *
 * Source: Toro (2009), sec. 9.3, eq. 9.20 (from memory): the linearised Riemann solution. A wave of
 * relative amplitude d reflects about d^2.
 */

import { endArea, writeEnd, writeOut } from './ends.ts';
import { type B, exp2, type I, log2, N, type V, X } from './lanes.ts';
import {
  A_C,
  A_GAMMA,
  A_P,
  A_RHO,
  A_V,
  E_X,
  Q_BURNED,
  Q_FUEL,
  Q_GAMMA,
  Q_H,
  Q_P,
  Q_RT,
} from './layout.ts';

export function nonReflecting(end: I, q: I): void {
  const a: I = N[end + E_X];
  const p: V = 0.5 * (X[a + A_P] + X[q + Q_P] + X[a + A_RHO] * X[a + A_C] * X[a + A_V]);
  const g: V = X[a + A_GAMMA] - 1;
  const t: V = exp2((g / (2 * X[a + A_GAMMA])) * log2(p / X[a + A_P]));
  const v: V = X[a + A_V] + ((2 * X[a + A_C]) / g) * (1 - t);
  const out: B = v >= 0;
  writeOut(end, out, v);
  // Outside gas comes in by an isentrope of its own, cp frozen.
  const gq: V = (X[q + Q_GAMMA] - 1) / X[q + Q_GAMMA];
  const cooled: V = X[q + Q_RT] * exp2(gq * log2(p / X[q + Q_P]));
  const rho: V = p / cooled;
  const h: V = X[q + Q_H] + (cooled - X[q + Q_RT]) / gq;
  const energy: V = rho * v * endArea(end) * (h + 0.5 * v * v);
  writeEnd(end, !out, rho, v, p, X[q + Q_BURNED], X[q + Q_FUEL], energy);
}
