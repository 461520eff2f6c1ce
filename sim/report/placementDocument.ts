/** The study of injector placement as a JSON document and as CSV. */
import { difference, type Placement, type PlacementStudy, sprayOf } from '../decision/placement.ts';
import type { PlacementReason } from '../decision/placementChoice.ts';
import { MOST_DUTY } from '../decision/pulseWidth.ts';
import { deliveredAfterStep, leanTime } from '../decision/tipIn.ts';
import type { PointResult } from '../engine/point.ts';
import type { SprayCycle } from '../spray/sprayTally.ts';
import { isFailure, type PointOutcome } from '../sweep/runner.ts';
import { csv } from './csv.ts';
import { type AuditSummary, auditSummary, column } from './curveDocument.ts';
import { type DocumentHead, documentHead, plain, type ScenarioStamp } from './document.ts';

type Column = (number | null)[];

/** One placement over speed; null where a point failed or has no injector at work. */
export interface PlacementColumns {
  volumetric_efficiency: Column;
  charge_temperature_K: Column;
  pressure_at_valve_closing_kPa: Column;
  indicated_torque_Nm: Column;
  outer_share: Column;
  /** Vapour in the cylinder at valve closing over all fuel there. */
  evaporated_fraction_at_closing: Column;
  /** Vapour given off before the valve over the fuel injected. */
  evaporated_fraction_upstream: Column;
  residence_time_ms: Column;
  mixture_early_over_mean: Column;
  mixture_late_over_mean: Column;
  film_mass_mg: Column;
  film_deposit_fraction: Column;
  film_time_constant_ms: Column;
  stand_off_fraction: Column;
  stand_off_returned_fraction: Column;
  lost_fuel_fraction: Column;
  fuel_per_cycle_mg: Column;
  pulse_near_ms: Column;
  pulse_above_ms: Column;
  settled: boolean[];
  cycles: Column;
  failures: (string | null)[];
}

export interface PlacementDocument extends DocumentHead {
  speeds_rpm: number[];
  injectors: { near: string; above: string };
  placements: Record<Placement, PlacementColumns>;
  staged_outer_share: Column;
  /** Volumetric efficiency above against near the valve. */
  gain_above_over_near: Column;
  gain_both_over_near: Column;
  /** Change of volumetric efficiency by the outer injector, against no evaporation before closing. */
  effect_of_above: {
    cooling: Column;
    displacement: Column;
    wave_shift: Column;
    total: Column;
  };
  uncertainty: {
    volumetric_efficiency: number | null;
    drop_size: number | null;
    scatter: number | null;
    at_rpm: number[];
  };
  recommended: {
    outer_share: Column;
    gain_over_near: Column;
    switch_over_rpm: number | null;
    mean_gain_over_near: number | null;
    mean_gain_uncertainty: number | null;
    best_start_rpm: number | null;
    loses_at_rpm: number[];
    reason: PlacementReason;
    limited_by_flow: boolean;
  };
  part_load: {
    speed_rpm: number;
    throttle_angle_deg: number;
    points: {
      placement: string;
      volumetric_efficiency: number | null;
      film_fraction: number | null;
      film_time_constant_ms: number | null;
      /** Fuel delivered over fuel asked for in the first cycle after a step. */
      delivered_at_once: number | null;
      /** Time until the mixture is within 5 % again. */
      lean_for_ms: number | null;
    }[];
  };
  pulses: {
    name: string;
    full_load_pulse_ms: number | null;
    full_load_duty: number | null;
    most_duty: number;
    idle_pulse_ms: number | null;
    smallest_pulse_ms: number | null;
    serves_full_load: boolean;
    serves_idle: boolean;
  }[];
  /** Vapour given off by the outer injector's fuel along the intake at the highest speed. */
  evaporation_along_intake: { distance_to_valve_mm: Column; fraction_upstream: Column };
  audit: AuditSummary;
}

/** Mixture error at which a step counts as covered [-]. */
const COVERED = 0.05;

