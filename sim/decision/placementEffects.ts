/**
 * What runs of the placements say of one another: effects split, uncertainty, part load, pulses.
 *
 *   cooling       heat drawn from the gas as it enters the cylinder: no wave feels it
 *   displacement  vapour joins the gas as it enters the cylinder, no heat is drawn
 *   wave shift    what is left of the full run: colder, heavier gas tunes to lower speeds, and drag
 */

import { sweptVolume } from '../cylinder/crank.ts';
import { hypot } from '../elementary/powers.ts';
import type { PointResult } from '../engine/point.ts';
import { type FuelName, fuelNamed } from '../gas/fuel.ts';
import type { InjectorsSpecification } from '../injectors.ts';
import type { EngineSpecification } from '../specification.ts';
import { isFailure, type PointOutcome } from '../sweep/runner.ts';
import { DRY_AIR_GAS_CONSTANT } from '../units.ts';
import { IDLE_AIR, pulseFigures } from './pulseWidth.ts';
import type { FilmModel } from './tipIn.ts';

/** Change of volumetric efficiency against no evaporation before valve closing [-], one a speed. */
export interface EffectSplit {
  cooling: (number | undefined)[];
  displacement: (number | undefined)[];
  waveShift: (number | undefined)[];
  total: (number | undefined)[];
}

/** One placement at part load. */
export interface PartLoad extends FilmModel {
  placement: 'near' | 'above';
  outcome: PointOutcome;
}

export interface Uncertainty {
  /** Half-width in volumetric efficiency [-]. */
  value: number;
  /** Of it: drop sizes a third off either way; scatter of parcels and settling. */
  dropSize: number;
  scatter: number;
  /** Speeds at which drop sizes were varied [rpm]. */
  speeds: number[];
}

/** Scatter by parcels and settling: twice the change at which a point counts as settled. */
const SCATTER_OVER_SETTLE = 2;
export function uncertaintyOf(
  engine: EngineSpecification,
  speeds: number[],
  smaller: (number | undefined)[],
  larger: (number | undefined)[],
): Uncertainty {
  const halves = smaller.map((small, i) => Math.abs((small ?? 0) - (larger[i] ?? 0)) / 2);
  const dropSize = Math.max(...halves);
  const scatter = SCATTER_OVER_SETTLE * engine.numerics.settle;
  return { value: hypot(dropSize, scatter), dropSize, scatter, speeds };
}

export function effectSplit(
  none: PointOutcome[],
  above: PointOutcome[],
  cooled: PointOutcome[],
  displaced: PointOutcome[],
): EffectSplit {
  const against = (table: PointOutcome[]) => table.map((point, i) => difference(point, none[i]!));
  const cooling = against(cooled);
  const displacement = against(displaced);
  const total = against(above);
  const waveShift = total.map((all, i) => {
    const [c, d] = [cooling[i], displacement[i]];
    return all === undefined || c === undefined || d === undefined ? undefined : all - c - d;
  });
  return { cooling, displacement, waveShift, total };
}

/** Difference of volumetric efficiency [-]; undefined where a run failed. */
export function difference(a: PointOutcome, b: PointOutcome): number | undefined {
  return isFailure(a) || isFailure(b) ? undefined : a.volumetricEfficiency - b.volumetricEfficiency;
}

export function partLoad(placement: 'near' | 'above', outcome: PointOutcome): PartLoad {
  const spray = isFailure(outcome) ? undefined : outcome.spray;
  return { placement, outcome, share: spray?.filmShare ?? 0, time: spray?.filmTime ?? 0 };
}

/** Every injector alone at the highest speed and at idle. */
export function pulsesOf(
  {
    engine,
    injectors,
    speeds,
  }: { engine: EngineSpecification; injectors: InjectorsSpecification; speeds: readonly number[] },
  near: readonly PointOutcome[],
) {
  const top = speeds[speeds.length - 1]!;
  const last = near[near.length - 1]!;
  const ratio = fuelNamed(engine.combustion.fuel as FuelName).stoichiometricAirFuelRatio;
  const { pressure, temperature } = engine.ambient;
  const air = (pressure / (DRY_AIR_GAS_CONSTANT * temperature)) * sweptVolume(engine.cylinder);
  const fallback = air / (ratio * engine.combustion.lambda);
  const full = isFailure(last) ? fallback : (last.spray?.needed ?? fallback);
  return injectors.list.map((injector) =>
    pulseFigures(injector, full, top, (IDLE_AIR * air) / ratio),
  );
}

/** The figures of a point's spray, or undefined where it failed. */
export function sprayOf(outcome: PointOutcome): PointResult['spray'] {
  return isFailure(outcome) ? undefined : outcome.spray;
}
