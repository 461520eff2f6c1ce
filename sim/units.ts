/**
 * Physical constants in SI, each with its source. Conversions of a user's units live in
 * sim/scenario/quantity.ts; nothing below the scenario layer knows a unit other than SI.
 */

/** Universal gas constant [J/(mol K)]; exact: product of the SI's 2019 k and N_A (BIPM, SI Brochure, 9th ed., 2019). */
export const GAS_CONSTANT = 8.31446261815324;

/** Standard atmosphere [Pa]; exact (10th CGPM, 1954, resolution 4). */
export const STANDARD_ATMOSPHERE = 101325;

/** Standard acceleration of free fall [m/s^2]; exact (3rd CGPM, 1901). */
export const STANDARD_GRAVITY = 9.80665;

/** Celsius zero on the thermodynamic scale [K]; exact (BIPM, SI Brochure, 9th ed., 2019). */
export const ZERO_CELSIUS = 273.15;

/**
 * Specific gas constant of dry air [J/(kg K)], of a molar mass of 0.02896546 kg/mol with 400 ppm of carbon
 * dioxide: CIPM-2007, Picard, Davis, Glaeser & Fujii, Metrologia 45 (2008) 149.
 */
export const DRY_AIR_GAS_CONSTANT = GAS_CONSTANT / 0.02896546;

/** Conventional inch of water [Pa] (NIST Special Publication 811, 2008, appendix B.8). */
export const INCH_OF_WATER = 249.08891;

/** Conventional inch of mercury [Pa] (NIST Special Publication 811, 2008, appendix B.8). */
export const INCH_OF_MERCURY = 3386.389;