export function placementDocument(
  study: PlacementStudy,
  scenario: ScenarioStamp,
): PlacementDocument {
  const { outcomes, speeds, split, uncertainty, choice, partLoad } = study;
  const gain = (placement: Placement) =>
    speeds.map((_, i) => number(difference(outcomes[placement][i]!, outcomes.near[i]!)));
  const placements = Object.fromEntries(
    Object.entries(outcomes).map(([name, points]) => [name, placementColumns(points)]),
  ) as Record<Placement, PlacementColumns>;
  return {
    ...documentHead('inject', 1, scenario),
    speeds_rpm: speeds,
    injectors: { near: study.near, above: study.above },
    placements,
    staged_outer_share: study.stagedShare.map(plain),
    gain_above_over_near: gain('above'),
    gain_both_over_near: gain('both'),
    effect_of_above: {
      cooling: split.cooling.map(number),
      displacement: split.displacement.map(number),
      wave_shift: split.waveShift.map(number),
      total: split.total.map(number),
    },
    uncertainty: {
      volumetric_efficiency: plain(uncertainty.value),
      drop_size: plain(uncertainty.dropSize),
      scatter: plain(uncertainty.scatter),
      at_rpm: uncertainty.speeds,
    },
    recommended: {
      outer_share: choice.share.map(plain),
      gain_over_near: choice.gain.map(number),
      switch_over_rpm: number(choice.switchOver),
      mean_gain_over_near: plain(choice.meanGain),
      mean_gain_uncertainty: plain(choice.meanUncertainty),
      best_start_rpm: number(choice.bestStart),
      loses_at_rpm: choice.losesAt,
      reason: choice.reason,
      limited_by_flow: choice.limitedByFlow,
    },
    part_load: {
      speed_rpm: partLoad.speed,
      throttle_angle_deg: partLoad.throttleAngle,
      points: partLoad.points.map((point) => ({
        placement: point.placement,
        volumetric_efficiency: isFailure(point.outcome)
          ? null
          : plain(point.outcome.volumetricEfficiency),
        film_fraction: plain(point.share),
        film_time_constant_ms: plain(point.time * 1e3),
        delivered_at_once: plain(deliveredAfterStep(point, 0)),
        lean_for_ms: plain(leanTime(point, COVERED) * 1e3),
      })),
    },
    pulses: study.pulses.map((pulse) => ({
      name: pulse.name,
      full_load_pulse_ms: plain(pulse.fullPulse * 1e3),
      full_load_duty: plain(pulse.fullDuty),
      most_duty: MOST_DUTY,
      idle_pulse_ms: plain(pulse.idlePulse * 1e3),
      smallest_pulse_ms: plain(pulse.smallestPulse * 1e3),
      serves_full_load: pulse.servesFull,
      serves_idle: pulse.servesIdle,
    })),
    evaporation_along_intake: along(outcomes.above),
    audit: auditSummary(Object.values(outcomes).map((points) => ({ length: 0, outcomes: points }))),
  };
}

export function placementColumns(points: readonly PointOutcome[]): PlacementColumns {
  const of = (figure: (spray: SprayCycle) => number) =>
    points.map((point) => {
      const spray = sprayOf(point);
      return spray ? plain(figure(spray)) : null;
    });
  const gas = (figure: (point: PointResult) => number) => column(points, figure);
  return {
    volumetric_efficiency: gas((point) => point.volumetricEfficiency),
    charge_temperature_K: gas((point) => point.chargeTemperature),
    pressure_at_valve_closing_kPa: gas((point) => point.pressureAtClosing / 1e3),
    indicated_torque_Nm: gas((point) => point.indicatedTorque),
    outer_share: of((spray) => spray.outerShare),
    evaporated_fraction_at_closing: of((spray) => spray.evaporatedShare),
    evaporated_fraction_upstream: of((spray) => spray.evaporatedUpstream),
    residence_time_ms: of((spray) => spray.residenceTime * 1e3),
    mixture_early_over_mean: of((spray) => spray.mixture.early),
    mixture_late_over_mean: of((spray) => spray.mixture.late),
    film_mass_mg: of((spray) => spray.filmMass * 1e6),
    film_deposit_fraction: of((spray) => spray.filmShare),
    film_time_constant_ms: of((spray) => spray.filmTime * 1e3),
    stand_off_fraction: of((spray) => spray.standOff),
    stand_off_returned_fraction: of((spray) => spray.returned),
    lost_fuel_fraction: of((spray) => spray.lost),
    fuel_per_cycle_mg: of((spray) => spray.injected * 1e6),
    pulse_near_ms: of((spray) => spray.pulse[0]! * 1e3),
    pulse_above_ms: of((spray) => spray.pulse[spray.pulse.length - 1]! * 1e3),
    settled: points.map((point) => !isFailure(point) && point.settled),
    cycles: gas((point) => point.cycles),
    failures: points.map((point) => (isFailure(point) ? point.failure : null)),
  };
}

/** One row a placement and speed. */
export function placementCsv(study: PlacementStudy): string {
  const { speeds, outcomes } = study;
  const rows = Object.entries(outcomes).flatMap(([name, points]) => {
    const columns = placementColumns(points);
    return speeds.map((speed, i) => [
      name,
      speed,
      ...Object.values(columns).map((values: (number | string | boolean | null)[]) => values[i]!),
    ]);
  });
  const heads = Object.keys(placementColumns([]));
  return csv(['placement', 'speed_rpm', ...heads], rows);
}

function along(points: readonly PointOutcome[]) {
  const spray = sprayOf(points[points.length - 1]!);
  return {
    distance_to_valve_mm: (spray?.along.distance ?? []).map((x) => plain(x * 1e3)),
    fraction_upstream: cumulative(spray?.along.share ?? []).map(plain),
  };
}

/** Running sums. */
export function cumulative(values: readonly number[]): number[] {
  let sum = 0;
  return values.map((value) => {
    sum += value;
    return sum;
  });
}

function number(value: number | undefined): number | null {
  return value === undefined ? null : plain(value);
}
