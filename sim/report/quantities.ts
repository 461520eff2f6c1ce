/**
 * Every figure once: its key in files with the unit in the name, its head and unit for people, how it
 * is rounded. SI inside; `times` leads to the unit of the key, `shown` to that of people.
 */
import { type LengthUnit, METRES } from '../decision/lengthUnit.ts';
import type { Score } from '../decision/target.ts';
import { brief, fixed, plain, withSign } from './numbers.ts';

export interface Quantity {
  /** Key in files; ends in the unit where there is one. */
  key: string;
  /** Key of a whole column in a JSON document, where it differs. */
  list?: string;
  /** Short head for people, and a long one where the short one needs explaining. */
  head: string;
  name?: string;
  /** Unit that people read; '' for words and counts, '-' for plain ratios. */
  unit: string;
  /** From SI to the unit of the key, 1 where absent; to that of people, the same where absent. */
  times?: number;
  shown?: number;
  decimals?: number;
  /** Significant digits without trailing zeros, in place of decimals. */
  digits?: number;
  /** Whether a plus stands before a gain. */
  signed?: boolean;
}

function quantity(key: string, head: string, unit: string, rest: Partial<Quantity>): Quantity {
  return { key, head, unit, ...rest };
}

/** A share [-] in files that people read in per cent. */
function share(key: string, head: string, rest: Partial<Quantity> = {}): Quantity {
  return { key, head, unit: '%', shown: 100, decimals: 1, ...rest };
}

/** A figure that is a percentage already. */
function percentage(key: string, head: string, rest: Partial<Quantity> = {}): Quantity {
  return { key, head, unit: '%', decimals: 1, ...rest };
}

const [MILLI, MICRO, KILO] = [1e3, 1e6, 1e-3];

/** What a question is made of. */
export const LENGTH = quantity('length_mm', 'length', 'mm', {
  list: 'lengths_mm',
  name: 'trumpet length',
  times: MILLI,
  digits: 5,
});
/** The same in the unit that people read it in. */
export function lengthQuantity(unit: LengthUnit = 'mm'): Quantity {
  return unit === 'mm' ? LENGTH : { ...LENGTH, unit, shown: 1 / METRES[unit], digits: 4 };
}
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

/** Mixture, cylinder by cylinder. */
export const CYLINDER = quantity('cylinder', 'cylinder', '', { decimals: 0 });
export const PROBE = quantity('probe', 'probe', '', { decimals: 0 });
export const VISIT = quantity('visit', 'visit', '', { decimals: 0 });
export const PLATE = quantity('plate_deg', 'plate', 'deg', { name: 'plate angle', decimals: 2 });
export const PLATE_ERROR = quantity('plate_error_deg', 'plate', 'deg', {
  name: 'plate above the mean',
  decimals: 3,
  signed: true,
});
export const PLATE_DOUBT = quantity('plate_error_deviation_deg', '+-', 'deg', {
  name: 'its doubt',
  decimals: 3,
});
export const LAMBDA = quantity('lambda', 'lambda', '-', { decimals: 3 });
export const TORQUE_LOST = share('torque_lost', 'torque lost', { decimals: 2 });
export const SWING_LEFT = share('swing_left', 'swing left');
/** A share under a name of its own, for people as a signed percentage. */
export function signedShare(key: string, head: string, name = head): Quantity {
  return share(key, head, { name, signed: true });
}
/** One standard deviation of a share. */
export function shareDoubt(key: string): Quantity {
  return share(key, '+-', { name: 'its doubt' });
}

/** A share under a name of its own. */
export function plainShare(key: string, head: string): Quantity {
  return share(key, head);
}

export const SPREAD_COST = quantity('mixture_cost_Nm', 'mixture cost', 'Nm', { decimals: 2 });

/** Throttle bodies and their screws. */
export const GAUGE = quantity('gauge', 'gauge', '', { decimals: 0 });
export const VACUUM = quantity('vacuum_kPa', 'vacuum', 'kPa', { times: KILO, decimals: 2 });
export const TURNS = quantity('turns', 'turns', '', { decimals: 2, signed: true });
export const TURNS_DOUBT = quantity('turns_deviation', '+-', '', { decimals: 2 });
export const BLEED_ERROR = quantity('bleed_error_mm2', 'bleed', 'mm2', {
  name: 'bleed above the mean, effective area',
  times: MICRO,
  decimals: 3,
  signed: true,
});
export const BLEED_DOUBT = quantity('bleed_error_deviation_mm2', '+-', 'mm2', {
  name: 'its doubt',
  times: MICRO,
  decimals: 3,
});

/** A time in milliseconds under a name of its own. */
export function milliseconds(key: string, head: string, decimals = 1): Quantity {
  return quantity(key, head, 'ms', { times: MILLI, decimals });
}

/** Angle of the plates from shut. */
export const OPENING = quantity('opening_deg', 'open', 'deg', {
  name: 'plates from shut',
  times: 180 / Math.PI,
  decimals: 1,
});
export const FOOT_TRAVEL = quantity('foot_travel_mm', 'foot travel', 'mm', {
  times: MILLI,
  decimals: 1,
});
export const STIFFNESS = quantity('rate_N_per_mm', 'rate', 'N/mm', { times: 1e-3, decimals: 3 });
export const MOMENT_RATE = quantity('moment_rate_Nm_per_turn', 'rate', 'Nm/turn', {
  times: 2 * Math.PI,
  decimals: 3,
});

