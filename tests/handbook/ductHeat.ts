/**
 * Heat between the gas of an engine's pipe and its wall as its source has it, to hold sim/step/wall.ts
 * against: Nu = 0.07 Re^(3/4), St = Nu / (Re Pr).
 */
import { PRANDTL } from '../../sim/gas/viscosity.ts';

const CONSTANT = 0.07;

/** Reynolds number below which it is held [-]: gas all but at rest. */
const LOWEST_REYNOLDS = 100;

/** Nusselt number [-] at a Reynolds number [-]. */
export function ductNusselt(reynolds: number): number {
  const root = Math.sqrt(reynolds);
  return CONSTANT * root * Math.sqrt(root);
}

/** Stanton number [-]; two square roots, no power. */
export function ductStanton(reynolds: number): number {
  return CONSTANT / (PRANDTL * Math.sqrt(Math.sqrt(Math.max(reynolds, LOWEST_REYNOLDS))));
}
