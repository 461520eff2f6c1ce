/** Unknowns recovered from runs whose truth is known, and refused where it cannot be. */

import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { type Calibration, calibrate, isRefusal } from '../../sim/decision/calibration.ts';
import { frictionCurve } from '../../sim/decision/comparison.ts';
import type { Unknown } from '../../sim/decision/priorFit.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { engineWith, scenarioUnknowns, type UnknownName } from '../../sim/scenario/unknowns.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { runHere } from '../../sim/sweep/runner.ts';
import { sweep } from '../../sim/sweep/sweep.ts';
import { slow } from '../slow.ts';
import { demoText, readDemo, toyRunner } from '../toy.ts';

/** Normal numbers of a fixed seed (Box & Muller 1958). */
function normals(count: number, seed: number): number[] {
  const source = xoroshiro128plus(seed);
  const even = () => 1 - uniformFloat64(source);
  return Array.from(
    { length: count },
    () => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even()),
  );
}

describe('a stand-in of a formula', () => {
  const { engine } = readDemo('hill-climb');
  const speeds = Array.from({ length: 15 }, (_, i) => 3000 + 400 * i);

  /** Two numbers hidden in the engine: where the peak is, and how late it falls. */
  const hidden = (values: readonly number[]): EngineSpecification => ({
    ...engine,
    ambient: {
      pressure: values[0]!,
      temperature: values[1] ?? 0,
      relativeHumidity: values[2] ?? 0,
    },
  });
  const shape = (speed: number, [a, b, c]: readonly number[]) =>
    0.9 +
    0.1 * Math.exp(-(((speed - 6000 - 300 * a!) / 900) ** 2)) +
    0.05 * Math.exp(-(((speed - 4200 - 300 * b!) / 500) ** 2)) -
    0.04 * c! * ((speed - 6000) / 3000) ** 2;
  const runner = toyRunner(({ speed, engine: { ambient } }) =>
    shape(speed, [ambient.pressure, ambient.temperature, ambient.relativeHumidity]),
  );
  const unknown = (name: string): Unknown => ({
    name,
    start: 0,
    deviation: 1,
    low: -10,
    high: 10,
  });

  const ask = (
    unknowns: readonly Unknown[],
    values: readonly number[],
    engineAt: (values: readonly number[]) => EngineSpecification = hidden,
    noise = 0.005,
  ) =>
    calibrate(
      {
        measured: { figure: 'volumetric-efficiency', speeds, values },
        friction: speeds.map(() => 0),
        unknowns,
        engineAt,
        noise,
      },
      runner,
    );

  it('gives back what made the run, without noise to the bias of the priors', async () => {
    const truth = [0.8, -0.5];
    const run = speeds.map((speed) => 0.97 * shape(speed, [...truth, 0]));
    const found = (await ask([unknown('peak'), unknown('hump')], run, hidden, 1e-4)) as Calibration;
    expect(found.unknowns[0]!.value).toBeCloseTo(0.8, 3);
    expect(found.unknowns[1]!.value).toBeCloseTo(-0.5, 3);
    expect(found.scale).toBeCloseTo(0.97, 4);
    expect(found.comparison.correlation).toBeGreaterThan(0.99999);
    // Two terms of the design more than the parabola of one unknown: 6 points a round, then one.
    expect(found.points % speeds.length).toBe(0);
  });

  slow('states intervals that hold the truth about as often as they say', async () => {
    let held = 0;
    const runs = 60;
    for (let seed = 0; seed < runs; seed++) {
      // Truth drawn from the priors, so that 95 % is exact for a linear model.
      const draw = normals(2 + speeds.length, 100 + seed);
      const truth = [0.7 * draw[0]!, 0.7 * draw[1]!];
      const run = speeds.map((v, j) => shape(v, [...truth, 0]) + 0.005 * draw[2 + j]!);
      const found = await ask([unknown('peak'), unknown('hump')], run);
      expect(isRefusal(found)).toBe(false);
      const inside = (found as Calibration).unknowns.map(
        ({ interval: [low, high] }, k) => truth[k]! >= low && truth[k]! <= high,
      );
      held += inside.filter(Boolean).length;
    }
    // 120 intervals at 95 %: 114 +- 2.4; the lower bound is three deviations down.
    expect(held).toBeGreaterThanOrEqual(106);
  });

  it('refuses two names for one thing', async () => {
    const run = speeds.map((speed) => shape(speed, [0.5, 0, 0]));
    const both = ([a, b]: readonly number[]) => hidden([a! + b!, 0, 0]);
    const found = await ask([unknown('body length'), unknown('trumpet length')], run, both);
    expect(found).toMatchObject({ refused: expect.stringContaining('cannot tell') });
    expect(found).toMatchObject({
      refused: expect.stringMatching(/body length and trumpet length/),
    });
  });

  it('refuses two nearly alike, which priors alone would hold apart', async () => {
    const run = speeds.map((speed) => shape(speed, [0.5, 0, 0]));
    const both = ([a, b]: readonly number[]) => hidden([a! + b!, 0.05 * b!, 0]);
    const found = await ask([unknown('one'), unknown('other')], run, both);
    expect(found).toMatchObject({
      refused: expect.stringMatching(/correlation 0\.9\d+, limit 0.95/),
    });
  });

  it('refuses what the run does not feel, or hardly', async () => {
    const run = speeds.map((speed) => shape(speed, [0.5, 0, 0]));
    const none = ([a]: readonly number[]) => hidden([a!, 0, 0]);
    const found = await ask([unknown('felt'), unknown('unfelt')], run, none);
    expect(found).toMatchObject({ refused: expect.stringContaining('too little about unfelt') });
    const faint = ([a]: readonly number[]) => hidden([0.01 * a!, 0, 0]);
    const second = await ask([unknown('faint')], run, faint);
    expect(second).toMatchObject({ refused: expect.stringContaining('too little about faint') });
  });

  it('refuses too many unknowns and too few speeds', async () => {
    const four = ['a', 'b', 'c', 'd'].map(unknown);
    const run = speeds.map(() => 1);
    expect(await ask(four, run)).toMatchObject({ refused: expect.stringContaining('one to 3') });
    const few = await calibrate(
      {
        measured: { figure: 'brake-torque', speeds: [3000, 4000, 5000], values: [1, 2, 3] },
        friction: [0, 0, 0],
        unknowns: [unknown('a')],
        engineAt: hidden,
        noise: 0.01,
      },
      runner,
    );
    expect(few).toMatchObject({ refused: expect.stringContaining('need at least 6'), points: 0 });
  });

  it('says when the model does not explain the run, and widens its intervals', async () => {
    const run = speeds.map((v, j) => shape(v, [0.3, 0, 0]) + (j % 2 ? 0.03 : -0.03));
    const rough = (await ask([unknown('peak')], run)) as Calibration;
    const smooth = (await ask(
      [unknown('peak')],
      speeds.map((v) => shape(v, [0.3, 0, 0])),
    )) as Calibration;
    expect(rough.misfit).toBeGreaterThan(10);
    expect(rough.unknowns[0]!.sigma).toBeGreaterThan(3 * smooth.unknowns[0]!.sigma);
  });
});

