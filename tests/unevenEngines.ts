/** Engines made of a demo's cylinder, on cells that are cheap to compute, for tests of uneven firing. */
import type { EngineSpecification, FiringSpecification } from '../sim/specification.ts';
import { demo } from './scenario.ts';

/** The hill-climb four's cylinder that many times, its exhaust as it is. */
export function coarseEngine(count: number, settle = 2e-4): EngineSpecification {
  const { engine } = demo('hill-climb');
  const numerics = { ...engine.numerics, intakeCell: 0.02, exhaustCell: 0.05, settle };
  return { ...engine, cylinder: { ...engine.cylinder, count }, numerics };
}

/** Cylinders in the order they fire, so many degrees from each to the next. */
export function fired(
  order: readonly number[],
  intervals: readonly number[],
): FiringSpecification[] {
  return order.map((cylinder, i) => ({
    cylinder,
    angle: intervals.slice(0, i).reduce((a, b) => a + b, 0),
  }));
}

/** Common practice, no source: the firing order of many cross-plane eights with odd and even banks. */
const CROSS_PLANE = [1, 8, 4, 3, 6, 5, 7, 2];
const BANKS = [
  [1, 3, 5, 7],
  [2, 4, 6, 8],
];

/** A cross-plane eight, each bank in one collector. */
export function crossPlaneEight(settle?: number): EngineSpecification {
  const engine = coarseEngine(8, settle);
  const firing = fired(CROSS_PLANE, new Array(8).fill(90));
  return { ...engine, firing, exhaust: { ...engine.exhaust, groups: BANKS } };
}

/** The same pipes, but each collector's cylinders fire 180 deg apart. */
export function evenEight(settle?: number): EngineSpecification {
  const { firing, ...engine } = crossPlaneEight(settle);
  const even = [0, 1].map((g) => CROSS_PLANE.filter((_, i) => i % 2 === g));
  return { ...engine, firing: firing!, exhaust: { ...engine.exhaust, groups: even } };
}

/** A twin whose crankpins stand so many degrees apart, two into one. */
export function twin(apart: number, settle?: number): EngineSpecification {
  const engine = coarseEngine(2, settle);
  const firing = fired([1, 2], [apart, 720 - apart]);
  return { ...engine, firing, exhaust: { ...engine.exhaust, joined: 2 } };
}
