/** Samples between the speeds: engines whose ripple is known exactly, drawn within a spread. */
import { describe, expect, test } from 'vitest';
import type { InputSample } from '../../sim/decision/uncertainty.ts';
import { uncertaintyStudy } from '../../sim/study/doubt/compute.ts';
import { doubtDocument } from '../../sim/study/doubt/tables.ts';
import { uncertaintySentences } from '../../sim/study/doubt/tell.ts';
import { lengthStudy } from '../../sim/study/length/compute.ts';
import { withLength } from '../../sim/sweep/sweep.ts';
import { readDemo, rippling, toyRunner } from '../toy.ts';

const { engine, speeds } = readDemo('hill-climb');
const target = { from: 3500, to: 4700, floors: [{ speed: 3210, least: 1 }] };
const runner = toyRunner(rippling);

/** Warmer or colder air moves every ripple. */
const samples: InputSample[] = Array.from({ length: 40 }, (_, i) => {
  const at = (2 * (i + 0.5)) / 40 - 1;
  const feed = { ...engine.intake.feed, temperature: 293 + 8 * at };
  return { at: [at], engine: { ...engine, intake: { ...engine.intake, feed } } };
});

const valueAt = (sample: InputSample, length: number, speed: number) =>
  rippling({ engine: withLength(sample.engine, length), length, speed });

function exactGain(sample: InputSample, recommended: number): number {
  const dense = Array.from({ length: 12_001 }, (_, i) => target.from + i / 10);
  const mean = (length: number) =>
    dense.reduce((sum, speed) => sum + valueAt(sample, length, speed), 0);
  return 100 * (mean(recommended) / mean(0.09) - 1);
}

describe('samples of rippling curves', async () => {
  const asked = { engine, lengths: [0.1, 0.14, 0.18, 0.22, 0.26], speeds, target, refine: true };
  const { recommended, sampling } = await lengthStudy(asked, runner);
  const there = samples.map((sample) => valueAt(sample, recommended.length, 3210));
  const least = 0.7 * Math.min(...there) + 0.3 * Math.max(...there);
  const mostlyHeld = { ...target, floors: [{ speed: 3210, least }] };
  const question = {
    ...{ inputs: ['intake.feed.temperature'], samples, target: mostlyHeld, rivals: [0.18] },
    ...{ recommended: recommended.length, baseline: 0.09 },
  };
  const resolved = { ...question, speeds: sampling!.speeds, sampling: sampling! };
  const study = await uncertaintyStudy(resolved, runner);
  const coarse = await uncertaintyStudy({ ...question, speeds }, runner);
  const gains = samples.map((sample) => exactGain(sample, recommended.length));
  const mean = gains.reduce((sum, gain) => sum + gain, 0) / gains.length;

  test('have their gain to 0.1 points, which the speeds of the file do not', () => {
    expect(Math.abs(study.gainPercent.mean.value - mean)).toBeLessThan(0.1);
    const [least, most] = [Math.min(...gains), Math.max(...gains)];
    expect(study.gainPercent.p5.value).toBeGreaterThan(least - 0.1);
    expect(study.gainPercent.p95.value).toBeLessThan(most + 0.1);
    expect(Math.abs(coarse.gainPercent.mean.value - mean)).toBeGreaterThan(0.5);
  });

  test('hold the floor as often as their exact curves', () => {
    const held = there.filter((value) => value >= least).length;
    expect(held).toBeGreaterThan(0);
    expect(held).toBeLessThan(samples.length);
    expect(Math.abs(40 * study.floors[0]!.held.value - held)).toBeLessThanOrEqual(1);
  });

  test('are computed in the bands at the speeds of the answer, elsewhere at those of the file', () => {
    const far = study.speeds.filter((speed) => speed > target.to + 400);
    expect(far).toEqual(speeds.filter((speed) => speed > target.to + 400));
    const near = study.speeds.filter((speed) => speed >= target.from && speed <= target.to);
    expect(near.length).toBeGreaterThan(2 * speeds.filter((s) => s >= 3500 && s <= 4700).length);
    expect(study.recommended.curve).toHaveLength(study.speeds.length);
  });

  test('say how well they are known, and say nothing where nothing was resolved', () => {
    const text = uncertaintySentences({ study, inputs: [], seed: 1 }).join('\n');
    expect(text).toMatch(/^(Resolved|Not wholly resolved): samples are computed at \d+ speeds/m);
    expect(text).toMatch(/The floor at 3210 rpm holds in \d+ of 40 samples \(\d+ % at least\)/);
    expect(coarse).not.toHaveProperty('moved');
    expect(uncertaintySentences({ study: coarse, inputs: [], seed: 1 }).join('\n')).not.toMatch(
      /esolved/,
    );
    const document = doubtDocument({
      study,
      inputs: [
        { path: 'intake.feed.temperature', value: 293, half: 8, text: '', given: true, why: '' },
      ],
      seed: 1,
    });
    expect(document.speeds_rpm).toEqual(study.speeds);
    expect(document.last_halving_moved!.gain_points).toBeCloseTo(study.moved!.gain, 9);
    expect(document.floors![0]!.speed_rpm).toBe(3210);
  });

  test('of a coarser computation owns up to what the last halving moved', async () => {
    const every = sampling!.speeds.filter((_, j) => j % 3 === 0);
    const thin = {
      speeds: every,
      read: sampling!.read,
      before: every.filter((_, j) => j % 2 === 0),
    };
    const rough = await uncertaintyStudy(
      { ...question, rivals: [], speeds: every, sampling: thin },
      runner,
    );
    expect(rough.moved!.gain).toBeGreaterThan(0.2);
    const text = uncertaintySentences({ study: rough, inputs: [], seed: 1 }).join('\n');
    expect(text).toMatch(/^Not wholly resolved/m);
  });
});
