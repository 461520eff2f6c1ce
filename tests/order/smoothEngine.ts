/**
 * The engine with what is not smooth taken away: no flare, no taper, no step, no joint, no valve
 * overlap and so no fresh gas beside burned gas in the exhaust.
 */
import type { EngineSpecification } from '../../sim/specification.ts';

export function smoothEngine(engine: EngineSpecification): EngineSpecification {
  const smooth = structuredClone(engine);
  const { intake, exhaust } = smooth;
  Object.assign(intake.trumpet.bellmouth, { depth: 0, overhang: 0 });
  intake.port.innerDiameter = intake.port.outerDiameter;
  exhaust.port.innerDiameter = exhaust.primary.outerDiameter;
  exhaust.port.outerDiameter = exhaust.primary.outerDiameter;
  exhaust.joined = 1;
  delete exhaust.tail;
  Object.assign(intake.valve.lift, { open: 395, close: 600 });
  Object.assign(exhaust.valve.lift, { open: 130, close: 335 });
  return smooth;
}
