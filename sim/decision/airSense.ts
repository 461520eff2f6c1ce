/**
 * How far a reading that load is told by may lead the air of a cycle astray:
 *
 *   by a slope     e = |d ln m / d x| dx      x  pressure [Pa] or plate angle [deg]
 *   by the day     choked plate  m ~ p / sqrt(T);  same ratio of pressures across it, the same;  wide open
 *                  between p / sqrt(T) and p / T
 *
 *   m  air of a cycle   p, T  pressure and temperature outside
 *
 * Source: dimensional analysis of the nozzle, exact for the first two; common practice for the third. From sea
 * level to 1500 m of the standard atmosphere (ISO 2533) p / sqrt(T) falls by 15.1 %, p / T by 13.6 %.
 */
import { log } from '../elementary/powers.ts';
import { standardAtmosphere } from '../gas/atmosphere.ts';

/** Ratio of pressures across a plate up to which it chokes [-]; NACA Report 1135, gamma 1.4. */
export const CHOKED_TO = 0.5283;

/** A reading and the air that goes with it. */
export interface Sensed {
  reading: number;
  air: number;
}

/** Change of ln air by one unit of the reading between two places; undefined where the reading does not rise with the air. */
export function slopeBetween(below: Sensed, above: Sensed): number | undefined {
  const slope = log(above.air / below.air) / (above.reading - below.reading);
  return slope > 0 && Number.isFinite(slope) ? slope : undefined;
}

/** What a climb from sea level [m] makes of the air: past a choked plate, and by density [-]. */
export function climbed(height: number): { choked: number; density: number } {
  const [low, high] = [standardAtmosphere(0), standardAtmosphere(height)];
  const [p, t] = [high.pressure / low.pressure, high.temperature / low.temperature];
  return { choked: p / Math.sqrt(t), density: p / t };
}

/** What a table of angles is off by after the climb [-]; at most, where the plate does not choke. */
export function dayError(height: number, corrected: boolean, choked: boolean): number {
  const { choked: through, density } = climbed(height);
  if (!corrected) return 1 / through - 1;
  return choked ? 0 : through / density - 1;
}
