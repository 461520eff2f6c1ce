/**
 * Every figure once: its key in files with the unit in the name, its head and unit for people, how it
 * is rounded. SI inside; `times` leads to the unit of the key, `shown` to that of people.
 */
import type { LengthUnit } from '../decision/lengthUnit.ts';
import type { Score } from '../decision/target.ts';
import { inUnit, KILO, MILLI, percentage, type Quantity, quantity, share } from './quantity.ts';

export { filed, headed, inUnit, type Quantity, shown, told } from './quantity.ts';
export * from './setUpQuantities.ts';

/** What a question is made of. */
export const LENGTH = quantity('length_mm', 'length', 'mm', {
  list: 'lengths_mm',
  name: 'trumpet length',
  times: MILLI,
  digits: 5,
});
/** The same in the unit that people read it in. */
export const lengthQuantity = (unit?: LengthUnit): Quantity => inUnit(LENGTH, unit);
export const SPEED = quantity('speed_rpm', 'speed', 'rpm', {
  list: 'speeds_rpm',
  name: 'engine speed',
  digits: 6,
});
export const CRANK_ANGLE = quantity('crank_angle_deg', 'crank angle', 'deg', { decimals: 1 });
export const DISTANCE_TO_VALVE = quantity('distance_to_valve_mm', 'distance to the valve', 'mm', {
  times: MILLI,
  decimals: 1,
});

/** Figures of a point. */
export const EFFICIENCY = quantity('volumetric_efficiency', 'VE', '-', {
  name: 'volumetric efficiency',
  decimals: 3,
});
/** Fullest less emptiest cylinder over their mean. */
export const FILLING_SPREAD = share('filling_spread_fraction', 'spread', {
  name: 'spread between cylinders',
});
export const BAND_SPREAD = {
  ...FILLING_SPREAD,
  key: 'filling_spread_in_band_fraction',
  name: 'spread between cylinders in band',
};
/** What cylinders that do alike catch; the keys of one column each. */
export function cylinderEfficiency(numbers: readonly number[]): Quantity {
  const key = `${EFFICIENCY.key}_of_${numbers.join('_')}`;
  return { ...EFFICIENCY, key, head: numbers.join(', '), name: `cylinder ${numbers.join(', ')}` };
}
export const CLOSING_PRESSURE = quantity('pressure_at_valve_closing_kPa', 'p closing', 'kPa', {
  name: 'pressure at closing',
  times: KILO,
  decimals: 1,
});
export const CHARGE_TEMPERATURE = quantity('charge_temperature_K', 'T closing', 'K', {
  name: 'charge at closing',
  decimals: 0,
});
export const RESIDUAL = share('residual_fraction', 'residual', { name: 'residual gas' });
export const BACK_FLOW = share('backflow_fraction', 'back flow');
export const MOUTH_OUTFLOW = share('mouth_outflow_fraction', 'blown out', {
  name: 'blown out of the mouth',
});
export const TORQUE = quantity('indicated_torque_Nm', 'torque', 'Nm', {
  name: 'indicated torque',
  decimals: 0,
});
export const BRAKE_TORQUE = quantity('torque_Nm', 'torque', 'Nm', {
  name: 'brake torque',
  decimals: 1,
});
/** Pound-force foot [N m] and horsepower, 550 of them a second [W]: NIST SP 811, appendix B. */
const [POUND_FOOT, HORSEPOWER] = [4.4482216152605 * 0.3048, 550 * 4.4482216152605 * 0.3048];
const FLYWHEEL = { name: 'brake torque', digits: 3 };
const POWER = { name: 'brake power', digits: 3 };
export const FLYWHEEL_TORQUE = {
  mm: quantity('brake_torque_Nm', 'brake', 'Nm', FLYWHEEL),
  in: quantity('brake_torque_lbf_ft', 'brake', 'lbf ft', { ...FLYWHEEL, times: 1 / POUND_FOOT }),
} as const;
export const FLYWHEEL_POWER = {
  mm: quantity('brake_power_kW', 'power', 'kW', { ...POWER, times: KILO }),
  in: quantity('brake_power_hp', 'power', 'hp', { ...POWER, times: 1 / HORSEPOWER }),
} as const;
export const DIFFERENCE = share('difference_percent', 'difference', { times: 100, signed: true });
export const MESH_ERROR = share('mesh_error_percent', 'mesh error', { times: 100, decimals: 2 });
export const CYCLES = quantity('cycles', 'cycles', '', { decimals: 0 });

