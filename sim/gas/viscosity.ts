/**
 * Sutherland's law for air: mu = 1.458e-6 T^1.5 / (T + 110.4) [Pa s], T [K].
 * Source: US Standard Atmosphere 1976, eq. 51; used for burned gas too (within about 10 %,
 * common practice, no source).
 */
export function viscosity(T: number): number {
  return (1.458e-6 * T * Math.sqrt(T)) / (T + 110.4);
}

/** Prandtl number of air and burned gas [-]; 0.70 to 0.73 from 250 to 1200 K, handbook value. */
export const PRANDTL = 0.71;
