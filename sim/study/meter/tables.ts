/** What flow meter, pressure sensor and plate angle are worth, as tables and as a JSON document. */
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import {
  asObject,
  asObjects,
  type Column,
  column,
  type Table,
  tableOf,
  words,
} from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { efficiencyOf, REMARK, remarkOf } from '../points.ts';
import {
  type Metered,
  type MeteredPoint,
  type MeterStudy,
  meterOutcomes,
  type Readings,
  trustCounts,
} from './compute.ts';
import type { Sensor, SensorErrors } from './errors.ts';
import { rangeOfFlow } from './range.ts';

export const SENSOR_NAMES: Record<Sensor, string> = {
  flow: 'flow meter',
  pressure: 'pressure',
  angle: 'plate angle',
};

export const ABOVE_STOP = q.plateAngle('plate_above_stop_deg', 'plate', {
  name: 'plate above its stop',
});
const errorOf = (sensor: Sensor) =>
  q.percentOf(`${sensor}_error_fraction`, SENSOR_NAMES[sensor], {
    name: `error of the air by ${SENSOR_NAMES[sensor]}`,
  });
export const ERRORS: Record<Sensor, q.Quantity> = {
  flow: errorOf('flow'),
  pressure: errorOf('pressure'),
  angle: errorOf('angle'),
};
export const PULSE = q.signedShare('meter_pulsation_error_fraction', 'this meter');
export const FLOW = {
  ...q.MASS_FLOW,
  key: 'mean_flow_g_per_s',
  head: 'flow',
  name: 'mean flow through the snorkel',
  digits: 3,
};
const at = (key: string, head: string, name: string) => ({ ...FLOW, key, head, name });
const MOST = at('greatest_flow_g_per_s', 'most', 'greatest flow through the snorkel');
const LEAST = at('least_flow_g_per_s', 'least', 'least flow through the snorkel');
const UNSTEADY = q.ratio('unsteadiness', 'unsteady');
export const BACK = q.percentOf('back_flow_fraction', 'back', {
  name: 'flow back through the snorkel',
});
export const THROUGH = q.signedShare(
  'not_caught_fraction',
  'not caught',
  'flow beyond what cylinders catch',
);
export const RIPPLE = q.kilopascals('ripple_kPa', 'ripple', {
  name: 'ripple of the joined runners behind the lag, root mean square',
  decimals: 2,
});
export const ALONE = q.kilopascals('swing_behind_one_plate_kPa', 'one alone', {
  name: 'swing behind one plate alone',
});
const MEAN = q.kilopascals('mean_behind_plates_kPa', 'p', { name: 'mean behind the plates' });
const DAY = q.signedShare('day_error_fraction', 'day', 'error of the angle by the day');

const PLACE: readonly Column<MeteredPoint>[] = [
  column(q.SPEED, ({ speed }) => speed),
  column(ABOVE_STOP, ({ above }) => above),
];

const error = (quantity: q.Quantity, of: (errors: SensorErrors) => number | undefined) =>
  column<MeteredPoint>(quantity, ({ errors }) => errors && of(errors));
const seen = (quantity: q.Quantity, of: (seen: Metered) => number) =>
  column<MeteredPoint>(quantity, (one) => one.seen && of(one.seen));

/** What stands in the table where nothing is within what is allowed. */
export function trustWords({ errors }: MeteredPoint): string {
  if (!errors) return '';
  return errors.trust ? SENSOR_NAMES[errors.trust] : 'none';
}

/** One row a speed and plate angle. */
export function trustTable({ points }: MeterStudy): Table {
  return tableOf<MeteredPoint>(
    'Error of the air by each sensor, and which to trust',
    [
      ...PLACE,
      column(q.EFFICIENCY, ({ outcome }) => efficiencyOf(outcome)),
      error(ERRORS.flow, ({ flow }) => flow),
      error(ERRORS.pressure, ({ pressure }) => pressure),
      error(ERRORS.angle, ({ angle }) => angle),
      words('trust', 'trust', trustWords),
      words('meter_range', '', ({ errors }) => errors?.range, { only: 'files' }),
      words('remark', '', markOf, REMARK),
    ],
    points,
  );
}

/** Out of the meter's range, or what stands out about the point. */
function markOf({ errors, outcome }: MeteredPoint): string {
  const range = { within: '', below: 'flow below the range', above: 'flow above the range' };
  return [remarkOf(outcome), errors ? range[errors.range] : ''].filter(Boolean).join(', ');
}

