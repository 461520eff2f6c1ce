/** Shapes of pipes for tests. */
import { lengthOf, type Profile, type Station } from '../sim/duct/profile.ts';

/** Two profiles end to end; where their diameters meet, one station. */
export function joinProfiles(first: Profile, second: Profile): Station[] {
  const shift = lengthOf(first);
  const moved = second.map((one) => ({ ...one, x: one.x + shift }));
  const alike = first.at(-1)?.diameter === moved[0]?.diameter;
  return [...first, ...moved.slice(alike ? 1 : 0)];
}
