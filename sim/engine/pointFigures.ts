/**
 * What a cycle comes to in figures, and how they go on from two meshes towards no cell at all.
 *
 * Volumetric efficiency = fresh air trapped at intake closing / (ambient density x swept volume).
 * Source: definitions; the share of the difference is our own choice (docs/speed.md).
 */
import { sweptVolume } from '../cylinder/crank.ts';
import type { LineCycle } from './cycle.ts';
import type { EngineModel } from './plan.ts';

/** What a cycle comes to. */
export interface CycleFigures {
  /** Volumetric efficiency against ambient air [-]. */
  volumetricEfficiency: number;
  /** Cylinder pressure at intake closing [Pa]. */
  pressureAtClosing: number;
  /** Temperature of the charge at intake closing [K]. */
  chargeTemperature: number;
  /** Burned products of the last cycle in the charge [-]. */
  residualFraction: number;
  /** Gas pushed from the cylinder back into the port, as a share of the charge [-]. */
  backflow: number;
  /** Gas blown out of the mouth, as a share of the charge [-]. */
  mouthOutflow: number;
  /** Mean pressure over time just behind the throttle plate [Pa]. */
  portPressure: number;
  /** Indicated torque of the engine, gas exchange included [N m]; compare, do not quote. */
  indicatedTorque: number;
}

/** What the cylinders come to that do alike. */
export interface CylinderFigures extends CycleFigures {
  /** Their numbers, from 1. */
  numbers: readonly number[];
}

/**
 * Share of the difference between the last two meshes by which figures go on beyond the finest: a scheme
 * of second order asks for 1/3, one of first order for 1; shocks and contacts leave this one between,
 * and the middle is taken (docs/speed.md).
 */
const BEYOND = 2 / 3;

/** Figures line by line, carried on from the coarser mesh's where that is given. */
export function cylindersOf(
  model: EngineModel,
  fine: readonly LineCycle[],
  coarse: readonly LineCycle[] | undefined,
): CylinderFigures[] {
  return model.lines.map(({ like: numbers }, i) => {
    const here = figuresOf(model, fine[i]!);
    return { numbers, ...(coarse ? beyond(here, figuresOf(model, coarse[i]!)) : here) };
  });
}

/** Figures on the finest mesh carried on towards no cell at all. */
export function beyond(fine: CycleFigures, coarse: CycleFigures): CycleFigures {
  const entries = (Object.keys(fine) as (keyof CycleFigures)[]).map((key) => {
    const value = fine[key] + BEYOND * (fine[key] - coarse[key]);
    // What is all but nothing stays no less than nothing.
    return [key, fine[key] >= 0 ? Math.max(value, 0) : value];
  });
  return Object.fromEntries(entries);
}

export function figuresOf({ spec, working }: EngineModel, line: LineCycle): CycleFigures {
  const { trapped, work, backflow, mouthOutflow, portPressure } = line;
  const { pressure, temperature } = spec.ambient;
  const density = pressure / (working.gas.gasConstant(0, 0) * temperature);
  const charge = trapped.air + trapped.burned + trapped.fuel;
  return {
    volumetricEfficiency: trapped.air / (density * sweptVolume(spec.cylinder)),
    pressureAtClosing: trapped.pressure,
    chargeTemperature: trapped.temperature,
    residualFraction: trapped.burned / charge,
    backflow: backflow / charge,
    mouthOutflow: mouthOutflow / charge,
    portPressure,
    indicatedTorque: (work * spec.cylinder.count) / (4 * Math.PI),
  };
}
