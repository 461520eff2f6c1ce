/**
 * A measured run carried to the air that a scenario computes in.
 *
 *   torque, as read:       T f(air of the day) / f(air of the scenario)
 *   torque, corrected:     T / f(air of the scenario)
 *   volumetric efficiency: E sqrt(temperature of the scenario / temperature of the day)
 *
 * f is the factor of a standard (powerCorrection.ts): SAE J1349 unless the run says otherwise, since
 * its 85 % mechanical efficiency belongs to brake figures. Volumetric efficiency counts against the
 * air of the day already; that it rises as the square root of temperature is what remains of the same
 * standards once density, p / T, is taken out (Heywood 1988, sec. 6.2.2, from memory).
 */

import {
  powerCorrectionDin70020,
  powerCorrectionIso1585,
  powerCorrectionSaeJ1349,
} from '../../decision/powerCorrection.ts';
import { vapourPressure } from '../../gas/atmosphere.ts';
import type { MeasuredRun, StandardAir } from '../../scenario/measuredRun.ts';
import type { AmbientSpecification } from '../../specification.ts';

export interface RunInScenarioAir {
  run: MeasuredRun;
  /** What every figure was multiplied by [-]. */
  factor: number;
  /** What was done, in words. */
  words: string;
}

/** Widest factor that standards of its kind accept (ISO 1585: 0.93 to 1.07, from memory). */
const ACCEPTED = [0.93, 1.07] as const;

export function inScenarioAir(run: MeasuredRun, scenario: AmbientSpecification): RunInScenarioAir {
  const day = { ...scenario, ...run.ambient };
  const { factor, words } =
    run.figure === 'brake-torque' ? torqueFactor(run, day, scenario) : fillFactor(day, scenario);
  return { run: { ...run, values: run.values.map((value) => factor * value) }, factor, words };
}

function torqueFactor(
  { corrected, ambient }: MeasuredRun,
  day: AmbientSpecification,
  scenario: AmbientSpecification,
) {
  const standard = corrected ?? 'SAE J1349';
  const f = (air: AmbientSpecification) => correctionFactor(standard, air);
  if (corrected) {
    const factor = 1 / f(scenario);
    const words = `The run is corrected to ${corrected}; it was carried to the air of the scenario, times ${factor.toFixed(4)}.`;
    return { factor, words: words + outside(f(scenario), corrected) };
  }
  if (Object.keys(ambient).length === 0) {
    return {
      factor: 1,
      words: 'The run does not name its air; it is taken as that of the scenario.',
    };
  }
  const factor = f(day) / f(scenario);
  const words = `The run was carried from the air of its day to that of the scenario by ${standard}, times ${factor.toFixed(4)}.`;
  return { factor, words: words + outside(factor, standard) };
}

function fillFactor(day: AmbientSpecification, scenario: AmbientSpecification) {
  const factor = Math.sqrt(scenario.temperature / day.temperature);
  const words =
    factor === 1
      ? 'The run names no other temperature than the scenario; nothing was corrected.'
      : `Volumetric efficiency was carried to the temperature of the scenario by its square root, times ${factor.toFixed(4)}.`;
  return { factor, words };
}

function outside(factor: number, standard: string): string {
  const [low, high] = ACCEPTED;
  if (factor >= low && factor <= high) return '';
  return ` That is beyond what ${standard} and its like accept (${low} to ${high}): trust the shape only.`;
}

function correctionFactor(standard: StandardAir, air: AmbientSpecification): number {
  const { pressure, temperature, relativeHumidity } = air;
  const dry = pressure - vapourPressure(pressure, temperature, relativeHumidity);
  if (standard === 'DIN 70020') return powerCorrectionDin70020(pressure, temperature);
  return standard === 'ISO 1585'
    ? powerCorrectionIso1585(dry, temperature)
    : powerCorrectionSaeJ1349(dry, temperature);
}
