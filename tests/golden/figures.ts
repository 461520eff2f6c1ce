/** What each column must show of a point, told a second time and from nothing but the point. */

import { friction } from '../../sim/cylinder/friction.ts';
import type { TradeOff } from '../../sim/decision/tradeOff.ts';
import type { PointResult } from '../../sim/engine/point.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { type Shown, tenDigits } from './tables.ts';

/** Keys of documents and of CSV. */
export const POINT: Record<string, (point: PointResult) => number> = {
  volumetric_efficiency: (point) => point.volumetricEfficiency,
  pressure_at_valve_closing_kPa: (point) => point.pressureAtClosing / 1000,
  charge_temperature_K: (point) => point.chargeTemperature,
  residual_fraction: (point) => point.residualFraction,
  backflow_fraction: (point) => point.backflow,
  mouth_outflow_fraction: (point) => point.mouthOutflow,
  indicated_torque_Nm: (point) => point.indicatedTorque,
  mesh_error_percent: (point) => point.meshError * 100,
  cycles: (point) => point.cycles,
};

/** The same by the heads of tables in text and on pages. */
const HEADS: Record<string, (point: PointResult) => number> = {
  speed: (point) => point.speed,
  VE: (point) => point.volumetricEfficiency,
  'volumetric efficiency': (point) => point.volumetricEfficiency,
  'p closing': (point) => point.pressureAtClosing / 1000,
  'pressure at closing': (point) => point.pressureAtClosing / 1000,
  'T closing': (point) => point.chargeTemperature,
  'charge at closing': (point) => point.chargeTemperature,
  residual: (point) => point.residualFraction * 100,
  'residual gas': (point) => point.residualFraction * 100,
  'back flow': (point) => point.backflow * 100,
  'engine speed': (point) => point.speed,
  'blown out': (point) => point.mouthOutflow * 100,
  'blown out of the mouth': (point) => point.mouthOutflow * 100,
  torque: (point) => point.indicatedTorque,
  'indicated torque': (point) => point.indicatedTorque,
  'mesh error': (point) => point.meshError * 100,
  cycles: (point) => point.cycles,
};

/** Torque less friction and the power of it, in the units of both worlds, by the same keys and heads. */
export function brakeFigures(point: PointResult, engine: EngineSpecification) {
  const { cylinder } = engine;
  const swept = cylinder.count * (Math.PI / 4) * cylinder.bore ** 2 * cylinder.stroke;
  const torque =
    point.indicatedTorque - (friction(engine, point.speed).total * swept) / (4 * Math.PI);
  const power = (torque * point.speed * 2 * Math.PI) / 60;
  return {
    brake_torque_Nm: torque,
    brake_power_kW: power / 1000,
    brake_torque_lbf_ft: torque / 1.3558179483314,
    brake_power_hp: power / 745.69987158227,
  };
}

/** Whether inches and horses are shown. */
export const isImperial = (demo: string) => demo === 'sprint-single';

export function pointFigures(
  point: PointResult,
  engine: EngineSpecification,
  imperial: boolean,
): Record<string, Shown> {
  const brake = brakeFigures(point, engine);
  const torque = imperial ? brake.brake_torque_lbf_ft : brake.brake_torque_Nm;
  const power = imperial ? brake.brake_power_hp : brake.brake_power_kW;
  const heads = { brake: torque, 'brake torque': torque, power, 'brake power': power };
  return Object.fromEntries([
    ...Object.entries({ ...POINT, ...HEADS }).map(([key, of]) => [key, tenDigits(of(point))]),
    ...Object.entries({ ...brake, ...heads }).map(([key, value]) => [key, tenDigits(value)]),
  ]);
}

