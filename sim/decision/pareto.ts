/**
 * The choices worth weighing: those that no other beats in gain without a higher price.
 *
 * a is beaten by b where b gains at least as much at no higher price and is better in one of both.
 */

/** Gain in the bands and price outside them, both in the same unit. */
export interface GainAndPrice {
  gainPercent: number;
  worstLossPercent: number;
}

/** The unbeaten of the choices, dearest first; of equal ones all; choices without figures never. */
export function paretoSet<T extends GainAndPrice>(choices: readonly T[]): T[] {
  const known = choices.filter(
    (choice) => Number.isFinite(choice.gainPercent) && Number.isFinite(choice.worstLossPercent),
  );
  return known
    .filter((a) => !known.some((b) => beats(b, a)))
    .sort((a, b) => b.worstLossPercent - a.worstLossPercent || b.gainPercent - a.gainPercent);
}

function beats(b: GainAndPrice, a: GainAndPrice): boolean {
  return (
    b.gainPercent >= a.gainPercent &&
    b.worstLossPercent <= a.worstLossPercent &&
    (b.gainPercent > a.gainPercent || b.worstLossPercent < a.worstLossPercent)
  );
}
