/** Spreads carried through: stand-ins whose distribution is known exactly, and the sample itself. */
import { describe, expect, it } from 'vitest';
import { latinHypercube } from '../../sim/decision/latinHypercube.ts';
import { meanOf, quantile, shareOf } from '../../sim/decision/sampleFigures.ts';
import { bandSpeeds, type InputSample } from '../../sim/decision/uncertainty.ts';
import { uncertaintyStudy } from '../../sim/study/doubt/compute.ts';
import { uncertaintySentences } from '../../sim/study/doubt/tell.ts';
import { readDemo, type ToyInput, toyRunner } from '../toy.ts';

const { engine } = readDemo('hill-climb');
const SPEEDS = [5000, 6000, 7000];
const target = { from: 5000, to: 7000 };

/** Three inputs hidden in an engine, each from -1 to 1. */
function samplesOf(n: number, seed = 1): InputSample[] {
  return latinHypercube(3, n, seed).map((row) => {
    const at = row.map((place) => 2 * place - 1);
    const [temperature, humidity, bore] = at as [number, number, number];
    const ambient = { pressure: 1e5, temperature: 300 + temperature, relativeHumidity: humidity };
    const cylinder = { ...engine.cylinder, bore: 0.086 + 0.001 * bore };
    return { at, engine: { ...engine, ambient, cylinder } };
  });
}

/** Baseline 0.8 throughout; the recommended length gains by a formula of the inputs [%]. */
function ask(gain: (at: readonly number[]) => number, samples: InputSample[]) {
  const at = (input: ToyInput) => [
    input.engine.ambient.temperature - 300,
    input.engine.ambient.relativeHumidity,
    (input.engine.cylinder.bore - 0.086) / 0.001,
  ];
  const runner = toyRunner((input) =>
    input.length === 0.2 ? 0.8 * (1 + gain(at(input)) / 100) : 0.8,
  );
  return uncertaintyStudy(
    {
      inputs: ['temperature', 'humidity', 'bore'],
      samples,
      recommended: 0.2,
      baseline: 0.1,
      speeds: SPEEDS,
      target,
    },
    runner,
  );
}

describe('Latin hypercube', () => {
  it('uses every stratum of every input once', () => {
    const sample = latinHypercube(4, 50, 7);
    for (let k = 0; k < 4; k++) {
      const strata = sample.map((row) => Math.floor(row[k]! * 50)).sort((a, b) => a - b);
      expect(strata).toEqual(Array.from({ length: 50 }, (_, i) => i));
    }
  });

  it('is the same for the same seed and another for another', () => {
    expect(latinHypercube(3, 20, 5)).toEqual(latinHypercube(3, 20, 5));
    expect(latinHypercube(3, 20, 5)).not.toEqual(latinHypercube(3, 20, 6));
  });

  it('leaves inputs unrelated', () => {
    const sample = latinHypercube(2, 400, 3);
    const product = meanOf(sample.map(([a, b]) => (a! - 0.5) * (b! - 0.5))).value;
    expect(Math.abs(12 * product)).toBeLessThan(0.15); // three standard errors of 1 / sqrt(400)
  });
});

describe('figures of a sample', () => {
  it('run straight between order statistics', () => {
    // 1 + 0.05 x 3 = 1.15 and 1 + 0.95 x 3 = 3.85 of 1 to 4.
    expect(quantile([4, 2, 3, 1], 0.05).value).toBeCloseTo(1.15, 12);
    expect(quantile([4, 2, 3, 1], 0.95).value).toBeCloseTo(3.85, 12);
  });

  it('state an interval of order statistics', () => {
    // n p = 50, 1.96 sqrt(47.5) = 13.5: ranks 36 and 65 of 1000.
    const sample = Array.from({ length: 1000 }, (_, i) => i + 1);
    expect(quantile(sample, 0.05)).toMatchObject({ low: 36, high: 65 });
  });

  it('state Wilson 1927 for a share', () => {
    // 64 of 64: (1 + z^2 / 128) / (1 + z^2 / 64) -+ the same half-width: 1 / (1 + z^2 / 64).
    expect(shareOf(64, 64).low).toBeCloseTo(1 / (1 + 3.841459 / 64), 6);
    expect(shareOf(64, 64).high).toBe(1);
    expect(shareOf(0, 64).low).toBe(0);
  });
});