export const FREQUENCY = quantity('frequency_Hz', 'frequency', 'Hz', { decimals: 0 });
export const SOUND_PRESSURE = quantity('sound_pressure_Pa', 'sound pressure', 'Pa', {
  decimals: 1,
});
export const ORDER = quantity('engine_order', 'order', '', { name: 'engine order', decimals: 1 });

/** A sound level under a name of its own, as it is and by weighting A. */
export function decibels(key: string, head: string): Quantity {
  return quantity(key, head, 'dB', { decimals: 1 });
}
export function decibelsA(key: string, head: string): Quantity {
  return quantity(key, head, 'dB(A)', { decimals: 1 });
}

/** A force under a name of its own. */
export function newtons(key: string, head: string): Quantity {
  return quantity(key, head, 'N', { decimals: 1 });
}

/** A torque of springs under a name of its own. */
export function newtonMetres(key: string, head: string): Quantity {
  return quantity(key, head, 'Nm', { decimals: 3 });
}

/** A stress under a name of its own. */
export function stress(key: string, head: string): Quantity {
  return quantity(key, head, 'N/mm2', { times: 1 / MICRO, decimals: 0 });
}

/** A pressure, a volume, a bore, a plate's angle under names of their own. */
export function kilopascals(key: string, head: string, rest: Partial<Quantity> = {}): Quantity {
  return quantity(key, head, 'kPa', { times: KILO, decimals: 1, ...rest });
}

export function cubicCentimetres(key: string, head: string): Quantity {
  return quantity(key, head, 'cm3', { times: MICRO, digits: 3 });
}

export function boreOf(key: string, head: string): Quantity {
  return quantity(key, head, 'mm', { times: MILLI, digits: 3 });
}

export function plateAngle(key: string, head: string, rest: Partial<Quantity> = {}): Quantity {
  return quantity(key, head, 'deg', { digits: 3, ...rest });
}

/** A share [-] that people read in per cent, under a name of its own. */
export function percentOf(key: string, head: string, rest: Partial<Quantity> = {}): Quantity {
  return share(key, head, rest);
}

/** A mass in milligrams under a name of its own. */
export function milligrams(key: string, head: string): Quantity {
  return quantity(key, head, 'mg', { times: MICRO, decimals: 0 });
}

export const FILM_MASS = milligrams('film_mass_mg', 'film');

/** A plain ratio under a name of its own. */
export function ratio(key: string, head: string, decimals = 2): Quantity {
  return quantity(key, head, '-', { decimals });
}

/** A change of volumetric efficiency, for people in per cent of a full cylinder. */
export function fillingChange(key: string, head: string): Quantity {
  return share(key, head, { decimals: 2, signed: true });
}

/** What turns a value into a figure. */
type Scale = Omit<Quantity, 'key' | 'head' | 'unit'>;

/** The figure in its unit for people, without it. */
export function shown(
  { times = 1, shown: scale = times, decimals = 0, digits, signed }: Scale,
  value: number,
): string {
  const figure = scale * value;
  const text = digits === undefined ? fixed(figure, decimals) : brief(figure, digits);
  return signed ? withSign(text) : text;
}

/** The figure with its unit: `86 mm`, `+3.1 %`, `0.947`. */
export function told(quantity: Quantity, value: number): string {
  const { unit } = quantity;
  return unit === '' || unit === '-' ? shown(quantity, value) : `${shown(quantity, value)} ${unit}`;
}

/** The figure as files write it. */
export function filed({ times = 1 }: Scale, value: number | undefined): number | null {
  return value === undefined ? null : plain(times * value);
}

/** Head and unit, for axes and columns: `engine speed [rpm]`. */
export function headed({ name, head, unit }: Quantity): string {
  return unit === '' ? (name ?? head) : `${name ?? head} [${unit}]`;
}

/** A table of load. */
export const FILLING = percentage('filling_percent', 'filling', { name: 'relative filling' });
export const AIR_MASS = quantity('air_per_cycle_mg', 'air', 'mg', { times: MICRO, decimals: 1 });
export const PORT_PRESSURE = quantity('port_pressure_kPa', 'p port', 'kPa', {
  name: 'mean pressure behind the plate',
  times: KILO,
  decimals: 1,
});
export const PRESSURE_SIGNAL = quantity(
  'pressure_change_for_1_percent_air_kPa',
  'p by 1 %',
  'kPa',
  {
    name: 'pressure behind the plate for 1 % of air',
    times: KILO,
    decimals: 2,
  },
);
export const ANGLE_SIGNAL = quantity('plate_change_for_1_percent_air_deg', 'plate by 1 %', 'deg', {
  name: 'plate angle for 1 % of air',
  decimals: 3,
});
export const PULSE = quantity('injector_ms', 'injector', 'ms', { times: MILLI, decimals: 2 });
export const LINE_ERROR = percentage('line_error_percent', 'line error', {
  name: 'error of straight lines',
  times: 100,
  decimals: 2,
});
export const RULE_ERROR = percentage('rule_error_percent', 'error', {
  name: 'greatest error of the rule',
  times: 100,
  signed: true,
});
export const BAROMETER = quantity('barometer_hPa', 'barometer', 'hPa', {
  times: 0.01,
  decimals: 0,
});
export const ALTITUDE = quantity('altitude_m', 'altitude', 'm', { decimals: 0 });
export const AIR_FACTOR = quantity('air_factor', 'factor', '-', { decimals: 3 });
export const PRESSURE_EXPONENT = quantity('pressure_exponent', 'a', '-', { decimals: 2 });
export const TEMPERATURE_EXPONENT = quantity('temperature_exponent', 'b', '-', { decimals: 2 });
