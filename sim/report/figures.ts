/** Figures in sentences: SI inside becomes millimetres, milliseconds, per cent. */
import type { LengthUnit } from '../decision/lengthUnit.ts';
import { fixed, withSign } from './numbers.ts';
import { boreOf, inUnit, lengthQuantity, milliseconds, SPEED, shown, told } from './quantities.ts';

/** Difference below which a dynamometer shows nothing [%]; common practice, no source. */
export const UNFELT = 0.5;

/** Length [m] in the builder's unit: `86 mm`, `3.4 in`. */
export const lengthIn = (length: number, unit?: LengthUnit) => told(lengthQuantity(unit), length);

/** A bore or another size [m] likewise, to three figures in millimetres: `63.5 mm`, `2.5 in`. */
export const sizeIn = (size: number, unit?: LengthUnit) => told(inUnit(boreOf('', ''), unit), size);

/** Speed [rpm] -> `6000 rpm`. */
export const rpm = (speed: number) => told(SPEED, speed);

/** `from` and `to` [rpm] -> `5400 to 7400 rpm`. */
export function rpmRange({ from, to }: { from: number; to: number }): string {
  return `${shown(SPEED, from)} to ${rpm(to)}`;
}

/** Per cent -> `3.1 %`. */
export function percent(value: number, decimals = 1): string {
  return `${fixed(value, decimals)} %`;
}

/** Per cent of change -> `+3.1 %`. */
export function change(value: number, decimals = 1): string {
  return `${withSign(fixed(value, decimals))} %`;
}

/** A share [-] -> `3.1 %`. */
export function share(value: number, decimals = 1): string {
  return percent(100 * value, decimals);
}

/** Time [s] -> `3.1 ms`. */
export function inMilliseconds(time: number, decimals: number): string {
  return told(milliseconds('', '', decimals), time);
}