describe('a stand-in known exactly', () => {
  it('one input: even, so mean and 5 and 95 % points are exact', async () => {
    // Gain 1 + 2 u, u even from -1 to 1: mean 1, 5 % at -0.8, 95 % at 2.8, above 0 for u > -1/2.
    const study = await ask(([u]) => 1 + 2 * u!, samplesOf(1000));
    expect(study.gainPercent.mean.value).toBeCloseTo(1, 3);
    expect(Math.abs(study.gainPercent.p5.value + 0.8)).toBeLessThan(0.005);
    expect(Math.abs(study.gainPercent.p95.value - 2.8)).toBeLessThan(0.005);
    expect(study.better.value).toBeCloseTo(0.75, 2);
    expect(study.effects[0]).toMatchObject({ input: 'temperature' });
    expect(study.effects[0]!.effect).toBeCloseTo(2, 6);
    expect(study.explained).toBeCloseTo(1, 9);
  });

  it('two inputs: a triangle, its points within the stated error', async () => {
    // u + v from -2 to 2: (2 + x)^2 / 8 = 0.05 at x = -2 + sqrt(0.4).
    const point = 2 - Math.sqrt(0.4);
    for (const n of [64, 4000]) {
      const { gainPercent } = await ask(([u, v]) => u! + v!, samplesOf(n));
      expect(gainPercent.p5.low).toBeLessThanOrEqual(-point);
      expect(gainPercent.p5.high).toBeGreaterThanOrEqual(-point);
      expect(gainPercent.p95.low).toBeLessThanOrEqual(point);
      expect(gainPercent.p95.high).toBeGreaterThanOrEqual(point);
      // A Latin hypercube is exact for the mean of a sum to well below the stated error.
      expect(Math.abs(gainPercent.mean.value)).toBeLessThan(0.01);
      if (n === 4000) expect(Math.abs(gainPercent.p95.value - point)).toBeLessThan(0.03);
    }
  });

  it('shares of variance: 9 to 1 for slopes 3 and 1, nothing for the third', async () => {
    const study = await ask(([u, v]) => 3 * u! + v!, samplesOf(200));
    expect(study.effects.map((one) => one.input)).toEqual(['temperature', 'humidity', 'bore']);
    expect(study.effects[0]!.share).toBeCloseTo(0.9, 1);
    expect(study.effects[1]!.share).toBeCloseTo(0.1, 1);
    expect(study.effects[2]!.share).toBeLessThan(1e-9);
  });

  it('says when the plane explains little', async () => {
    const study = await ask(([u]) => u! ** 2, samplesOf(200));
    expect(study.explained).toBeLessThan(0.1);
    // Even u: u^2 has the mean 1/3.
    expect(study.gainPercent.mean.value).toBeCloseTo(1 / 3, 2);
  });

  it('bands the curve of each length', async () => {
    const { baseline, recommended } = await ask(([u]) => u!, samplesOf(500));
    expect(baseline.curve[0]!.p5.value).toBeCloseTo(0.8, 12);
    expect(recommended.curve[1]!.p95.value).toBeCloseTo(0.8 * 1.009, 4);
    expect(recommended.bandMean.p50.value).toBeCloseTo(0.8, 4);
  });
});

describe('the length itself', () => {
  const samples = samplesOf(400);
  const asked = { inputs: ['temperature', 'humidity', 'bore'], speeds: SPEEDS, target };
  const doubtOf = async (gain: number) => {
    const study = await uncertaintyStudy(
      { ...asked, samples, recommended: 0.2, baseline: 0.1, rivals: [0.3] },
      toyRunner(({ length, engine: { ambient } }) => {
        if (length === 0.3) return 0.8 * 1.005;
        return length === 0.2 ? 0.8 * (1 + (gain + ambient.temperature - 300) / 100) : 0.8;
      }),
    );
    return { study, inputs: [], seed: 1 };
  };

  it('wins as often as its gain is above that of its rival', async () => {
    // Gain u, even from -1 to 1, against 0.5: a quarter; the baseline at 0 never.
    const { study } = await doubtOf(0);
    expect(study.wins!.map(({ length }) => length)).toEqual([0.3, 0.2, 0.1]);
    expect(study.wins!.map(({ share }) => share.value)).toEqual([0.75, 0.25, 0]);
    const text = uncertaintySentences({ study, inputs: [], seed: 1 }).join(' ');
    expect(text).toContain('300 mm wins in 75 % of 400 samples (71 % at least), 200 mm in 25 %');
    expect(text).toContain('; 100 mm in none.');
  });

  it('is never sure of a finite sample, and says when there are more than were asked for', async () => {
    const sure = { ...(await doubtOf(2)), asked: 64 };
    const text = uncertaintySentences(sure).join(' ');
    expect(text).toContain('beats 100 mm in the band in all of the 400 samples (99 % at least)');
    expect(text).not.toContain('100 %');
    expect(text).toContain('64 samples were asked for; 0 inputs in doubt want 400.');
  });

  it('needs of rivals no more than the speeds that the bands rest on', () => {
    const speeds = [3000, 4000, 5000, 6000, 7000, 8000];
    expect(bandSpeeds(speeds, { from: 5200, to: 5800 })).toEqual([5000, 6000]);
    expect(bandSpeeds(speeds, { from: 5000, to: 7000 })).toEqual([5000, 6000, 7000]);
  });
});

it('leaves out samples with a failed point and counts them', async () => {
  const samples = samplesOf(40);
  const fine = toyRunner(() => 0.8);
  const study = await uncertaintyStudy(
    {
      inputs: ['temperature', 'humidity', 'bore'],
      samples,
      recommended: 0.2,
      baseline: 0.1,
      speeds: SPEEDS,
      target,
    },
    {
      run: async (job) =>
        job.engine === samples[3]!.engine || job.engine.ambient === samples[3]!.engine.ambient
          ? { speed: job.speed, failure: 'lost' }
          : fine.run(job),
    },
  );
  expect(study).toMatchObject({ samples: 39, failed: 1 });
});
