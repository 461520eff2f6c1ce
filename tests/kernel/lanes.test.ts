/**
 * A step does the same as TypeScript and in lanes: every construct of its language on random numbers,
 * in f64 to the last bit, in f32 to a part in 2 x 10^5 of the largest number in play.
 */
import { readFileSync } from 'node:fs';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Kernel, type Lanes, load } from '../../sim/kernel/load.ts';
import { type Memory, use } from '../../sim/step/lanes.ts';
import { build, stepModules } from './build.ts';
import { choices, counts } from './sample.ts';

const PLACES = 128;
const SAMPLE = 'tests/kernel/sample.ts';
const modules = new Map<Lanes, WebAssembly.Module>();

beforeAll(async () => {
  const sources = [
    { file: SAMPLE, text: readFileSync(SAMPLE, 'utf8') },
    ...stepModules().filter(({ file }) => /powers/.test(file)),
  ];
  for (const lanes of ['f64x2', 'f32x4'] as const)
    modules.set(lanes, new WebAssembly.Module((await build(sources, lanes)) as BufferSource));
});

/** Numbers from -8 to 8 that f32 can hold, whole ones and equal ones among them. */
function numbers(seed: number, count: number): number[] {
  const random = xoroshiro128plus(seed);
  return Array.from({ length: count }, () => {
    const bits = uniformInt(random, -8192, 8192);
    return bits & 1 ? bits / 1024 : Math.trunc(bits / 1024);
  });
}

/** What TypeScript makes of one lane. */
function plain(k: readonly number[], x: readonly number[], rows: number) {
  const memory: Memory = {
    N: new Int32Array(PLACES),
    K: new Float64Array(2 * PLACES),
    X: new Float64Array(PLACES),
  };
  memory.K.set(k);
  memory.X.set(x);
  use(memory);
  choices();
  return { ...memory, total: counts(rows) };
}

/** What the kernel makes of several lanes. */
function inLanes(lanes: Lanes, k: readonly number[], xs: readonly number[][], rows: number) {
  const kernel = load(modules.get(lanes)!, lanes, PLACES);
  kernel.K.set(k);
  for (let lane = 0; lane < kernel.lanes; lane++) setLane(kernel, lane, xs[lane]!);
  kernel.call.choices!();
  const total = kernel.call.counts!(rows);
  return { kernel, total };
}

function setLane({ X, lanes }: Kernel, lane: number, x: readonly number[]): void {
  for (const [place, value] of x.entries()) X[lanes * place + lane] = value;
}

const laneOf = ({ X, lanes }: Kernel, lane: number) =>
  Array.from({ length: PLACES }, (_, place) => X[lanes * place + lane]!);

const SEEDS = Array.from({ length: 200 }, (_, seed) => seed);

describe('a step in lanes', () => {
  it('repeats TypeScript to the last bit in f64', () => {
    for (const seed of SEEDS) {
      const k = numbers(3 * seed, PLACES);
      const xs = [numbers(3 * seed + 1, 60), numbers(3 * seed + 2, 60)];
      const rows = 4 + (seed % 12);
      const { kernel, total } = inLanes('f64x2', k, xs, rows);
      for (const [lane, x] of xs.entries()) {
        const one = plain(k, x, rows);
        expect(laneOf(kernel, lane)).toEqual([...one.X]);
        expect([...kernel.K.subarray(0, 2 * PLACES)]).toEqual([...one.K]);
        expect([...kernel.N.subarray(0, 64)]).toEqual([...one.N.subarray(0, 64)]);
        expect(total).toBe(one.total);
      }
    }
  });

  it('repeats TypeScript in f32 as far as its digits go', () => {
    for (const seed of SEEDS) {
      const k = numbers(5 * seed, PLACES);
      const xs = [1, 2, 3, 4].map((lane) => numbers(5 * seed + lane, 60));
      const { kernel } = inLanes('f32x4', k, xs, 9);
      for (const [lane, x] of xs.entries()) {
        const one = plain(k, x, 9);
        const ours = laneOf(kernel, lane);
        for (const [place, value] of one.X.entries())
          if (!Object.is(ours[place], value))
            expect(Math.abs(ours[place]! - value)).toBeLessThan(
              5e-6 * Math.max(8, Math.abs(value)),
            );
      }
    }
  });

  it('has powers in f32 as right as powers.ts says', () => {
    const kernel = load(modules.get('f32x4')!, 'f32x4', PLACES);
    for (const seed of SEEDS) {
      const [u, v] = numbers(seed, 2) as [number, number];
      const x = Math.fround(2 ** u * (1 + Math.abs(v) / 9));
      setLane(kernel, seed % 4, [x, v * 15]);
      kernel.call.powers!();
      const [log, power] = laneOf(kernel, seed % 4).slice(72, 74) as [number, number];
      expect(Math.abs(log - Math.log2(x))).toBeLessThan(2e-7 + 2e-7 * Math.abs(Math.log2(x)));
      expect(Math.abs(power / 2 ** (v * 15) - 1)).toBeLessThan(3e-7);
    }
  });

  it('does not let one lane know of another', () => {
    const k = numbers(1, PLACES);
    const x = numbers(2, 60);
    for (const lanes of ['f64x2', 'f32x4'] as const) {
      const quiet = inLanes(lanes, k, Array(4).fill(x), 9);
      for (let lane = 0; lane < quiet.kernel.lanes; lane++) {
        const others = x.map((_, i) => [Number.NaN, Infinity, -1e30, 3][i % 4]!);
        const xs = Array.from({ length: quiet.kernel.lanes }, (_, i) => (i === lane ? x : others));
        const own = laneOf(inLanes(lanes, k, xs, 9).kernel, lane);
        expect(own).toEqual(laneOf(quiet.kernel, lane));
      }
    }
  });

  it.each([
    { signs: [1, 1, 1, 1], any: -1, all: 0 },
    { signs: [1, -1, 1, 1], any: 1, all: 0 },
    { signs: [-1, 1, -1, -1], any: 1, all: 0 },
    { signs: [-1, -1, -1, -1], any: 1, all: 2 },
  ])('joins lanes by any and all: $signs', ({ signs, any, all }) => {
    for (const lanes of ['f64x2', 'f32x4'] as const) {
      const kernel = load(modules.get(lanes)!, lanes, PLACES);
      for (let lane = 0; lane < kernel.lanes; lane++) setLane(kernel, lane, [signs[lane]!]);
      kernel.call.joined!();
      for (let lane = 0; lane < kernel.lanes; lane++)
        expect(laneOf(kernel, lane).slice(70, 72)).toEqual([any, all]);
    }
  });
});
