/** Numbers and lengths as the page shows them. */
const NBSP = '\u00a0';
const MINUS = '\u2212';

/** A number with fixed decimals and a true minus sign. */
export function fixed(value: number, decimals: number): string {
  return value.toFixed(decimals).replace('-', MINUS);
}

/** A length [m] in millimetres. */
export function millimetres(length: number): string {
  return `${fixed(length * 1e3, Number.isInteger(Math.round(length * 1e4) / 10) ? 0 : 1)}${NBSP}mm`;
}

/** A speed [rpm]. */
export function rpm(speed: number): string {
  return `${Math.round(speed)}${NBSP}rpm`;
}

/** A change [%] with its sign. */
export function signedPercent(percent: number, decimals = 1): string {
  const text = fixed(percent, decimals);
  return `${percent > 0 ? '+' : ''}${text}${NBSP}%`;
}

/** A share [%] without sign. */
export function percent(value: number, decimals = 1): string {
  return `${fixed(Math.abs(value), decimals)}${NBSP}%`;
}
