/** Engines drawn by chance, as a file would say them: proportions as engines have them, or far wider. */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { stringify } from 'yaml';
import { drawnExhaust } from './drawnExhaust.ts';
import { drawnFittings } from './drawnFittings.ts';

/** A figure between two, evenly. */
export type Draw = (low: number, high: number) => number;

/** The first draws of seeds that follow each other are alike. */
const ALIKE = 32;

export function drawOf(seed: number): Draw {
  const generator = xoroshiro128plus(seed);
  for (let i = 0; i < ALIKE; i++) generator.next();
  return (low, high) => low + ((high - low) * uniformInt(generator, 0, 1e6)) / 1e6;
}

export const mm = (value: number) => `${value.toFixed(2)} mm`;
export const deg = (value: number, centre = '') => `${value.toFixed(1)} deg ${centre}`.trim();
export const whole = (u: Draw, low: number, high: number) => Math.floor(u(low, high + 0.999));
export const chance = (u: Draw, share: number) => u(0, 1) < share;
export const oneOf = <T>(u: Draw, all: readonly T[]): T => all[whole(u, 0, all.length - 1)]!;

/** What the parts of one engine are drawn from. */
export interface Sizes {
  cylinders: number;
  /** [mm] */
  bore: number;
  stroke: number;
  throttle: number;
  pipe: number;
  /** Lowest and highest speed [rpm]. */
  low: number;
  top: number;
  lambda: number;
  /** Factor by which ranges are wider than usual: 1 for usual ones. */
  wide: number;
}

/** Speeds of a file. */
const SPEEDS = 4;

/** The text of a scenario file. */
export function engineText(u: Draw, wide: number): string {
  const size = sizesOf(u, wide);
  const { low, top, bore, stroke, lambda } = size;
  const length = u(35 / wide, 350 * wide);
  const speeds = Array.from({ length: SPEEDS }, (_, i) => low + ((top - low) * i) / (SPEEDS - 1));
  return stringify({
    title: 'an engine drawn by chance',
    ambient: {
      pressure: `${u(850 / wide, Math.min(1030 * wide, 1090)).toFixed(0)} mbar`,
      temperature: `${u(-5 * wide, 38 * Math.min(wide, 1.7)).toFixed(1)} degC`,
    },
    engine: {
      ...{ cylinders: size.cylinders, bore: mm(bore), stroke: mm(stroke) },
      rod: mm(stroke * u(1.5, 2.1 * wide)),
      compressionRatio: u(8.5 / wide, 14 * Math.min(wide, 1.6)).toFixed(2),
      ...(size.cylinders > 1 && firing(u, size.cylinders)),
    },
    intake: drawnIntake(u, size, length),
    exhaust: drawnExhaust(u, size),
    fuel: {
      name: oneOf(u, ['petrol', 'petrol', 'iso-octane', 'ethanol', 'methanol', 'E85', 'toluene']),
      lambda: lambda.toFixed(3),
    },
    ...drawnFittings(u, size),
    speeds: { at: speeds.map((speed) => `${speed.toFixed(0)} rpm`) },
    sweep: { lengths: { at: [0.9 * length, length, 1.1 * length].map(mm) } },
    target: { from: `${low.toFixed(0)} rpm`, to: `${top.toFixed(0)} rpm` },
    numerics: { intakeCell: '20 mm', exhaustCell: '50 mm' },
  });
}

function sizesOf(u: Draw, wide: number): Sizes {
  const bore = u(50 / wide, 110 * wide);
  const stroke = bore * u(0.6 / wide, 1.15 * wide);
  const top = Math.min((u(15, 24 * wide) * 3e4) / stroke, 18_000 * Math.min(wide, 1.3));
  return {
    ...{ cylinders: whole(u, 1, 8), bore, stroke, top, wide },
    throttle: bore * u(0.42 / wide, Math.min(0.58 * wide, 0.9)),
    pipe: bore * u(0.36 / wide, Math.min(0.5 * wide, 0.9)),
    low: top * u(0.25 / wide, 0.4),
    lambda: u(0.82 / Math.min(wide, 1.25), 1.02 * Math.min(wide, 1.4)),
  };
}

/** In turn along the row; of four at steps that differ, no two nearer than a fifth of the even step. */
function firing(u: Draw, cylinders: number): object {
  const numbers = Array.from({ length: cylinders }, (_, i) => i + 1);
  if (chance(u, 0.7)) return { firing: { order: numbers.join('-') } };
  const step = 720 / cylinders;
  const off = (i: number) => (i > 0 ? u(-0.4, 0.4) * step : 0);
  return { firing: { angles: numbers.map((_, i) => deg(i * step + off(i))) } };
}

function drawnIntake(u: Draw, { bore, throttle, wide }: Sizes, length: number): object {
  const end = throttle * u(0.85, 1);
  const boosted = { pressure: `${u(0.1, 1.3).toFixed(2)} bar gauge`, temperature: '45 degC' };
  return {
    ...(chance(u, 0.1) && { feed: boosted }),
    trumpet: {
      length: mm(length),
      diameterAirEnd: mm(throttle * u(1, 1.2)),
      diameterValveEnd: mm(throttle * u(1, 1.05)),
      ...(chance(u, 0.9) && { bellmouth: { radius: mm(u(5, 16)) } }),
    },
    throttle: drawnThrottle(u, throttle),
    ...(chance(u, 0.4) && { runner: { length: mm(u(20, 150 * wide)), diameter: mm(throttle) } }),
    port: {
      length: mm(u(60 / wide, 160 * wide)),
      ...{ diameterAirEnd: mm(throttle), diameterValveEnd: mm(end) },
    },
    valves: valves(u, bore * 0.38, deg(u(2, 40), 'BTDC'), deg(u(30, 75), 'ABDC')),
  };
}

function drawnThrottle(u: Draw, bore: number): object {
  const kind = oneOf(u, ['butterfly', 'butterfly', 'slide', 'barrel']);
  return {
    ...{
      kind,
      bore: mm(bore),
      length: mm(Math.max(u(35, 80), kind === 'barrel' ? 1.6 * bore : 0)),
    },
    angle: deg(chance(u, 0.7) ? 90 : u(15, 90)),
    ...(chance(u, 0.2) && { bleed: { bore: mm(u(0.6, 4)) } }),
    ...(chance(u, 0.2) && kind === 'butterfly' && { rimGap: mm(u(0, 0.08)) }),
  };
}

/** Valves of one side; `share` is the head of one of two [mm]. */
export function valves(u: Draw, share: number, open: string, close: string): object {
  const count = whole(u, 1, 2);
  const head = share * (count === 1 ? 1.28 : 1) * u(0.93, 1.07);
  const lift = { open, close, checkLift: '1 mm', maximum: mm(head * u(0.24, 0.34)) };
  return { count, headDiameter: mm(head), lift };
}
