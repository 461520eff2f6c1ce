/**
 * How far plates come apart when a head grows with heat and the rod that links their levers grows less:
 *
 *   angle = (alpha_head - alpha_rod) L rise / r
 *
 *   L  along the rod from the body that the rest is set to [m]   r  lever at the shaft [m]   rise  of both [K]
 *   alpha  linear expansion [1/K]: aluminium 23e-6, steel 11.7e-6, near room temperature
 *
 * Source: CRC Handbook of Chemistry and Physics (from memory); alloys differ by some 5 %. Small angles, the
 * rod square to its levers. A rod that stays cold while the head grows gives twice as much.
 */
const HEAD = 23e-6;
const ROD = 11.7e-6;

/** Angle by which a body at `distance` [m] is off once head and rod are `rise` [K] warmer [rad]. */
export function expansionAngle(distance: number, lever: number, rise: number): number {
  return ((HEAD - ROD) * rise * distance) / lever;
}
