/** Numbers as text, whatever they measure. */

/** What stands where there is no figure. */
export const NO_FIGURE = '-';

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

/** The text of a number with a plus before a gain. */
export function withSign(text: string): string {
  return Number(text) > 0 ? `+${text}` : text;
}

/** A count and its noun: `1 point`, `3 points`. */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** The first few of a list, and how many more there are. */
export function listed(items: readonly string[], most = 4): string {
  const more = items.length - most;
  return more > 0 ? `${items.slice(0, most).join(', ')} and ${more} more` : items.join(', ');
}

/** Running sums. */
export function cumulative(values: readonly number[]): number[] {
  let sum = 0;
  return values.map((value) => {
    sum += value;
    return sum;
  });
}

const DIGITS = 10;

/**
 * A number as files write it, rounded to ten significant digits, well below any physical meaning and
 * well above round-off; null where there is none.
 */
export function plain(value: number | undefined): number | null {
  return Number.isFinite(value) ? Number(value!.toPrecision(DIGITS)) : null;
}