const reading = (name: keyof Readings, head: string) =>
  seen(
    q.signedShare(`${name}_error_fraction`, head, `${head}: error by pulsation`),
    ({ readings }) => readings[name] - 1,
  );

/** One row a speed and plate angle: what meter and pressure sensor are under. */
export function seenTable({ points }: MeterStudy): Table {
  return tableOf<MeteredPoint>(
    'What the sensors are under',
    [
      ...PLACE,
      seen(FLOW, ({ pulsation }) => pulsation.mean),
      seen(LEAST, ({ pulsation }) => pulsation.least),
      seen(MOST, ({ pulsation }) => pulsation.most),
      seen(UNSTEADY, ({ pulsation }) => pulsation.unsteadiness),
      seen(BACK, ({ pulsation }) => pulsation.back),
      seen(THROUGH, ({ through }) => through),
      reading('difference', 'difference'),
      reading('straight', 'straight'),
      reading('hot', 'hot, slow'),
      error(PULSE, ({ pulse }) => pulse),
      seen(MEAN, ({ pressure }) => pressure.mean),
      seen(RIPPLE, ({ pressure }) => pressure.ripple),
      seen(ALONE, ({ pressure }) => pressure.alone),
      error(DAY, ({ day }) => day),
    ],
    points,
  );
}

type Sizes = Pick<MeterStudy, 'airbox' | 'meter'>;
const SIZES: readonly Column<Sizes>[] = [
  column(q.cubicCentimetres('box_volume_cm3', 'box'), ({ airbox }) => airbox.volume),
  column(q.boreOf('snorkel_length_mm', 'snorkel'), ({ airbox }) => airbox.snorkelLength),
  column(q.boreOf('snorkel_bore_mm', 'its bore'), ({ airbox }) => airbox.snorkelDiameter),
  column(q.boreOf('meter_position_mm', 'meter at'), ({ meter }) => meter.position),
  words('meter_kind', 'kind', ({ meter }) => meter.kind),
  column(q.ratio('meter_exponent', 'exponent'), ({ meter }) => meter.exponent),
  column(q.milliseconds('meter_lag_ms', 'lag'), ({ meter }) => meter.lag),
  column(
    at('meter_most_g_per_s', 'most', 'most flow that the meter reads'),
    ({ meter }) => meter.most,
  ),
  column(q.ratio('meter_turn_down', 'turn-down', 0), ({ meter }) => meter.turnDown),
];

export function meterSizesTable(study: MeterStudy): Table {
  return tableOf('Box, snorkel and meter', SIZES, [study]);
}

const TOLD: readonly Column<MeterStudy>[] = [
  column(q.percentOf('allowed_error_fraction', 'allowed'), ({ meter }) => meter.allowed),
  column(q.percentOf('flow_error_fraction', 'meter'), ({ meter }) => meter.flowError),
  column(q.kilopascals('pressure_error_kPa', 'pressure'), ({ meter }) => meter.pressureError),
  column(q.milliseconds('pressure_lag_ms', 'its lag'), ({ meter }) => meter.pressureLag),
  column(q.plateAngle('plate_error_deg', 'plate'), ({ meter }) => meter.plateError),
  column({ ...q.ALTITUDE, key: 'climb_m', head: 'climb' }, ({ meter }) => meter.climb),
  words('angle_corrected_for', 'corrected for', ({ meter }) => meter.correction),
];

export function allowedTable(study: MeterStudy): Table {
  return tableOf('What sensors may be off by', TOLD, [study]);
}

export function meterDocument(study: MeterStudy, scenario: Scenario) {
  const { meter, airbox, boxTurns } = study;
  const range = rangeOfFlow(study);
  return {
    ...documentHead('meter', scenario),
    meter_given: meter.given,
    airbox_given: airbox.given,
    meter: { ...asObject(meterSizesTable(study)), ...asObject(allowedTable(study)) },
    trust: asObjects(trustTable(study)),
    under: asObjects(seenTable(study)),
    trusted_at: trustCounts(study),
    range: range
      ? {
          least_mean_flow_g_per_s: q.filed(FLOW, range.least),
          most_mean_flow_g_per_s: q.filed(FLOW, range.most),
          greatest_flow_g_per_s: q.filed(FLOW, range.peak),
          turn_down: plain(range.turnDown),
        }
      : null,
    turns_to_fill_box: plain(boxTurns),
    audit: auditOf(meterOutcomes(study)),
  };
}