/** Columns of a trade-off in documents. */
export const TRADE_OFF: Record<string, (tradeOff: TradeOff) => unknown> = {
  band_mean: ({ bandMean }) => tenDigits(bandMean),
  gain_in_band_percent: ({ gainPercent }) => tenDigits(gainPercent),
  worst_loss_outside_band_percent: ({ worstLossPercent }) => tenDigits(worstLossPercent),
  at_rpm: ({ worstLossSpeed }) => worstLossSpeed ?? null,
  felt_loss_outside_band_percent: ({ feltLossPercent }) => tenDigits(feltLossPercent),
  worst_loss_in_band_percent: ({ bandLossPercent }) => tenDigits(bandLossPercent),
  in_band_at_rpm: ({ bandLossSpeed }) => bandLossSpeed ?? null,
  felt_loss_in_band_percent: ({ feltBandLossPercent }) => tenDigits(feltBandLossPercent),
  least_in_band: ({ least }) => tenDigits(least),
  least_at_rpm: ({ leastSpeed }) => tenDigits(leastSpeed),
  area_under_curve: ({ area }) => tenDigits(area),
  meets_floors: ({ floors }) => floors.every(({ marginPercent }) => marginPercent >= 0),
  floor_margins_percent: ({ floors }) =>
    floors.map(({ marginPercent }) => tenDigits(marginPercent)),
  floor_margins_felt_percent: ({ floors }) =>
    floors.map(({ feltMarginPercent }) => tenDigits(feltMarginPercent)),
  floor_margins_near: ({ floors }) =>
    floors.map(({ near }) => ({
      at_rpm: tenDigits(near.speed),
      margin_percent: tenDigits(near.marginPercent),
    })),
  stretches: ({ stretches }) =>
    stretches.map(({ from, to, changePercent, speed }) => ({
      from_rpm: tenDigits(from),
      to_rpm: tenDigits(to),
      change_percent: tenDigits(changePercent),
      at_rpm: tenDigits(speed),
    })),
};

type Spray = NonNullable<PointResult['spray']>;

const ofSpray =
  (figure: (spray: Spray) => number) =>
  ({ spray }: PointResult): number | undefined =>
    spray && figure(spray);

/** Columns of one placement of injectors; undefined where nothing is sprayed. */
export const PLACEMENT: Record<string, (point: PointResult) => number | undefined> = {
  ...POINT,
  outer_share: ofSpray((spray) => spray.outerShare),
  evaporated_fraction_at_closing: ofSpray((spray) => spray.evaporatedShare),
  evaporated_fraction_upstream: ofSpray((spray) => spray.evaporatedUpstream),
  residence_time_ms: ofSpray((spray) => spray.residenceTime * 1000),
  mixture_early_over_mean: ofSpray((spray) => spray.mixture.early),
  mixture_late_over_mean: ofSpray((spray) => spray.mixture.late),
  film_mass_mg: ofSpray((spray) => spray.filmMass * 1e6),
  film_deposit_fraction: ofSpray((spray) => spray.filmShare),
  film_time_constant_ms: ofSpray((spray) => spray.filmTime * 1000),
  stand_off_fraction: ofSpray((spray) => spray.standOff),
  stand_off_returned_fraction: ofSpray((spray) => spray.returned),
  lost_fuel_fraction: ofSpray((spray) => spray.lost),
  fuel_per_cycle_mg: ofSpray((spray) => spray.injected * 1e6),
  pulse_near_ms: ofSpray((spray) => spray.pulse[0]! * 1000),
  pulse_above_ms: ofSpray((spray) => spray.pulse[1]! * 1000),
};

/** The table of placements in text; share of the outer injector as recommended. */
export function placementHeads(
  near: PointResult,
  above: PointResult,
  both: PointResult,
  share: number,
): Record<string, Shown> {
  const percent = (value: number) => 100 * value;
  return {
    speed: near.speed,
    'VE near': near.volumetricEfficiency,
    'VE above': above.volumetricEfficiency,
    'VE both': both.volumetricEfficiency,
    'gain above': percent(above.volumetricEfficiency - near.volumetricEfficiency),
    'gain both': percent(both.volumetricEfficiency - near.volumetricEfficiency),
    'vapour near': percent(near.spray!.evaporatedUpstream),
    'vapour above': percent(above.spray!.evaporatedUpstream),
    'T near': near.chargeTemperature,
    'T above': above.chargeTemperature,
    film: above.spray!.filmMass * 1e6,
    'stand-off': percent(above.spray!.standOff),
    lost: percent(above.spray!.lost),
    share: percent(share),
  };
}
