/** Two lengths spread over the cylinders: arithmetic by hand, and against all cylinders solved. */
import { describe, expect, it } from 'vitest';
import { flattestPair, mixedLengths } from '../../sim/decision/mixedLengths.ts';
import { Run } from '../../sim/engine/cycle.ts';
import { engineModel } from '../../sim/engine/plan.ts';
import { runPoint } from '../../sim/engine/point.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { withLength } from '../../sim/sweep/sweep.ts';
import { readDemo } from '../toy.ts';

const SPEEDS = [4000, 5000, 6000];
const curve = (length: number, values: number[]) => ({ length, values });
const short = curve(0.1, [0.7, 0.9, 1.1]);
const middle = curve(0.15, [0.8, 1.1, 0.8]);
const long = curve(0.2, [1.1, 0.9, 0.7]);
const target = { from: 4000, to: 6000 };

describe('two lengths', () => {
  it('share the cylinders evenly', () => {
    const pairs = mixedLengths([short, long], middle.values, SPEEDS, target, 4);
    expect(pairs).toHaveLength(1);
    expect(pairs[0]).toMatchObject({ short: 0.1, shortCount: 2, long: 0.2, longCount: 2 });
    pairs[0]!.curve.forEach((value) => {
      expect(value).toBeCloseTo(0.9, 12);
    });
    // At 4000 rpm 0.7 and 1.1: 0.4 of a mean of 0.9.
    expect(pairs[0]!.unlikePercent).toBeCloseTo(100 * (0.4 / 0.9), 9);
  });

  it('share odd numbers both ways', () => {
    const pairs = mixedLengths([short, long], middle.values, SPEEDS, target, 3);
    expect(pairs.map((pair) => [pair.shortCount, pair.longCount])).toEqual([
      [1, 2],
      [2, 1],
    ]);
    expect(pairs[0]!.curve[0]).toBeCloseTo((0.7 + 2 * 1.1) / 3, 12);
  });

  it('are flattest where the least in the band is greatest', () => {
    const pairs = mixedLengths([short, middle, long], middle.values, SPEEDS, target, 4);
    // short + long: 0.9 flat; short + middle: least 0.75; middle + long: least 0.75.
    expect(flattestPair(pairs)).toMatchObject({ short: 0.1, long: 0.2 });
    expect(flattestPair(pairs)!.least).toBeCloseTo(0.9, 12);
  });

  it('need two cylinders', () => {
    expect(mixedLengths([short, long], middle.values, SPEEDS, target, 1)).toEqual([]);
    expect(flattestPair([])).toBeUndefined();
  });
});

describe('all cylinders solved together', () => {
  /** Fresh charge of each cylinder over the ambient swept mass, after the same number of cycles. */
  function together(engine: EngineSpecification, lengths: number[], speed: number): number[] {
    const spec = { ...engine, intake: { ...engine.intake, trumpetLengths: lengths } };
    const run = new Run(engineModel(spec, 'all'), speed);
    run.start(false);
    for (let cycle = 0; cycle < 7; cycle++) run.cycle();
    return run.cycle().map((line) => line.trapped.air);
  }

  it('breathe as each would with its own length on all of them, within 0.4 %', () => {
    const { engine } = readDemo('hill-climb');
    const coarse = {
      ...engine,
      numerics: { ...engine.numerics, intakeCell: 0.02, exhaustCell: 0.05 },
    };
    const lengths = [0.12, 0.2, 0.12, 0.2];
    for (const speed of [5000, 7000]) {
      const own = lengths.map(
        (length) => runPoint(withLength(coarse, length), speed).volumetricEfficiency,
      );
      const all = together(coarse, lengths, speed);
      const mean = (values: number[]) => values.reduce((a, b) => a + b) / values.length;
      // Air over air: the ratio of long to short, and the mean against that of one length on all.
      const alike = together(coarse, [0.12, 0.12, 0.12, 0.12], speed);
      const ratio = mean(all) / mean(alike);
      const expected = mean(own) / own[0]!;
      expect(Math.abs(ratio / expected - 1)).toBeLessThan(0.004); // 0.2 % at 5000 rpm
    }
  });
});
