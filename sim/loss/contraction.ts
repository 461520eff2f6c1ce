/**
 * How far a jet narrows behind a sharp-edged opening: jet area over opening.
 *
 * Slow flow, an opening that leaves the share s of a pipe:
 *
 *   Cc0 = 1 / (1 + 0.639 sqrt(1 - s))
 *
 * Source: Chisholm (1983), Two-Phase Flow in Pipelines and Heat Exchangers (from memory).
 *
 * Fast flow: what the wall before the opening pushes less than at rest is f m^2 / (rho1 A), with the f of
 * slow flow, so momentum gives a quadratic for C at pressure ratio r (around the jet, over stagnation):
 *
 *   f k C^2 - (k / rt^(1/gamma) + rt - r) C + 1 - r = 0,   f = 1/Cc0 - 1/(2 Cc0^2)
 *   k = 2 gamma/(gamma - 1) rt^(2/gamma) (1 - rt^((gamma-1)/gamma)),   rt = max(r, critical)
 *
 * Source: Jobson (1955), Proc. IMechE 169:767 (equations derived anew). For slow contractions above
 * some 0.75 the quadratic lets the jet narrow as it gets faster, so there the slow one stands: our own.
 */
import { power, square } from '../elementary/powers.ts';
import { criticalRatio, flowFunction } from './nozzle.ts';

/** Contraction [-] of slow flow through an opening of a share [0..1] of the pipe. */
export function slowContraction(share: number): number {
  return 1 / (1 + 0.639 * Math.sqrt(Math.max(1 - share, 0)));
}

/** Contraction [-] at pressure ratio `ratio` [0..1], of which slow flow has `slow` [0.5..1]. */
export function jetContraction(slow: number, ratio: number, gamma: number): number {
  if (ratio >= 1) return slow;
  const throat = Math.max(ratio, criticalRatio(gamma));
  const k = square(flowFunction(ratio, gamma));
  const f = 1 / slow - 1 / (2 * slow * slow);
  const b = k / power(throat, 1 / gamma) + throat - ratio;
  const root = Math.sqrt(Math.max(b * b - 4 * f * k * (1 - ratio), 0));
  return Math.max(slow, (2 * (1 - ratio)) / (b + root));
}
