/** Every way of letting idle air in, by closed formulas. */

import { JetLaw } from '../../acoustics/marchedBar.ts';
import { airInHoses } from '../../acoustics/restingAir.ts';
import { sweptVolume } from '../../cylinder/crank.ts';
import * as idle from '../../decision/idleAir.ts';
import { portFilling, portVolume } from '../../decision/portFilling.ts';
import { circleArea } from '../../duct/profile.ts';
import { square } from '../../elementary/powers.ts';
import type { PressureBarSpecification } from '../../fittings.ts';
import type { EngineSpecification } from '../../specification.ts';
import {
  airAt,
  bledAir,
  type Context,
  DRILLED,
  drillingFor,
  type IdleQuestion,
  ownRoom,
  placeOf,
  sharedRoom,
  stillAir,
  valveOf,
  WIDE_OPEN,
} from './need.ts';

export type WayName = 'ajar' | 'bleeds' | 'own' | 'shared' | 'one' | 'driven';

/** One way of letting air in. */
export interface IdleWay {
  name: WayName;
  /** Plates above their stop [deg], and the bore of each drilling [m], warm. */
  opening?: number;
  bore?: number;
  /** Share of the period that the valve is driven: warm, cold, cold with load [-]. */
  duty?: readonly [warm: number, cold: number, most: number];
  /** Air of a cylinder whose plate, drilling or nipple is off, over each other's, less one [-]. */
  spread: number;
  /** Lambda of it and of each other with equal fuel. */
  lambda: { one: number; others: number };
  /** Most air it can let in, over that of the warm engine [-]; 1 where nothing moves. */
  reach: number;
  enough: boolean;
  /** Turns until the runner has followed [-]; none where nothing moves. */
  turns?: number;
  /** What the valve puts on the pressure signal: peak to peak, shift of its mean [Pa]. */
  ripple: number;
  offset: number;
}

/** All that the file can have; into the pressure bar only where every runner has a hose, through one cylinder where there are others. */
export function waysOf(context: Context, angle: number): IdleWay[] {
  const { bar, engine } = context;
  const joined = bar && bar.hoses === engine.cylinder.count;
  return [
    ajar(context, angle, 'ajar'),
    bleeds(context),
    ownBar(context),
    ...(joined ? [sharedBar(context, bar)] : []),
    ...(engine.cylinder.count > 1 ? [oneCylinder(context)] : []),
    ajar(context, angle, 'driven'),
  ];
}

/** Growth of one cylinder's air with its plate off by the error [-]. */
function plateSpread({ engine, spec }: IdleQuestion, angle: number): number {
  const flow = (at: number) => portFilling(engine, spec.speed, at).flow;
  return flow(angle + spec.plateError) / flow(angle) - 1;
}

function ajar(context: Context, angle: number, name: 'ajar' | 'driven'): IdleWay {
  const { engine, spec, need } = context;
  const spread = plateSpread(context, angle);
  const driven = name === 'driven';
  const reach = driven ? airAt(engine, spec.speed, WIDE_OPEN) / need.warm : 1;
  return {
    name,
    opening: angle - engine.intake.throttle.closedAngle,
    ...answered(context, spread, reach),
    ...(driven && { turns: turnsOf(engine, 0) }),
  };
}

/** What is said of every way alike. */
function answered({ engine, need }: Context, spread: number, reach: number) {
  return {
    spread,
    lambda: idle.oneApart(spread, engine.cylinder.count),
    reach,
    enough: reach * need.warm >= need.most,
    ripple: 0,
    offset: 0,
  };
}

const turnsOf = (engine: EngineSpecification, besides: number) =>
  idle.turnsToFill(portVolume(engine) + besides, sweptVolume(engine.cylinder));

function bleeds(context: Context): IdleWay {
  const bore = drillingFor(context, context.need.warm);
  const air = (wide: number) => bledAir(context, DRILLED * circleArea(wide));
  const spread = air(bore + context.spec.boreError) / air(bore) - 1;
  return { name: 'bleeds', bore, ...answered(context, spread, 1) };
}

/** Air of a cylinder whose plate and nipple are both off, over each other's, less one [-]. */
function sharedOut(context: Context, nipple: number): number {
  const { spec, need, beside } = context;
  const { given, plates } = valveOf(context);
  const wider = square((nipple + spec.boreError) / nipple) - 1;
  const byPlate = (plates / need.warm) * plateSpread(context, beside);
  return byPlate + (given[0] / need.warm) * wider;
}

/** A valve into hoses with nipples on a volume. */
function throughBar(context: Context, name: WayName, nipple: number, volume: number): IdleWay {
  const { engine, need } = context;
  const { valve, plates, duty } = valveOf(context);
  const { count } = engine.cylinder;
  const nipples = count * idle.chokedFlow(DRILLED * circleArea(nipple), stillAir(engine));
  const reach = (plates + Math.min(valve.flow, nipples)) / need.warm;
  return {
    name,
    duty,
    ...answered(context, sharedOut(context, nipple), reach),
    turns: turnsOf(engine, volume / count),
  };
}

const ownBar = (context: Context) =>
  throughBar(context, 'own', context.spec.nippleBore, ownRoom(context));

function sharedBar(context: Context, bar: PressureBarSpecification): IdleWay {
  const { engine, mean, need } = context;
  const { valve, given, plates } = valveOf(context);
  const way = throughBar(context, 'shared', bar.jetBore, sharedRoom(bar));
  const outside = engine.intake.feed.pressure;
  const jet = { bore: bar.jetBore, coefficient: bar.jetCoefficient };
  const law = new JetLaw(jet, airInHoses(engine.ambient, mean));
  const passed = (pressure: number) => bar.hoses * law.flow(pressure, mean);
  const reach = (plates + Math.min(valve.flow, passed(outside))) / need.warm;
  return {
    ...way,
    ...answered(context, way.spread, reach),
    ripple: idle.valveRipple(valve, given[0], sharedRoom(bar), stillAir(engine)),
    offset: placeOf(passed, given[0], mean, outside) - mean,
  };
}

function oneCylinder(context: Context): IdleWay {
  const { engine, need } = context;
  const { valve, plates, given, duty } = valveOf(context);
  const spread = (given[0] * engine.cylinder.count) / plates;
  const reach = (plates + valve.flow) / need.warm;
  return { name: 'one', duty, ...answered(context, spread, reach), turns: turnsOf(engine, 0) };
}
