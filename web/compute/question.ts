/** A scenario as the question that the core answers. */
import type { LengthQuestion, Scenario } from '../../sim/index.ts';

export function questionOf({ engine, sweep, speeds, target, fit }: Scenario): LengthQuestion {
  return { engine, lengths: sweep.lengths, speeds, target, ...(fit && { fit }) };
}
