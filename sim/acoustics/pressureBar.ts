/**
 * Hoses that meet on a volume, with a sensor at the end of a hose of its own: what becomes of a pressure
 * at the far ends of the hoses.
 *
 *   U_i = (p_i - A_i p_bar) / B_i,  sum of U_i = (Y + Ys) p_bar
 *   p_bar = sum(p_i / B_i) / (sum(A_i / B_i) + Y + Ys),   p_sensor = p_bar / (A_s + B_s Y_t)
 *
 *   p_i  pressure at the far end of hose i [Pa]    U_i  what it brings to the volume [m^3/s]
 *   A_i, B_i  four poles of jet and hose i   A_s, B_s  of the sensor's hose
 *   Y, Ys, Y_t  admittances of volume, sensor's hose and the sensor's own volume [m^3/(Pa s)]
 *
 * All far ends in phase make the bar answer as one hose on an N-th of the volume; one alone moves it by an
 * N-th of that; N far ends shifted evenly in time move it at every N-th harmonic only.
 *
 * Sources: one pressure and no loss of volume where lines meet (continuity, no constant is fitted); lines after
 * Bergh & Tijdeman, NLR-TR F.238, 1965. Linear: small amplitude, jets by their resistance, no mean flow.
 */
import type Complex from 'complex.js';
import { ONE } from './complex.ts';
import {
  type FourPole,
  fourPoleAdmittance,
  fourPoleChain,
  fourPolePressure,
  fourPoleResistance,
} from './fourPole.ts';
import { fourPoleLine, type Line, type RestingGas, volumeAdmittance } from './line.ts';

/** Alike hoses from runners to a volume, and a sensor. Lengths [m], volumes [m^3]. */
export interface PressureBar {
  /** How many hoses there are [-]. */
  hoses: number;
  hose: Line;
  /** Of the bar, hoses not counted. */
  volume: number;
  sensor: {
    /** Hose between bar and sensor; absent where the sensor sits on the bar. */
    hose?: Line;
    /** Inside the sensor. */
    volume: number;
  };
  /** At the runner's end of each hose; absent where hoses are open. */
  jet?: Jet;
}

/** A calibrated hole. */
export interface Jet {
  /** Bore [m]. */
  bore: number;
  /** Discharge coefficient [-]. */
  coefficient: number;
}

/** What does not hang on the jets, for one frequency. */
export interface BarLines {
  hoses: number;
  /** Of one hose, from the runner to the bar. */
  hose: FourPole;
  /** Admittance of volume and sensor [m^3/(Pa s)]. */
  taken: Complex;
  /** Pressure at the sensor over that of the bar [-]. */
  sensor: Complex;
}

/** @param frequency above 0 [Hz] */
export function barLines(
  { hoses, hose, volume, sensor }: PressureBar,
  frequency: number,
  gas: RestingGas,
): BarLines {
  const inside = volumeAdmittance(sensor.volume, frequency, gas);
  const own = sensor.hose && fourPoleLine(sensor.hose, frequency, gas);
  const beside = own ? fourPoleAdmittance(own, inside) : inside;
  return {
    hoses,
    hose: fourPoleLine(hose, frequency, gas),
    taken: volumeAdmittance(volume, frequency, gas).add(beside),
    sensor: own ? fourPolePressure(own, inside) : ONE,
  };
}

/** What the pressures at the far ends of the hoses become, for one frequency. */
export interface BarResponse {
  /** Share of one far end's pressure that reaches the bar, the other ends still [-]. */
  bar: Complex;
  /** Jet and hose of one runner, from the runner to the bar. */
  arm: FourPole;
}

/** @param resistance of the jet at the runner's end of each hose [Pa s/m^3] */
export function barResponse({ hoses, hose, taken }: BarLines, resistance: number): BarResponse {
  const arm = fourPoleChain(fourPoleResistance(resistance), hose);
  return { bar: fourPolePressure({ ...arm, A: arm.A.mul(hoses) }, taken), arm };
}

/**
 * Volume velocity from one runner into its hose [m^3/s] where it holds `own` and the bar `bar` [Pa].
 */
export function armFlow({ A, B, C, D }: FourPole, own: Complex, bar: Complex): Complex {
  const toBar = own.sub(A.mul(bar)).div(B);
  return C.mul(bar).add(D.mul(toBar));
}
