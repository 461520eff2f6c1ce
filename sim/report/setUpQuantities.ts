/** Figures of setting an engine up: mixture, bodies and screws, sound, springs, the pressure bar, a table of load. */
import { KILO, MICRO, MILLI, percentage, type Quantity, quantity, share } from './quantity.ts';

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
