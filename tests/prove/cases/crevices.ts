/** Engines with and without crevices and blow-by, and what their cylinders make of the fuel. */
import { sweptVolume } from '../../../sim/cylinder/crank.ts';
import { Run } from '../../../sim/engine/cycle.ts';
import type { EngineModel } from '../../../sim/engine/plan.ts';
import type { PointResult } from '../../../sim/engine/point.ts';
import { workingGas } from '../../../sim/engine/workingGas.ts';
import { type FuelName, fuelNamed } from '../../../sim/gas/fuel.ts';
import type { EngineSpecification } from '../../../sim/specification.ts';

export function withoutRings(engine: EngineSpecification): EngineSpecification {
  return { ...engine, cylinder: { ...engine.cylinder, crevice: 0, blowBy: 0 } };
}

/** Work over what burning the fuel completely would give [-]. */
export function indicatedEfficiency(engine: EngineSpecification, point: PointResult): number {
  const { ambient, cylinder, combustion } = engine;
  const { gas, airFuelRatio } = workingGas(engine);
  const density = ambient.pressure / (gas.gasConstant(0, 0) * ambient.temperature);
  const air = point.volumetricEfficiency * density * sweptVolume(cylinder) * cylinder.count;
  const heat = (air / airFuelRatio) * fuelNamed(combustion.fuel as FuelName).lowerHeatingValue;
  return (4 * Math.PI * point.indicatedTorque) / heat;
}

/** What a cylinder's crevices and rings did in a cycle, over its charge [-]. */
export interface RingFigures {
  /** Greatest mass in the crevices, and of it what is not burned. */
  held: number;
  unburned: number;
  blown: number;
  /** Fuel that gave no heat, over the fuel. */
  lost: number;
}

/** Runs a model to `cycles` and looks at its first cylinder in the last. */
export function ringFigures(model: EngineModel, speed: number, cycles = 6): RingFigures {
  const { gas, fuelHeat } = model.working;
  const { cylinder } = model.lines[0]!;
  const run = new Run(model, speed);
  run.start(false);
  run.stride = 1;
  let most = { mass: 0, burned: 0 };
  run.onStop = () => {
    const held = cylinder.crevices(gas);
    if (held.mass > most.mass) most = held;
  };
  let charge = 0;
  let fuel = 0;
  for (let i = 0; i < cycles; i++) {
    most = { mass: 0, burned: 0 };
    // What burns in a cycle came in at the end of the one before.
    fuel = cylinder.ledger.fuelMass;
    const { trapped } = run.cycle()[0]!;
    charge = trapped.air + trapped.burned + cylinder.ledger.fuelMass;
  }
  const { blownMass, burnHeat } = cylinder.ledger;
  return {
    held: most.mass / charge,
    unburned: (most.mass - most.burned) / charge,
    blown: blownMass / charge,
    lost: 1 - burnHeat / (fuel * fuelHeat),
  };
}
