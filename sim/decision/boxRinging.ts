/**
 * At which speed the firing meets the note of a box on its snorkel:
 *
 *   f = c/(2 pi) sqrt(S / (V (L + l))),  n = 120 f / N      l = 0.6127 a, the open end outside
 *
 * The note of a resonator with one neck, after Helmholtz, any book of acoustics; trumpets, ports and the spring of
 * the snorkel's own air are left out, and the air inside the box end of the snorkel counts as still.
 */
import { circleArea } from '../duct/profile.ts';
import { END_CORRECTION_UNFLANGED } from '../loss/endCorrection.ts';
import { DRY_AIR_GAS_CONSTANT } from '../units.ts';

const GAMMA = 1.4;

export interface Box {
  /** [m^3] */
  volume: number;
  /** [m] */
  snorkelLength: number;
  snorkelDiameter: number;
}

/** Engine speed [rpm]; `temperature` of the air in the snorkel [K]. */
export function ringingSpeed(box: Box, cylinders: number, temperature: number): number {
  const { volume, snorkelLength, snorkelDiameter } = box;
  const sound = Math.sqrt(GAMMA * DRY_AIR_GAS_CONSTANT * temperature);
  const length = snorkelLength + (END_CORRECTION_UNFLANGED * snorkelDiameter) / 2;
  const note = (sound / (2 * Math.PI)) * Math.sqrt(circleArea(snorkelDiameter) / (volume * length));
  return (120 * note) / cylinders;
}
