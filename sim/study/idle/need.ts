/** What air the engine wants at idle, what plates let in, and what a valve must give besides. */
import * as idle from '../../decision/idleAir.ts';
import { portFilling } from '../../decision/portFilling.ts';
import { circleArea } from '../../duct/profile.ts';
import type { IdleSpecification, PressureBarSpecification } from '../../fittings.ts';
import { type FuelName, fuelNamed } from '../../gas/fuel.ts';
import type { EngineSpecification } from '../../specification.ts';
import { DRY_AIR_GAS_CONSTANT } from '../../units.ts';

/** Of a short drilled hole: Weisbach, as in Unwin, Hydraulics, Encyclopaedia Britannica 1911 [-]. */
export const DRILLED = 0.82;
/** A shut plate stands so far above its stop [deg], since an area of nothing has no filling. */
export const SHUT = 0.02;
export const WIDE_OPEN = 90;
/** Of an angle down to a ten-thousandth of a degree. */
const HALVINGS = 22;

export interface IdleQuestion {
  engine: EngineSpecification;
  spec: IdleSpecification;
  /** The bar of the sensor, where the file has one. */
  bar?: PressureBarSpecification;
}

/** How the engine idles: warm, warm with the load on, cold, cold with the load on. */
export const STATES = ['warm', 'loaded', 'cold', 'most'] as const;
export type IdleState = (typeof STATES)[number];

/** Air that the engine wants [kg/s] in each state, and for the load alone. */
export type IdleNeed = Record<IdleState | 'load', number>;

export interface Context extends IdleQuestion {
  need: IdleNeed;
  /** Mean behind the plates of the warm engine [Pa]. */
  mean: number;
  /** Plates that give all the warm air, and plates where a valve gives the rest [deg]. */
  ajar: number;
  beside: number;
}

/** Work of a kilogram of air [J/kg]. */
export function workOf({ engine: { combustion }, spec }: IdleQuestion): number {
  const { lowerHeatingValue, stoichiometricAirFuelRatio } = fuelNamed(combustion.fuel as FuelName);
  return (spec.efficiency * lowerHeatingValue) / (combustion.lambda * stoichiometricAirFuelRatio);
}

export function needOf(question: IdleQuestion): IdleNeed {
  const { air, coldExtra, load: torque, speed } = question.spec;
  const load = (torque * speed * Math.PI) / 30 / workOf(question);
  const cold = air * (1 + coldExtra);
  return { warm: air, loaded: air + load, cold, load, most: cold + load };
}

export const stillAir = ({ intake }: EngineSpecification): idle.StillAir => ({
  pressure: intake.feed.pressure,
  temperature: intake.feed.temperature,
  gasConstant: DRY_AIR_GAS_CONSTANT,
});

/** The place between two ends at which what rises reaches a value. */
export function placeOf(
  rising: (x: number) => number,
  wanted: number,
  low: number,
  high: number,
): number {
  let [from, to] = [low, high];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (from + to) / 2;
    if (rising(middle) < wanted) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/** Air past plates at an angle, all cylinders [kg/s]. */
export const airAt = (engine: EngineSpecification, speed: number, angle: number) =>
  engine.cylinder.count * portFilling(engine, speed, angle).flow;

export function platesFor(engine: EngineSpecification, { speed }: IdleSpecification, air: number) {
  const angle = placeOf((at) => airAt(engine, speed, at), air, shutAngle(engine), WIDE_OPEN);
  return { angle, mean: portFilling(engine, speed, angle).mean };
}

/** Plates as shut as is looked at [deg]. */
export const shutAngle = ({ intake }: EngineSpecification) => intake.throttle.closedAngle + SHUT;

/** Air of a cylinder past its shut plate and a hole of an effective area [m^2]: [kg/s]. */
export const bledAir = ({ engine, spec }: IdleQuestion, area: number) =>
  portFilling(engine, spec.speed, shutAngle(engine), area).flow;

/** Bore of a drilling in each body by which all cylinders draw so much air past shut plates [m]. */
export function drillingFor(question: IdleQuestion, air: number): number {
  const { count } = question.engine.cylinder;
  const largest = circleArea(question.engine.intake.throttle.bore);
  const area = placeOf((hole) => bledAir(question, hole), air / count, 0, largest);
  return Math.sqrt((4 * area) / (Math.PI * DRILLED));
}

/** The valve, and what it must let in beside the plates: warm, cold, cold with load [kg/s]. */
export function valveOf({ engine, spec, need }: Context) {
  const area = DRILLED * circleArea(spec.valveBore);
  const { frequency, deadTime } = spec;
  const valve = { flow: idle.chokedFlow(area, stillAir(engine)), frequency, deadTime };
  const plates = spec.plateShare * need.warm;
  const given = [need.warm - plates, need.cold - plates, need.most - plates] as const;
  const [warm, cold, most] = given.map((flow) => idle.dutyFor(valve, flow)) as [
    number,
    number,
    number,
  ];
  return { valve, plates, given, duty: [warm, cold, most] as const };
}

/** Room of a bar and so many hoses [m^3]. */
const roomOf = (volume: number, hoses: number, length: number, bore: number) =>
  volume + hoses * length * circleArea(bore);

export const ownRoom = ({ engine, spec }: IdleQuestion) =>
  roomOf(spec.barVolume, engine.cylinder.count, spec.hoseLength, spec.hoseBore);

export const sharedRoom = (bar: PressureBarSpecification) =>
  roomOf(bar.volume, bar.hoses, bar.hoseLength, bar.hoseBore);
