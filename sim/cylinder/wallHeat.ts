/**
 * Heat from gas to cylinder wall, Woschni:
 *
 *   h = 3.26 B^-0.2 p^0.8 T^-0.55 w^0.8   [W/m^2 K],  B [m], p [kPa], T [K], w [m/s]
 *   w = 6.18 Sp                            gas exchange
 *   w = 2.28 Sp                            compression
 *   w = 2.28 Sp + 3.24e-3 (Vd T1 / (p1 V1)) (p - p_motored)   combustion and expansion
 *
 * State 1 is valve closing; the motored pressure follows p1 (V1 / V)^1.35.
 * Source: Woschni (1967), SAE 670931, as in Heywood (1988) sec. 12.4.3, eqs. 12.17-12.19 (from
 * memory); exponent 1.35 common practice, no source. Measured engines scatter by a factor of 1.5.
 */

/** Heat transfer coefficient [W/m^2 K] from bore [m], pressure [Pa], temperature [K], speed [m/s]. */
export function woschniCoefficient(
  bore: number,
  pressure: number,
  temperature: number,
  gasSpeed: number,
): number {
  return 3.26 * bore ** -0.2 * (pressure / 1000) ** 0.8 * temperature ** -0.55 * gasSpeed ** 0.8;
}

/** Gas speed [m/s] of the gas exchange phase. */
export function exchangeSpeed(meanPistonSpeed: number): number {
  return 6.18 * meanPistonSpeed;
}

/** State at valve closing, from which the motored pressure is reckoned. */
export interface ClosingState {
  /** Pressure [Pa], temperature [K], volume [m^3] at valve closing. */
  pressure: number;
  temperature: number;
  volume: number;
}

const MOTORED_EXPONENT = 1.35;

/** Gas speed [m/s] while the valves are shut, at pressure p [Pa] and volume V [m^3]. */
export function closedSpeed(
  meanPistonSpeed: number,
  swept: number,
  closing: ClosingState,
  pressure: number,
  volume: number,
): number {
  const motored = closing.pressure * (closing.volume / volume) ** MOTORED_EXPONENT;
  const rise = Math.max(0, pressure - motored);
  const scale = (swept * closing.temperature) / (closing.pressure * closing.volume);
  return 2.28 * meanPistonSpeed + 3.24e-3 * scale * rise;
}
