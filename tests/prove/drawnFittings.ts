/** What is fitted to a drawn engine beside or in place of parts of it, and what of that it is then run with. */
import type { Scenario } from '../../sim/scenario/resolve.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { inBox } from '../../sim/study/airbox/fitted.ts';
import { onPlenum } from '../../sim/study/plenum/fitted.ts';
import { withBar } from '../../sim/study/signal/joined.ts';
import { chance, type Draw, deg, mm, oneOf, type Sizes } from './drawnEngine.ts';

export const WAYS = ['bodies', 'injectors', 'plenum', 'box', 'bar'] as const;

export type Way = (typeof WAYS)[number];

/** Of all engines: the dear ones seldom, for all their cylinders or all their drops are solved. */
const OFTEN: readonly Way[] = [...new Array<Way>(36).fill('bodies'), ...WAYS];

export const drawnWay = (u: Draw): Way => oneOf(u, OFTEN);

/** Sections of a file. */
export function drawnFittings(u: Draw, size: Sizes): object {
  const swept = (Math.PI / 4) * size.bore ** 2 * size.stroke * size.cylinders;
  const litres = (low: number, high: number, least: number) =>
    `${Math.max((swept * u(low, high)) / 1e6, least).toFixed(3)} L`;
  return {
    injectors: drawnInjectors(u, size),
    pressureBar: {
      ...{ hoses: size.cylinders, hoseLength: mm(u(120, 600)), hoseBore: mm(u(2.5, 8)) },
      ...{ jetBore: mm(u(0.8, 2.5)), volume: `${u(3, 120).toFixed(1)} cm3` },
    },
    plenum: {
      ...{ volume: litres(0.8, 4, 0.7), inletAt: oneOf(u, ['end', 'middle']) },
      ...{ runnerLength: mm(u(110, 600)), mouthRadius: mm(u(3, 12)) },
    },
    airbox: {
      ...{ volume: litres(2, 12, 1.2), inletAt: oneOf(u, ['end', 'middle']) },
      ...{ snorkelLength: mm(u(60, 1000)), filterLoss: u(0.5, 6).toFixed(2) },
    },
  };
}

/** Fuel of a cylinder full of air in a cycle [mm^3], petrol as everywhere here. */
const fullFuel = ({ bore, stroke, lambda }: Sizes) =>
  ((Math.PI / 4) * bore ** 2 * stroke * 1.2e-9 * 1e3) / (lambda * 14.6) / 745e-6;

/** One near the valve, or with it one above the mouth; together they may be open half of a cycle at the top. */
function drawnInjectors(u: Draw, size: Sizes): object {
  const full = 2.4 * fullFuel(size) * (size.top / 2);
  const flow = `${Math.min(Math.max(full / 1e3, 100), 9000).toFixed(0)} cc/min`;
  const near = {
    ...{ name: 'near the valve', fromValve: mm(u(40, 140)), offset: mm(size.throttle * u(0, 0.4)) },
    ...{ tilt: deg(u(0, 35)), cone: deg(u(8, 30)), flow, dropSize: `${u(60, 180).toFixed(0)} um` },
    end: deg(u(0, 700)),
  };
  const above = {
    ...{ name: 'above the mouth', fromMouth: mm(-u(15, 120)), cone: deg(u(8, 30)), flow },
    ...{ dropSize: `${u(50, 140).toFixed(0)} um`, end: deg(u(0, 700)) },
  };
  const both = chance(u, 0.5);
  const staging = [
    { speed: `${size.low.toFixed(0)} rpm`, outer: u(0, 0.3).toFixed(2) },
    { speed: `${(size.top + 1).toFixed(0)} rpm`, outer: u(0.2, 1).toFixed(2) },
  ];
  return {
    each: both ? [near, above] : [near],
    ...(both && { staging }),
    lean: deg(u(0, 80)),
  };
}

/** The engine as it is run: the file's own, or with one of its fittings. */
export function fitted(scenario: Scenario, way: Way): EngineSpecification {
  const { engine, injectors, pressureBar, plenum, airbox, speeds } = scenario;
  if (way === 'injectors') return { ...engine, injectors: injectors! };
  if (way === 'plenum') return onPlenum(engine, plenum, engine.intake.throttle.angle);
  if (way === 'box') return inBox(engine, airbox);
  if (way === 'bar') return withBar(engine, pressureBar!, speeds[0]!, engine.ambient.pressure);
  return engine;
}
