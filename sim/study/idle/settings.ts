/**
 * How a way is set for so much air by closed formulas, and the engine so set for the solver: plates, a drilling in
 * each body, a valve that pulses into a bar of its own, into the pressure bar or into one cylinder. The pressure bar
 * of the file is fitted throughout; the first cylinder's plate, drilling or nipple is off. Pulses repeat with the
 * cycle. Cold: every wall has the temperature of the day. Source: geometry.
 */
import type { BarSpecification } from '../../bars.ts';
import { circleArea } from '../../duct/profile.ts';
import { hypot, square } from '../../elementary/powers.ts';
import type {
  EngineSpecification,
  ExhaustSpecification,
  PipeSpecification,
} from '../../specification.ts';
import { joinedBarOf } from '../signal/joined.ts';
import { throttled } from '../signal/tapped.ts';
import {
  airAt,
  type Context,
  DRILLED,
  drillingFor,
  platesFor,
  shutAngle,
  valveOf,
  WIDE_OPEN,
} from './need.ts';
import type { WayName } from './ways.ts';

/** What is turned to let air in. */
export interface Setting {
  name: WayName;
  /** Plates [deg]. */
  angle: number;
  /** Drilling in each body [m]. */
  bore?: number;
  /** Share of the time that the valve is open [-], and times it opens in a cycle. */
  valve?: { open: number; times: number };
}

/** By closed formulas, for air of all cylinders [kg/s]; as far open as it goes where they cannot. */
export function settingFor(name: WayName, air: number, context: Context): Setting {
  const { engine, spec, beside } = context;
  if (name === 'ajar' || name === 'driven') {
    return { name, angle: platesFor(engine, spec, air).angle };
  }
  if (name === 'bleeds') {
    return { name, angle: shutAngle(engine), bore: drillingFor(context, air) };
  }
  const { valve, plates } = valveOf(context);
  const open = Math.min(Math.max((air - plates) / valve.flow, 0), 1);
  return { name, angle: beside, valve: { open, times: timesOf(context) } };
}

/** Air by the formulas as far open as plates or a valve go [kg/s]. */
export function mostOf(name: WayName, context: Context): number {
  const { engine, spec } = context;
  if (name === 'driven') return airAt(engine, spec.speed, WIDE_OPEN);
  const { valve, plates } = valveOf(context);
  return plates + valve.flow;
}

/** Pulses in a cycle, a whole number. */
export const timesOf = ({ spec }: Context, frequency = spec.frequency) =>
  Math.max(Math.round((frequency * 120) / spec.speed), 1);

/** Share of the period that the valve is driven; held open it loses no time. */
export const dutyOf = ({ deadTime, frequency }: Context['spec'], open: number) =>
  open <= 0 ? 0 : open < 1 ? open + deadTime * frequency : 1;

/** The engine so set, on a mesh that is enough for it. */
export function engineSet(setting: Setting, context: Context): EngineSpecification {
  const { engine, spec } = context;
  const { angle, bore } = setting;
  const plates = throttled(engine, angle);
  const bars = barsOf(setting, context);
  const { count } = engine.cylinder;
  const each = (first: number, others: number) =>
    Array.from({ length: count }, (_, i) => (i === 0 ? first : others));
  const throttleAngles = each(Math.min(angle + spec.plateError, WIDE_OPEN), angle);
  const own = engine.intake.throttle.bleed;
  /** One hole with the area of the body's and of this. */
  const withOwn = (wide: number) => hypot(wide, own ? own.bore * Math.sqrt(own.open) : 0);
  return {
    ...plates,
    intake: {
      ...plates.intake,
      ...(bore === undefined
        ? { throttleAngles }
        : { bleedBores: each(withOwn(bore + spec.boreError), withOwn(bore)) }),
      ...(bars.length > 0 && { bars }),
    },
  };
}

function barsOf({ name, valve: driven }: Setting, context: Context): BarSpecification[] {
  const { engine, spec, bar } = context;
  const { count } = engine.cylinder;
  const sensor = bar ? [joinedBarOf(bar, count, at(context))] : [];
  if (!driven) return sensor;
  const bore = spec.valveBore;
  const valve = { bore, area: DRILLED * circleArea(bore), ...driven };
  if (name === 'one') return [...sensor, { ...ownBar(context, 1), valve }];
  if (name === 'own') {
    return [...sensor, fedOff({ ...ownBar(context, count), valve }, spec.nippleBore, context)];
  }
  return sensor.map((joined) => fedOff({ ...joined, valve }, bar!.jetBore, context));
}

const at = ({ engine, spec, mean: pressure }: Context) => ({
  frequency: (spec.speed * engine.cylinder.count) / 120,
  pressure,
});

function ownBar(context: Context, hoses: number): BarSpecification {
  const { hoseLength: length, hoseBore: bore, nippleBore, barVolume: volume } = context.spec;
  const hole = DRILLED * circleArea(nippleBore);
  const places = Array.from({ length: hoses }, (_, place) => ({ place, length, bore, hole }));
  return { at: at(context), hoses: places, volume };
}

/** With the first nipple wider than its bore by what bores differ. */
function fedOff(bar: BarSpecification, bore: number, { spec }: Context): BarSpecification {
  const wider = square((bore + spec.boreError) / bore);
  return {
    ...bar,
    hoses: bar.hoses.map((one, i) => (i === 0 ? { ...one, hole: wider * one.hole } : one)),
  };
}

/** Every wall at the temperature of the day. */
export function coldEngine(engine: EngineSpecification): EngineSpecification {
  const { ambient, cylinder, intake, exhaust } = engine;
  const cold = { wallTemperature: ambient.temperature };
  const { chamber } = intake;
  return {
    ...engine,
    cylinder: { ...cylinder, ...cold },
    intake: {
      ...intake,
      trumpet: { ...intake.trumpet, ...cold },
      runner: { ...intake.runner, ...cold },
      port: { ...intake.port, ...cold },
      ...(chamber && { chamber: { ...chamber, inlet: { ...chamber.inlet, ...cold } } }),
    },
    exhaust: { ...exhaust, ...coldPipes(exhaust, cold) },
  };
}

/** Those of the exhaust that are there. */
function coldPipes(
  exhaust: ExhaustSpecification,
  cold: Pick<PipeSpecification, 'wallTemperature'>,
) {
  const { port, primary, step, secondary, collector, tail } = exhaust;
  return {
    port: { ...port, ...cold },
    primary: { ...primary, ...cold },
    ...(step && { step: { ...step, ...cold } }),
    ...(secondary && { secondary: { ...secondary, ...cold } }),
    ...(collector && { collector: { ...collector, ...cold } }),
    ...(tail && { tail: { ...tail, ...cold } }),
  };
}