describe('the computation itself', () => {
  /** A four on a coarse mesh, quick enough to be fitted in a test. */
  const text = demoText('hill-climb')
    .replace('step: 400 rpm', 'step: 500 rpm')
    .replace('from: 3000 rpm', 'from: 3600 rpm')
    .concat('\nnumerics:\n  intakeCell: 25 mm\n  exhaustCell: 60 mm\n');
  const NAME = 'hill-climb.yaml';
  const { speeds, engine } = readScenario(text, NAME);
  const { bore, stroke, count } = engine.cylinder;
  const swept = (count * Math.PI * bore ** 2 * stroke) / 4;

  /** Brake torque of an engine that differs from the file, with noise of 1 %. */
  async function run(names: UnknownName[], truth: number[], scale: number, share: number) {
    const unknowns = scenarioUnknowns(text, NAME, names);
    const [outcomes] = await sweep([engineWith(text, NAME, unknowns, truth)], speeds, runHere);
    const friction = frictionCurve({ figure: 'brake-torque', speeds }, swept);
    const clean = outcomes!.map((outcome, j) =>
      'failure' in outcome ? Number.NaN : scale * outcome.indicatedTorque - share * friction[j]!,
    );
    const size = clean.reduce((sum, y) => sum + y, 0) / clean.length;
    const noise = normals(clean.length, 7);
    const values = clean.map((y, j) => y + 0.01 * size * noise[j]!);
    return calibrate(
      {
        measured: { figure: 'brake-torque', speeds, values },
        friction,
        unknowns,
        engineAt: (at) => engineWith(text, NAME, unknowns, at),
        noise: 0.01,
      },
      runHere,
    );
  }

  slow(
    'recovers cam phase and flow scale from noisy brake torque',
    {
      timeout: 300_000,
    },
    async () => {
      const found = await run(['intake-cam-phase', 'intake-flow-scale'], [4, 0.95], 0.93, 1.1);
      expect(found).not.toHaveProperty('refused');
      const { unknowns, misfit } = found as Calibration;
      const [phase, flow] = unknowns;
      expect(phase!.interval[0]).toBeLessThan(4);
      expect(phase!.interval[1]).toBeGreaterThan(4);
      // Nearer the truth than the prior is, by far.
      expect(Math.abs(phase!.value - 4)).toBeLessThan(1.5);
      expect(Math.abs(flow!.value - 0.95)).toBeLessThan(0.03);
      expect(flow!.interval[0]).toBeLessThan(0.95);
      expect(flow!.interval[1]).toBeGreaterThan(0.95);
      expect(misfit).toBeLessThan(2.5);
    },
  );
});
