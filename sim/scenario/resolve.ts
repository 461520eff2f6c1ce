/** From the view of a file that has passed its checks to the engine as data, defaults listed. */
import type { LengthUnit } from '../decision/lengthUnit.ts';
import type { Fit } from '../decision/shelf.ts';
import type { Target } from '../decision/target.ts';
import type {
  AirboxSpecification,
  IdleSpecification,
  MeterSpecification,
  PlenumSpecification,
  PressureBarSpecification,
} from '../fittings.ts';
import type { InjectorsSpecification } from '../injectors.ts';
import type { Linkage } from '../linkage/linkage.ts';
import type { Row } from '../sound/monopoles.ts';
import type { EngineSpecification } from '../specification.ts';
import { type FactSection, factsOf } from './facts.ts';
import type { ScenarioView } from './schema.ts';
import { resolveAirbox } from './sections/airbox.ts';
import { resolveAmbient } from './sections/ambient.ts';
import { resolveEngine } from './sections/engine.ts';
import { namesCylinders, resolveExhaust } from './sections/exhaust.ts';
import { resolveFiring } from './sections/firing.ts';
import { resolveFit } from './sections/fit.ts';
import { resolveFuel } from './sections/fuel.ts';
import { gridValues } from './sections/grid.ts';
import { resolveIdle } from './sections/idle.ts';
import { resolveInjectors } from './sections/injectors.ts';
import { resolveIntake } from './sections/intake.ts';
import { resolveMeter } from './sections/meter.ts';
import { resolveNumerics } from './sections/numerics.ts';
import { resolvePedal } from './sections/pedal.ts';
import { resolvePlenum } from './sections/plenum.ts';
import { resolvePressureBar } from './sections/pressureBar.ts';
import { resolveSound } from './sections/sound.ts';
import { resolveSweep, type SweepRange } from './sections/study.ts';
import { resolveTarget } from './sections/target.ts';
import { resolveUncertainty, type Uncertainty } from './sections/uncertainty.ts';
import { type DefaultUsed, LeafPlace, type ScenarioWarning, type Told } from './view.ts';

/** A value with the half-width that the builder gave. */
export interface Spread {
  path: string;
  /** Value and half-width in the unit inside the program. */
  value: number;
  spread: number;
}

/** A scenario, resolved: what is computed, and how it came about. */
export interface Scenario {
  title: string;
  notes: string;
  engine: EngineSpecification;
  /** Injectors, which only the study of their placement puts into the engine. */
  injectors?: InjectorsSpecification;
  /** From the foot to the plates; absent where the file says nothing of it. */
  pedal?: Linkage;
  /** The mouths as they are heard: as the file has them, or as is usual. */
  mouths: Row;
  /** What joins the runners to a pressure sensor, for the study of its signal alone. */
  pressureBar?: PressureBarSpecification;
  /** How the engine idles, for the study of its air alone. */
  idle?: IdleSpecification;
  /** One throttle and a plenum to weigh against: as the file has it, or as is usual. */
  plenum: PlenumSpecification;
  /** A box over the trumpets: as the file has it, or as is usual. */
  airbox: AirboxSpecification;
  /** A flow meter in its snorkel: as the file has it, or as is usual. */
  meter: MeterSpecification;
  /** Engine speeds [rpm], rising. */
  speeds: number[];
  /** Whether more speeds are computed between them: they are a range, not a list. */
  refine: boolean;
  /** Unit that the file gives the trumpet's length in, inches or else millimetres. */
  lengthUnit: LengthUnit;
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
  /** Everything as it was understood, in words. */
  facts: FactSection[];
}

export function resolveScenario(view: ScenarioView, told: Told): Scenario {
  const engine = resolveWholeEngine(view);
  const injectors = resolveInjectors(view, engine);
  const speeds = [...gridValues(view.speeds)];
  const fittings = resolveFittings(view, engine, speeds);
  const sweep = resolveSweep(view);
  const target = resolveTarget(view);
  const meter = resolveMeter(view, engine, fittings.airbox, speeds, target);
  const fit = resolveFit(view);
  const uncertainty = resolveUncertainty(view.uncertainty);
  const scenario = {
    title: engine.title,
    notes: view.notes.given ?? '',
    engine,
    ...(injectors && { injectors }),
    ...fittings,
    meter,
    speeds,
    refine: !view.speeds.at.present,
    lengthUnit: lengthUnitOf(view.intake.trumpet.length.quantity?.text),
    sweep,
    target,
    ...(fit && { fit }),
    ...(uncertainty && { uncertainty }),
    defaultsUsed: told.defaultsUsed,
    warnings: told.warnings,
    spreads: spreadsOf(told),
  };
  return { ...scenario, facts: factsOf(view, scenario) };
}

/** What stands about the engine: pedal, bar, idle air, plenum and box. */
function resolveFittings(
  view: ScenarioView,
  engine: EngineSpecification,
  speeds: readonly number[],
) {
  const pedal = resolvePedal(view, engine);
  const mouths = resolveSound(view, engine);
  const pressureBar = resolvePressureBar(view, engine, speeds);
  const idle = resolveIdle(view, engine);
  const highest = speeds.at(-1)!;
  const plenum = resolvePlenum(view, engine, highest, mouths);
  const airbox = resolveAirbox(view, engine, highest, mouths);
  return {
    ...(pedal && { pedal }),
    mouths,
    ...(pressureBar && { pressureBar }),
    ...(idle && { idle }),
    ...{ plenum, airbox },
  };
}

export function resolveWholeEngine(view: ScenarioView): EngineSpecification {
  const ambient = resolveAmbient(view.ambient);
  const whole = resolveEngine(view.engine);
  const firing = resolveFiring(view, namesCylinders(view));
  return {
    title: view.title.given!,
    ambient,
    ...whole,
    ...(firing && { firing }),
    intake: resolveIntake(view, ambient),
    exhaust: resolveExhaust(view),
    combustion: resolveFuel(view.fuel),
    numerics: resolveNumerics(view.numerics),
  };
}

export function lengthUnitOf(text = ''): LengthUnit {
  return /\d\s*(in|inch|")(\s|$)/.test(text) ? 'in' : 'mm';
}

/** Every quantity with a spread. */
function spreadsOf({ places }: Told): Spread[] {
  return places.flatMap((place) => {
    const { value = 0, spread = 0 } = (place instanceof LeafPlace && place.quantity) || {};
    return spread > 0 ? [{ path: place.path, value, spread }] : [];
  });
}

/** A warning for every quantity outside its usual range. */
export function warnUnusual({ places }: Told): void {
  for (const place of places) {
    const quantity = place instanceof LeafPlace ? place.quantity : undefined;
    if (quantity?.unusual === undefined) continue;
    place.warn(`${quantity.text} is unusual; most engines lie within ${quantity.unusual}`);
  }
}
