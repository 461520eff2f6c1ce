/**
 * Which reading tells load at a cell: the mean pressure behind the plate, or the angle of the plate. Both
 * change with the air along a column of the table; a reading is blind where one per cent of air moves it
 * by less than a sensor resolves.
 */
import { log } from '../../elementary/powers.ts';
import { isFailure } from '../../sweep/runner.ts';
import { airOf } from './cell.ts';
import type { LoadStudy } from './compute.ts';

/** One step of a sensor: 0.1 % of 100 kPa; ten bits of a right angle. Common practice, no source. */
const RESOLVED = { pressure: 100, angle: 90 / 1024 };

const PERCENT = 0.01;

export interface Signal {
  /** What one per cent more air adds to the pressure [Pa] and to the angle [deg]. */
  pressure: number;
  angle: number;
  tells: 'both' | 'pressure' | 'angle' | 'neither';
}

/** Signal at a cell, from the rows on either side of it. */
export function signalAt(
  { angles, outcomes }: LoadStudy,
  i: number,
  j: number,
): Signal | undefined {
  const [low, high] = [Math.max(i - 1, 0), Math.min(i + 1, angles.length - 1)];
  const [below, above] = [outcomes[low]![j]!, outcomes[high]![j]!];
  if (isFailure(below) || isFailure(above)) return undefined;
  const percents = log(airOf(above) / airOf(below)) / PERCENT;
  const pressure = (above.portPressure - below.portPressure) / percents;
  const angle = (angles[high]! - angles[low]!) / percents;
  const seen = (change: number, step: number) => percents > 0 && change > step;
  const [p, a] = [seen(pressure, RESOLVED.pressure), seen(angle, RESOLVED.angle)];
  return { pressure, angle, tells: p && a ? 'both' : p ? 'pressure' : a ? 'angle' : 'neither' };
}
