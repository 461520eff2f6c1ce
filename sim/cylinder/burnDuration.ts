/**
 * How long a charge burns over what is stated for the engine, by how fast its flame is:
 *
 *   angle ~ (S_p nu)^(1/3) / S_L^(2/3)                                  S_p mean piston speed
 *   S_L ~ T^2.18 p^-0.16 (1 - 2.06 x^0.77),   nu ~ T^1.7 / p            x residual share
 *
 * T and p are those at valve closing: compressed alike they stay in the same ratio. Height of the chamber and
 * mixture are those of the engine and drop out. The mass share of residual gas is taken for the mole share.
 * Sources: Hires, Tabaczynski & Novak (1978), SAE 780232, as in Heywood (1988), ch. 14.4; Rhodes & Keck (1985),
 * SAE 850047, to x = 0.3; exponents of S_L at stoichiometric mixture as in Heywood, table 9.3 (all from memory).
 * Form of S_L: Metghalchi & Keck (1982), Combustion and Flame 48, 191, abstract: 0.4 to 50 atm, 298 to 700 K, there with
 * 1 - 2.1 x to x = 0.2, by which burn slows two thirds as much. How far a chamber obeys is its `burnResponse`.
 */
import { power } from '../elementary/powers.ts';

/** What is burnt at valve closing. */
export interface BurnConditions {
  /** Burned gas of the last cycle in the charge [-]. */
  residual: number;
  /** [Pa], [K]. */
  pressure: number;
  temperature: number;
  /** Mean piston speed [m/s]. */
  pistonSpeed: number;
}

/** Where a burn lasts as stated: about full load; our own choice, no source. */
export const STATED_AT: BurnConditions = {
  residual: 0.05,
  pressure: 150e3,
  temperature: 390,
  pistonSpeed: 15,
};

/** Beyond it nothing was measured: the burn of this much is kept. */
export const MOST_RESIDUAL = 0.3;

/** Burn duration over the stated one [-]. */
export function burnStretch(at: BurnConditions): number {
  return slowness(at) / slowness(STATED_AT);
}

function slowness({ residual, pressure, temperature, pistonSpeed }: BurnConditions): number {
  const viscosity = power(temperature, 1.7) / pressure;
  const diluted = 1 - 2.06 * power(Math.min(residual, MOST_RESIDUAL), 0.77);
  const flame = power(temperature, 2.18) * power(pressure, -0.16) * diluted;
  return power(pistonSpeed * viscosity, 1 / 3) * power(flame, -2 / 3);
}
