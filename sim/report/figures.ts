/** Figures as a builder reads them: SI inside becomes millimetres, degrees Celsius, per cent. */
import type { Score } from '../decision/target.ts';
import { ZERO_CELSIUS } from '../units.ts';

/** What stands where there is no figure. */
export const NO_FIGURE = '-';

/** Difference below which a dynamometer shows nothing [%]; common practice, no source. */
export const UNFELT = 0.5;

/** A number with so many decimals, and no minus before a zero; a dash where it is not finite. */
export function fixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return NO_FIGURE;
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** Rounded to significant digits, without trailing zeros. */
export function brief(value: number, digits = 4): string {
  return Number.isFinite(value) ? String(Number(value.toPrecision(digits))) : NO_FIGURE;
}

/** Length [m] -> `86 mm`. */
export function millimetres(length: number): string {
  return `${brief(length * 1e3, 5)} mm`;
}

/** Pressure [Pa] -> `985 mbar`. */
export function millibars(pressure: number): string {
  return `${brief(pressure / 100, 5)} mbar`;
}

/** Temperature [K] -> `20 degC`. */
export function celsius(temperature: number): string {
  return `${fixed(temperature - ZERO_CELSIUS, 0)} degC`;
}

/** Speed [rpm] -> `6000 rpm`. */
export function rpm(speed: number): string {
  return `${brief(speed, 6)} rpm`;
}

/** `from` and `to` [rpm] -> `5400 to 7400 rpm`. */
export function rpmRange({ from, to }: { from: number; to: number }): string {
  return `${brief(from, 6)} to ${rpm(to)}`;
}

/** Per cent -> `3.1 %`. */
export function percent(value: number, decimals = 1): string {
  return `${fixed(value, decimals)} %`;
}

/** Per cent of change -> `+3.1 %`. */
export function change(value: number, decimals = 1): string {
  const text = fixed(value, decimals);
  return `${value > 0 && Number(text) !== 0 ? '+' : ''}${text} %`;
}

/** Volumetric efficiency [-] -> `0.947`. */
export function efficiency(value: number): string {
  return fixed(value, 3);
}

/** A score as a bare figure: volumetric efficiency [-], or torque [Nm]. */
export function scoreFigure(value: number, score?: Score): string {
  return score === 'indicated-torque' ? fixed(value, 1) : efficiency(value);
}

/** The name of a score for the head of a column. */
export function scoreName(score?: Score): string {
  return score === 'indicated-torque' ? 'mean torque in band [Nm]' : 'mean VE in band';
}

/** A count and its noun: `1 point`, `3 points`. */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
