/**
 * Factors that carry power measured in the air of the day to a standard's air.
 *
 *   SAE J1349    1.180 (990 / pd) sqrt((t + 273) / 298) - 0.18
 *   ISO 1585     (990 / pd)^1.2 ((t + 273) / 298)^0.6
 *   DIN 70020    (1013 / p) sqrt((t + 273) / 293)
 *
 *   pd  pressure of the dry part of the air [mbar]   p  total pressure [mbar]   t  [degC]
 *
 * Spark ignition, no supercharging, wide open throttle. J1349 has 85 % mechanical efficiency built
 * in. Sources: SAE J1349 and DIN 70020 as quoted in the trade press; exponents of ISO 1585 from
 * memory. Each standard accepts its factor in a narrow band only (ISO 1585: 0.93 to 1.07, from
 * memory).
 */
import { power } from '../elementary/powers.ts';
import { ZERO_CELSIUS } from '../units.ts';

/** Temperature [K] as the standards count it, degC + 273. */
function standardKelvin(T: number): number {
  return T - ZERO_CELSIUS + 273;
}

/** SAE J1349 factor [-] from the pressure of dry air [Pa] and temperature [K]. */
export function powerCorrectionSaeJ1349(dryPressure: number, T: number): number {
  return 1.18 * (99000 / dryPressure) * Math.sqrt(standardKelvin(T) / 298) - 0.18;
}

/** ISO 1585 factor [-] from the pressure of dry air [Pa] and temperature [K]. */
export function powerCorrectionIso1585(dryPressure: number, T: number): number {
  return power(99000 / dryPressure, 1.2) * power(standardKelvin(T) / 298, 0.6);
}

/** DIN 70020 factor [-] from total pressure [Pa] and temperature [K]. */
export function powerCorrectionDin70020(pressure: number, T: number): number {
  return (101300 / pressure) * Math.sqrt(standardKelvin(T) / 293);
}
