/**
 * What a wet wall costs when the driver asks for more: the two-parameter film model,
 *
 *   dm_f/dt = X f - m_f / tau,     delivered = (1 - X) f + m_f / tau
 *
 *   f  fuel injected [kg/s]   X  share that lands on walls [-]   tau  time constant of the film [s]
 *
 * After a step of df the cylinder gets (1 - X) df at once and the rest by exp(-t / tau); the fuel it
 * misses in all is X tau df. X and tau are taken from the settled film of a steady run.
 * Source: Aquino (1981), SAE 810494 (from memory).
 */
import { exp, log } from '../elementary/powers.ts';

export interface FilmModel {
  /** Share of the fuel that lands on walls [-]. */
  share: number;
  /** Time constant [s]. */
  time: number;
}

/** Fuel delivered over fuel asked for [-], t [s] after a step. */
export function deliveredAfterStep({ share, time }: FilmModel, t: number): number {
  return time > 0 ? 1 - share * exp(-t / time) : 1;
}

/** Time until the mixture is within `error` [-] of what was asked for after a step [s]. */
export function leanTime({ share, time }: FilmModel, error: number): number {
  return share > error ? time * log(share / error) : 0;
}
