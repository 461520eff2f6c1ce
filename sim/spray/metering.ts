/**
 * Injected quantity holds the stated mixture from cycle to cycle: what the air trapped last time asks
 * for, over the share that is not lost in front of the mouth, and a slow correction for the rest,
 *
 *   m_next = m_air / (AFR (1 - l)) + I,   I += k (m_air / AFR - m_delivered - m_kept) / (1 - l)
 *
 *   m_air, m_delivered  air trapped and fuel in the cylinder at the last valve closing [kg]
 *   m_kept              by which films grew, which will come by itself once they lie still [kg]
 *   l                   running mean of the share of the fuel injected that was lost [-]
 *
 * An integral controller: common practice, no source.
 */
import type { StagingSpecification } from '../injectors.ts';

/** Share of a cycle's shortfall that the next one makes up. */
const FEEDBACK = 0.3;
/** Cycles, the first of them whole or not, before fuel has come through and is looked at. */
const FIRST = 3;
/** Greatest correction, over what is needed and lost [-]: what an overlap blows through into the exhaust. */
const MOST_CORRECTION = 0.5;
/** Share of the newest cycle in the running mean of what is lost, and the most it may be [-]. */
const LOSS_MEMORY = 0.5;
const MOST_LOST = 0.8;

/** Fuel of a cycle [kg]: what its air needs, what was injected, lost, in the cylinder at closing, kept by films. */
export interface FuelOfCycle {
  needed: number;
  injected: number;
  lost: number;
  delivered: number;
  kept: number;
}

/** Fuel to inject, from cycle to cycle. */
export class Metering {
  private cycles = 0;
  private lost = 0;
  private correction = 0;

  /** Goes on in the middle of a cycle. */
  resume(): this {
    this.cycles = Math.min(this.cycles, 1);
    return this;
  }

  /** Fuel for the next cycle [kg]. */
  next({ needed, injected, lost, delivered, kept }: FuelOfCycle): number {
    if (++this.cycles >= FIRST && injected > 0) {
      this.lost += LOSS_MEMORY * (Math.min(lost / injected, MOST_LOST) - this.lost);
      const most = (MOST_CORRECTION * needed) / (1 - this.lost);
      const short = (needed - delivered - kept) / (1 - this.lost);
      this.correction = Math.min(Math.max(this.correction + FEEDBACK * short, -most), most);
    }
    return needed / (1 - this.lost) + this.correction;
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