/** What curves give and take. */
export const GAIN = percentage('gain_in_band_percent', 'gain', { signed: true });
export const WORST_LOSS = percentage('worst_loss_outside_band_percent', 'worst loss', {
  name: 'worst loss outside',
});
export const FELT_LOSS = percentage('felt_loss_outside_band_percent', 'felt loss outside');
export const BAND_LOSS = percentage('worst_loss_in_band_percent', 'loss in band', {
  name: 'worst loss in band',
});
export const FELT_BAND_LOSS = percentage('felt_loss_in_band_percent', 'felt loss in band');
/** One curve against another at the same speed, and a mean against the best. */
export const CHANGE = share('change', 'change against fitted now', { decimals: 2, signed: true });
export const AGAINST_BEST = { ...CHANGE, key: 'against_best', head: 'against the best cut' };
export const LOSS = percentage('loss_percent', 'loss', { name: 'worst loss where the cut misses' });
export const MOVES = share('moves_percent', 'moves', { times: 100, decimals: 2 });
export const COST = percentage('change_percent', 'change', { signed: true });
export const BAND_LOSS_SPEED = {
  ...SPEED,
  key: 'in_band_at_rpm',
  head: 'there at',
  name: 'there at speed',
};
export const AT_SPEED = { ...SPEED, key: 'at_rpm', head: 'at', name: 'at speed' };

/** The weighted mean of the figure that counts, which is volumetric efficiency or torque. */
export function bandMean(score: Score | undefined): Quantity {
  return score === 'indicated-torque'
    ? quantity('band_mean', 'mean torque in band', 'Nm', { decimals: 1 })
    : quantity('band_mean', 'mean VE in band', '-', { decimals: 3 });
}

/** The same figure at one speed. */
export function scored(score: Score | undefined): Quantity {
  return score === 'indicated-torque' ? { ...TORQUE, decimals: 1 } : EFFICIENCY;
}

export function leastInBand(score: Score | undefined): Quantity {
  return { ...bandMean(score), key: 'least_in_band', head: 'least', name: 'least in band' };
}
export const LEAST_SPEED = { ...AT_SPEED, key: 'least_at_rpm' };
export const AREA = quantity('area_under_curve', 'area under curve', '', { digits: 4 });

/** What an input in doubt has in the gain. */
export const GAIN_EFFECT = percentage('gain_change_percent_points', 'gain over half of it', {
  decimals: 2,
  signed: true,
});
export const SHARE_OF_VARIANCE = share('share_of_variance', 'share', {
  name: 'share of variance',
  decimals: 0,
});

/** Gas along the pipes. */
export const PRESSURE = quantity('pressure_kPa', 'pressure', 'kPa', { times: KILO, decimals: 1 });
export const VELOCITY = quantity('velocity_m_per_s', 'velocity', 'm/s', { decimals: 0 });
export const MASS_FLOW = quantity('mass_flow_g_per_s', 'mass flow', 'g/s', {
  times: MILLI,
  decimals: 0,
});
export const TEMPERATURE = quantity('temperature_K', 'temperature', 'K', { decimals: 0 });
export const LIFT = quantity('lift_mm', 'lift', 'mm', { times: MILLI, decimals: 2 });

/** Figures of a spray. */
export const OUTER_SHARE = share('outer_share', 'share', { name: 'share from above', decimals: 0 });
export const EVAPORATED_AT_CLOSING = share('evaporated_fraction_at_closing', 'vapour closing', {
  name: 'evaporated at closing',
  decimals: 0,
});
export const EVAPORATED = share('evaporated_fraction_upstream', 'evaporated', {
  name: 'evaporated before the valve',
  decimals: 0,
});
export const STAND_OFF = share('stand_off_fraction', 'stand-off', { name: 'blown out' });
export const RETURNED = share('stand_off_returned_fraction', 'returned', {
  name: 'drawn in again',
});
export const LOST = share('lost_fuel_fraction', 'lost', { name: 'lost for good' });
export const DUTY = share('full_load_duty', 'duty', { name: 'share of the cycle', decimals: 0 });
export const FILM_SHARE = share('film_deposit_fraction', 'on walls', { decimals: 0 });
export const FILLING_OPEN = share('change_left_open', 'left open', { decimals: 2 });

/** A change of volumetric efficiency, for people in per cent of a full cylinder. */
export function fillingChange(key: string, head: string): Quantity {
  return share(key, head, { decimals: 2, signed: true });
}
