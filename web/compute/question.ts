/** A scenario as the question that the core answers. */
import type { LengthQuestion, Scenario } from '../../sim/index.ts';

export function questionOf(scenario: Scenario): LengthQuestion {
  const { engine, sweep, speeds, refine, target, fit, lengthUnit: unit } = scenario;
  return { engine, lengths: sweep.lengths, speeds, refine, unit, target, ...(fit && { fit }) };
}
