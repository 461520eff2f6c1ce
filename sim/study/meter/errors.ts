/** How far each sensor leads the air astray at one place of the table, and which to trust there. */
import { CHOKED_TO, dayError, slopeBetween } from '../../decision/airSense.ts';
import { hypot } from '../../elementary/powers.ts';
import { isFailure } from '../../sweep/runner.ts';
import type { MeteredPoint, MeterQuestion } from './compute.ts';

export const SENSORS = ['flow', 'pressure', 'angle'] as const;
export type Sensor = (typeof SENSORS)[number];

export interface SensorErrors {
  /** Mean reading of the meter less the true flow, over it; and with its own error [-]. */
  pulse: number;
  flow: number;
  /** Whether the flow leaves the meter's range; above: at its peaks. */
  range: 'within' | 'below' | 'above';
  /** Of a reading at no particular moment, by ripple and by the sensor [-]; undefined where pressure does not rise with air. */
  pressure?: number;
  /** By the plate and by the day together, and by the day alone [-]; undefined where air does not rise with the angle. */
  angle?: number;
  day: number;
  /** The least wrong, where any is within what is allowed. */
  trust?: Sensor;
}

/** Of the i-th angle at one speed; nothing where the point failed. */
export function errorsOf(
  row: readonly MeteredPoint[],
  i: number,
  { engine, meter }: MeterQuestion,
): { errors?: SensorErrors } {
  const { seen } = row[i]!;
  if (!seen) return {};
  const { pulsation, readings, pressure } = seen;
  const choked = pressure.mean < CHOKED_TO * engine.intake.feed.pressure;
  const day = dayError(meter.climb, meter.correction === 'day', choked);
  const byPressure = slopeAt(row, i, (one) => one.seen!.pressure.mean);
  const byAngle = slopeAt(row, i, (one) => one.angle);
  const known = {
    pulse: readings.own - 1,
    flow: hypot(readings.own - 1, meter.flowError),
    range: rangeOf(pulsation, meter),
    ...(byPressure && { pressure: byPressure * hypot(meter.pressureError, pressure.ripple) }),
    ...(byAngle && { angle: hypot(byAngle * meter.plateError, day) }),
    day,
  };
  const trust = trusted(known, meter.allowed);
  return { errors: { ...known, ...(trust && { trust }) } };
}

/** Change of ln air by the reading, between the angles on either side that are known. */
function slopeAt(
  row: readonly MeteredPoint[],
  i: number,
  reading: (one: MeteredPoint) => number,
): number | undefined {
  const near = [row[i - 1], row[i], row[i + 1]].filter((one) => one?.seen);
  const [below, above] = [near[0]!, near.at(-1)!].map((one) => ({
    reading: reading(one),
    air: isFailure(one.outcome) ? Number.NaN : one.outcome.volumetricEfficiency,
  }));
  return slopeBetween(below!, above!);
}

function rangeOf(
  { mean, most }: { mean: number; most: number },
  meter: MeterQuestion['meter'],
): SensorErrors['range'] {
  if (mean < meter.most / meter.turnDown) return 'below';
  return most > meter.most ? 'above' : 'within';
}

/** Size of a sensor's error [-]; endless where it cannot tell. */
export function sizeOf(errors: Omit<SensorErrors, 'trust'>, sensor: Sensor): number {
  const blind = sensor === 'flow' && errors.range !== 'within';
  return blind ? Number.POSITIVE_INFINITY : (errors[sensor] ?? Number.POSITIVE_INFINITY);
}

/** The least wrong of the three. */
const leastWrong = (errors: Omit<SensorErrors, 'trust'>): Sensor =>
  SENSORS.reduce((a, b) => (sizeOf(errors, b) < sizeOf(errors, a) ? b : a));

function trusted(errors: Omit<SensorErrors, 'trust'>, allowed: number): Sensor | undefined {
  const best = leastWrong(errors);
  return sizeOf(errors, best) <= allowed ? best : undefined;
}
