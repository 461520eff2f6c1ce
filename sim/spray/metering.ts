/**
 * Injected quantity holds the stated mixture from cycle to cycle: what the air trapped last time asks
 * for, what was lost in front of the mouth, and a slow correction for the rest,
 *
 *   m_next = m_air / AFR + m_lost + I,   I += k (m_air / AFR - m_delivered)
 *
 *   m_air, m_delivered  air trapped and fuel in the cylinder at the last valve closing [kg]
 *   m_lost              running mean of what was lost [kg]
 *
 * An integral controller: common practice, no source.
 */
import type { StagingSpecification } from '../injectors.ts';

/** Share of a cycle's shortfall that the next one makes up, once the first fuel has come through. */
const FEEDBACK = 0.15;
const FIRST_CORRECTED = 5;
/** Greatest correction, over what is needed [-]. */
const MOST_CORRECTION = 0.15;
/** Share of the newest cycle in the running mean of what was lost [-]. */
const LOSS_MEMORY = 0.5;

/** Fuel to inject, from cycle to cycle. */
export class Metering {
  private cycles = 0;
  private loss = 0;
  private correction = 0;

  /** Fuel for the next cycle [kg], from what the last one needed, was short of and lost [kg]. */
  next(needed: number, short: number, lost: number): number {
    this.loss += LOSS_MEMORY * (lost - this.loss);
    if (++this.cycles >= FIRST_CORRECTED) {
      const most = MOST_CORRECTION * needed;
      this.correction = Math.min(Math.max(this.correction + FEEDBACK * short, -most), most);
    }
    return needed + this.loss + this.correction;
  }
}

/** Share of each injector: the outermost has its own, the others share the rest by their flow. */
export function shares(
  injectors: { list: readonly { flow: number }[]; staging: StagingSpecification },
  outer: number,
): number[] {
  const { list } = injectors;
  if (list.length === 1) return [1];
  const inner = list.slice(0, -1);
  const flow = inner.reduce((sum, injector) => sum + injector.flow, 0);
  return [...inner.map((injector) => ((1 - outer) * injector.flow) / flow), outer];
}
