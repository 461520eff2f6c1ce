/** Engines for checks, from the demo scenario of the hill-climb four. */
import type { Duct } from '../../../sim/duct/duct.ts';
import { intakeDucts, mouthInertia } from '../../../sim/engine/intakeDucts.ts';
import { rimCorrection } from '../../../sim/loss/mouthLength.ts';
import type { EngineSpecification } from '../../../sim/specification.ts';
import { readDemo } from '../../toy.ts';

/** A copy of the hill-climb engine to change at will. */
export const hillClimb = (): EngineSpecification => structuredClone(readDemo('hill-climb').engine);

/** A plain cut trumpet [m], wide open to the body, as the engine makes it: its duct and its mouth's inertia [m]. */
export function plainTrumpet(length: number, bore: number): { duct: Duct; inertia: number } {
  const { intake } = hillClimb();
  const { trumpet, throttle } = intake;
  const cut = { bore, depth: 0, overhang: 0 };
  Object.assign(trumpet, { length, outerDiameter: bore, innerDiameter: bore });
  Object.assign(trumpet.bellmouth, { ...cut, endCorrection: rimCorrection(cut) });
  const plain = { ...intake, throttle: { ...throttle, shaftPosition: 0 } };
  return { duct: intakeDucts(plain, 0.006).trumpet, inertia: mouthInertia(plain) };
}
