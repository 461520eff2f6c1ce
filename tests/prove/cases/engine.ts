/** Engines for checks, from the demo scenario of the hill-climb four. */
import type { Duct } from '../../../sim/duct/duct.ts';
import { intakeDucts } from '../../../sim/engine/intakeDucts.ts';
import type { EngineSpecification } from '../../../sim/specification.ts';
import { readDemo } from '../../toy.ts';

/** A copy of the hill-climb engine to change at will. */
export const hillClimb = (): EngineSpecification => structuredClone(readDemo('hill-climb').engine);

/** The engine's trumpet duct alone: a plain pipe of a drawn length and bore [m], no body behind it. */
export function plainTrumpetDuct(length: number, bore: number): Duct {
  const { intake } = hillClimb();
  const { trumpet, throttle } = intake;
  Object.assign(trumpet, { length, outerDiameter: bore, innerDiameter: bore });
  Object.assign(trumpet.bellmouth, { depth: 0, overhang: 0 });
  return intakeDucts({ ...intake, throttle: { ...throttle, shaftPosition: 0 } }, 0.006).trumpet;
}
