/** From a scenario tree that the schema has passed to the engine as data, defaults listed. */
import type { Fit } from '../decision/shelf.ts';
import type { Target } from '../decision/target.ts';
import type { EngineSpecification, InjectorsSpecification } from '../specification.ts';
import type { DefaultUsed, Reading, ScenarioWarning, Spread } from './reading.ts';
import { resolveAmbient } from './sections/ambient.ts';
import { resolveEngine } from './sections/engine.ts';
import { resolveExhaust } from './sections/exhaust.ts';
import { facingWall, resolveFit } from './sections/fit.ts';
import { resolveFuel } from './sections/fuel.ts';
import { gridValues } from './sections/grid.ts';
import { resolveInjectors } from './sections/injectors.ts';
import { resolveIntake } from './sections/intake.ts';
import { resolveNumerics } from './sections/numerics.ts';
import { resolveSweep, type SweepRange } from './sections/study.ts';
import { resolveTarget } from './sections/target.ts';
import { resolveUncertainty, type Uncertainty } from './sections/uncertainty.ts';

/** A scenario, resolved: what is computed, and how it came about. */
export interface Scenario {
  title: string;
  notes: string;
  engine: EngineSpecification;
  /** Injectors, which only the study of their placement puts into the engine. */
  injectors?: InjectorsSpecification;
  /** Engine speeds [rpm], rising. */
  speeds: number[];
  sweep: SweepRange;
  target: Target;
  /** What can be fitted and bought; absent where the file says nothing about it. */
  fit?: Fit;
  /** How the doubt is carried through; absent where it is not. */
  uncertainty?: Uncertainty;
  /** Every default that was taken, in the order of the sections. */
  defaultsUsed: DefaultUsed[];
  /** What is valid but seldom meant. */
  warnings: ScenarioWarning[];
  /** What the builder is unsure about. */
  spreads: Spread[];
}

export function resolveScenario(reading: Reading): Scenario {
  const title = reading.text('title')!;
  const engine = resolveWholeEngine(reading, title);
  return {
    title,
    notes: reading.text('notes') ?? '',
    engine,
    ...withInjectors(reading, engine),
    speeds: gridValues(reading, 'speeds'),
    sweep: resolveSweep(reading),
    target: resolveTarget(reading),
    ...withFit(reading),
    ...withUncertainty(reading),
    defaultsUsed: reading.defaultsUsed,
    warnings: reading.warnings,
    spreads: reading.spreads(),
  };
}

function resolveWholeEngine(reading: Reading, title: string): EngineSpecification {
  const ambient = resolveAmbient(reading);
  return {
    title,
    ambient,
    cylinder: resolveEngine(reading),
    intake: { ...resolveIntake(reading, ambient), ...withWall(reading) },
    exhaust: resolveExhaust(reading),
    combustion: resolveFuel(reading),
    numerics: resolveNumerics(reading),
  };
}

function withInjectors(
  reading: Reading,
  engine: EngineSpecification,
): { injectors?: InjectorsSpecification } {
  const injectors = resolveInjectors(reading, engine);
  return injectors ? { injectors } : {};
}

function withFit(reading: Reading): { fit?: Fit } {
  const fit = resolveFit(reading);
  return fit ? { fit } : {};
}

function withUncertainty(reading: Reading): { uncertainty?: Uncertainty } {
  const uncertainty = resolveUncertainty(reading);
  return uncertainty ? { uncertainty } : {};
}

function withWall(reading: Reading): { facingWall?: number } {
  const wall = facingWall(reading);
  return wall === undefined ? {} : { facingWall: wall };
}
