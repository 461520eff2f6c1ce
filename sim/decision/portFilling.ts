/**
 * Air that a cylinder draws past its own plate into the small volume behind it, without waves:
 *
 *   dm/dt = Ae p0 psi(p/p0) / sqrt(R T),   p = m R T / V
 *
 *   Ae  effective area of the plate at p/p0 [m^2] (loss/throttlePlate.ts)   psi  flow function (loss/nozzle.ts)
 *   p0, T  air before it [Pa, K]
 *   V  plate to valve [m^3], and from top to bottom dead centre of induction the cylinder besides
 *
 * At the top the clearance, at p0, joins the port; at the bottom the cylinder leaves with what it has, and
 * the port fills alone until the next induction. Isothermal, no loss at the valve, no overlap: what is used
 * of this is how air and port pressure answer to the plate, where waves are weak. Source: mass balance of an
 * isothermal volume; no constant is fitted. How far the solver differs is in tests/trade/portFilling.test.ts.
 */
import { cylinderVolume } from '../cylinder/crank.ts';
import { lengthOf, profileOf, volumeTo } from '../duct/profile.ts';
import { flowFunction } from '../loss/nozzle.ts';
import { growthAt, plateGrowth, throttleArea } from '../loss/throttlePlate.ts';
import type { EngineSpecification } from '../specification.ts';
import { DRY_AIR_GAS_CONSTANT } from '../units.ts';

const GAMMA = 1.4;
/** Steps a cycle, of which the first quarter is induction. */
const STEPS = 360;
const INDUCTION = STEPS / 4;
const MOST_CYCLES = 200;
/** Relative change of air from cycle to cycle at which it repeats. */
const SETTLED = 1e-9;

export interface PortFilling {
  /** Air of one cylinder [kg/s] and a cycle [kg]. */
  flow: number;
  charge: number;
  /** Pressure behind the plate, mean over time and extremes [Pa]. */
  mean: number;
  lowest: number;
  highest: number;
}

/** Volume from plate to valve [m^3]. */
export function portVolume({ intake }: EngineSpecification): number {
  const { throttle, runner, port } = intake;
  const behind = throttle.length - throttle.shaftPosition;
  const bore = { outerDiameter: throttle.bore, innerDiameter: throttle.bore };
  const profile = profileOf([{ length: behind, ...bore }, runner, port]);
  return volumeTo(profile, lengthOf(profile));
}

/**
 * Filling at a speed [rpm] with the plate at an angle [deg].
 *
 * @param bleed effective area past the plate besides what the engine has [m^2]
 */
export function portFilling(
  engine: EngineSpecification,
  speed: number,
  angle: number,
  bleed = 0,
): PortFilling {
  const { pressure: outside, temperature } = engine.intake.feed;
  const heat = DRY_AIR_GAS_CONSTANT * temperature;
  const port = portVolume(engine);
  const volumes = Array.from(
    { length: INDUCTION + 1 },
    (_, i) => port + cylinderVolume(engine.cylinder, 360 + (720 * i) / STEPS),
  );
  const flow = plateFlow(engine, angle, bleed);
  const perStep = (outside * 120) / (speed * STEPS * Math.sqrt(heat));
  const induction = { outside, heat, port, volumes, drawn: (p: number) => perStep * flow(p) };
  let pressures: number[] = [outside];
  let charge = 0;
  for (let cycle = 0; cycle < MOST_CYCLES; cycle++) {
    const before = charge;
    ({ pressures, charge } = oneCycle(pressures.at(-1)!, induction));
    if (Math.abs(charge - before) <= SETTLED * charge) break;
  }
  return {
    flow: (charge * speed) / 120,
    charge,
    mean: pressures.reduce((sum, p) => sum + p, 0) / STEPS,
    lowest: Math.min(...pressures),
    highest: Math.max(...pressures),
  };
}

/** Effective area times flow function [m^2] against the pressure ratio. */
function plateFlow({ intake }: EngineSpecification, angle: number, bleed: number) {
  const area = throttleArea(intake.throttle, angle);
  const growth = plateGrowth(intake.throttle, angle);
  return (ratio: number) => (area * growthAt(growth, ratio) + bleed) * flowFunction(ratio, GAMMA);
}

interface Induction {
  /** Air before the plate [Pa], and R T [J/kg]. */
  outside: number;
  heat: number;
  /** Port alone, and with the cylinder at each step of induction [m^3]. */
  port: number;
  volumes: readonly number[];
  /** What the plate passes in a step at a pressure ratio [kg]. */
  drawn(ratio: number): number;
}

/** One cycle from top dead centre, the port at a pressure [Pa]. */
function oneCycle(start: number, { outside, heat, port, volumes, drawn }: Induction) {
  const joined = volumes[0]!;
  let p = (start * port + outside * (joined - port)) / joined;
  let charge = 0;
  const pressures: number[] = [];
  for (let i = 0; i < STEPS; i++) {
    const now = i < INDUCTION ? volumes[i]! : port;
    const next = i < INDUCTION ? volumes[i + 1]! : port;
    // No more than fills it: near the pressure outside the law is steeper than a step.
    const room = (outside * next - p * now) / heat;
    const mass = Math.min(drawn(p / outside), room);
    p = Math.min((p * now + mass * heat) / next, outside);
    charge += mass;
    pressures.push(p);
  }
  return { pressures, charge };
}
