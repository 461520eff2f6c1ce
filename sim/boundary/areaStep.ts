/**
 * A sudden change of area between two ducts. Into the wider duct the jet mixes out and part of its
 * head returns; into the narrower one it contracts first:
 *
 *   K = (1 - A1/A2)^2       widening, dynamic heads of the narrow duct (Borda-Carnot)
 *   K = 0.5 (1 - A1/A2)     narrowing, dynamic heads of the narrow duct
 *
 * A constriction (constriction.ts) whose effective area meets that loss. Loss laws of slow flow.
 * Source: Idelchik, Handbook of Hydraulic Resistance, diagrams 4-1 and 4-9 (from memory).
 */
import { constriction } from './constriction.ts';
import type { End } from './ductEnd.ts';
import type { Node } from './node.ts';

export function areaStep(first: End, second: End): Node {
  const forward = stepArea(first.area, second.area);
  const backward = stepArea(second.area, first.area);
  return constriction(first, second, { forward: () => forward, backward: () => backward });
}

/** Effective throat area [m^2] for flow from area `from` into area `to`. */
function stepArea(from: number, to: number): number {
  if (from >= to) return to / Math.sqrt(1 + 0.5 * (1 - to / from));
  const heads = (1 - from / to) ** 2;
  return to / Math.sqrt(1 + heads * (to / from) ** 2);
}
