/** What a film is given, and who takes what leaves it. */
import type { Gas } from '../gas/gas.ts';
import type { IntakeLine } from './intakeLine.ts';
import type { LiquidFuel } from './liquidFuel.ts';

export interface FilmOptions {
  fuel: LiquidFuel;
  line: IntakeLine;
  gas: Gas;
  /** Thickness below which the film breaks into patches [m]. */
  thickness: number;
  /** Head of the intake valve: wetted area [m^2], temperature [K]. */
  valve: { area: number; temperature: number };
}

/** Liquid that has run through the valve. */
export interface Runoff {
  mass: Float64Array;
  energy: number;
}

/** Takes vapour [kg] and energy [J] that a film lost at cell k. */
export type Give = (k: number, vapour: number, energy: number) => void;
