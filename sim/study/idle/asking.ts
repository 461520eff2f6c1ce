/** What closed formulas must be asked for, so that the engine draws what it wants: by what was tried. No source: interpolation. */

/** Air that the formulas were asked for, and that the engine drew [kg/s]. */
export interface Tried {
  asked: number;
  air: number;
}

/** Air is near enough to what is wanted [-]. */
export const NEAR = 0.03;
/** So far apart two must lie to tell a slope [-]: with the pulses of a valve air scatters by a per cent. */
const APART = 0.1;

/** Straight on from the last and the latest far from it, or from nothing and the last; as wanted where none was tried. */
export function askedFor(wanted: number, tried: readonly Tried[]): number {
  const last = tried.at(-1);
  if (!last) return wanted;
  const far = ({ air }: Tried) => Math.abs(air / last.air - 1) > APART;
  const before = tried.findLast(far) ?? { asked: 0, air: 0 };
  const slope = (last.asked - before.asked) / (last.air - before.air);
  const rise = slope > 0 ? slope : last.asked / last.air;
  return Math.max(last.asked + rise * (wanted - last.air), 0);
}
