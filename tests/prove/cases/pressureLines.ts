/** Lines and volumes of a pressure sensor as they are set in the published checks. */
import type Complex from 'complex.js';
import { magnitude } from '../../../sim/acoustics/complex.ts';
import { fourPolePressure } from '../../../sim/acoustics/fourPole.ts';
import {
  fourPoleLines,
  type Line,
  type RestingGas,
  volumeAdmittance,
} from '../../../sim/acoustics/line.ts';

const R = 287.05;
// biome-ignore lint/suspicious/noApproximativeNumericConstant: no root of a half
const PRANDTL = 0.707;

/** Air of 1.82e-5 Pa s and a Prandtl number of 0.707, as the checks have it. */
export function restingAir(temperature = 288.15, pressure = 101325): RestingGas {
  return {
    density: pressure / (R * temperature),
    soundSpeed: Math.sqrt(1.4 * R * temperature),
    pressure,
    viscosity: 1.82e-5,
    gamma: 1.4,
    prandtl: PRANDTL,
  };
}

/** Lines from the open end to a volume. Lengths [m], volume [m^3], pressure of the air [Pa]. */
export interface SensorLine {
  name: string;
  lines: readonly Line[];
  volume: number;
  pressure?: number;
}

/** Pressure in the volume over that at the open end. */
export function atSensor({ lines, volume, pressure }: SensorLine, frequency: number): Complex {
  const gas = restingAir(288.15, pressure);
  return fourPolePressure(
    fourPoleLines(lines, frequency, gas),
    volumeAdmittance(volume, frequency, gas),
  );
}

/** Phase [deg], of all that differ by whole turns the one nearest to another. */
export function phaseNear({ re, im }: Complex, degrees: number): number {
  const phase = (Math.atan2(im, re) * 180) / Math.PI;
  return phase + 360 * Math.round((degrees - phase) / 360);
}

/** Highest amplitude ratio below a frequency [Hz], and where [Hz]. */
export function peakOf(line: SensorLine, upTo: number): { height: number; frequency: number } {
  const at = (frequency: number) => magnitude(atSensor(line, frequency));
  let frequency = 1;
  for (let f = 1; f < upTo; f += 1) if (at(f) > at(frequency)) frequency = f;
  for (let step = 0.5; step > 1e-4; step /= 2) {
    if (at(frequency + step) > at(frequency)) frequency += step;
    else if (at(frequency - step) > at(frequency)) frequency -= step;
  }
  return { height: at(frequency), frequency };
}
