/** The main job on a runner that knows the answer: a curve worked out by hand, no gas. */
import { describe, expect, it } from 'vitest';
import { lengthStudy } from '../../sim/study/length/compute.ts';
import { readDemo, toyRunner } from '../toy.ts';

const { engine } = readDemo('hill-climb');
const SPEEDS = [4000, 5000, 6000, 7000];
const LENGTHS = [0.1, 0.14, 0.18, 0.22];
const own = { ...engine, intake: { ...engine.intake } };
own.intake.trumpet = { ...engine.intake.trumpet, length: 0.1 };

/** A hump that tunes at 1000 m rpm over the length: 6000 rpm for 167 mm. */
const hump = toyRunner(({ length, speed }) => 1 - ((length * speed) / 1000 - 1) ** 2);

const ask = (target: object) =>
  lengthStudy(
    { engine: own, lengths: LENGTHS, speeds: SPEEDS, target: { from: 5000, to: 7000, ...target } },
    hump,
  );

describe('length study', () => {
  it('finds the best between the lengths tried and confirms it', async () => {
    const study = await ask({});
    // d/dL of the mean of (n L / 1000 - 1)^2 by trapezia at 5, 6, 7 thousand, weights 1 2 1:
    // L = (5 + 12 + 7) / (25 + 72 + 49) = 24 / 146 = 164.4 mm; in steps of 2 mm, which the flat top bears.
    expect(study.recommended.length).toBe(0.164);
    expect(study.recommended.reason).toBe('confirmed-between');
    expect(study.weighed.map((one) => one.length)).toEqual([0.1, 0.14, 0.164, 0.18, 0.22]);
    expect(study.tried).toHaveLength(4);
    expect(study.decision.gainPercent).toBeGreaterThan(0);
  });

  it('keeps the dearest best and the baseline in the Pareto set', async () => {
    const study = await ask({});
    const lengths = study.pareto.map((one) => one.length);
    expect(lengths).toContain(0.164);
    expect(study.pareto.every((one) => one.gainPercent >= 0)).toBe(true);
  });

  it('stops at a floor', async () => {
    // At 7000 rpm the score of L is 1 - (7 L - 1)^2, at least 0.99 up to 7 L = 1.1, L = 157 mm.
    const study = await ask({ floors: [{ speed: 7000, least: 0.99 }] });
    expect(study.recommended.reason).toBe('held-by-floor');
    expect(study.recommended.length).toBeGreaterThan(0.14);
    expect(study.recommended.length).toBeLessThanOrEqual(0.157);
    expect(study.decision.meetsFloors).toBe(true);
  });

  it('says so where no length meets the floor, and names the nearest miss', async () => {
    const study = await ask({ floors: [{ speed: 4000, least: 1.2 }] });
    expect(study.recommended.reason).toBe('nearest-miss');
    expect(study.decision.meetsFloors).toBe(false);
    // At 4000 rpm 250 mm would be best; 220 mm misses least.
    expect(study.recommended.length).toBe(0.22);
    expect(study.decision.floors[0]!.marginPercent).toBeCloseTo(100 * ((1 - 0.0144) / 1.2 - 1), 6);
  });

  it("computes without fuel, and says what the injectors' fuel changes", async () => {
    const { injectors } = readDemo('endurance-six');
    // Fuel takes a tenth of what the length gives.
    const wetter = toyRunner(({ length, speed, engine: { injectors: wet } }) => {
      return 1 - ((length * speed) / 1000 - 1) ** 2 * (wet ? 0.9 : 1);
    });
    const target = { from: 5000, to: 7000 };
    const question = { engine: own, lengths: LENGTHS, speeds: SPEEDS, target };
    const plain = await lengthStudy(question, wetter);
    expect(plain.fuelled).toBeUndefined();
    const study = await lengthStudy({ ...question, injectors: injectors! }, wetter);
    expect(study.recommended.length).toBe(plain.recommended.length);
    expect(study.decision.gainPercent).toBe(plain.decision.gainPercent);
    const { wet, dry, sound } = study.fuelled!;
    expect(dry.gainPercent).toBeCloseTo(study.decision.gainPercent, 9);
    expect(wet.gainPercent).toBeLessThan(dry.gainPercent);
    expect(sound).toBe(true);
  });

  it('keeps the baseline where nothing beats it', async () => {
    const fitted = structuredClone(own);
    fitted.intake.trumpet.length = 0.164;
    const target = { from: 5000, to: 7000 };
    const study = await lengthStudy(
      { engine: fitted, lengths: LENGTHS, speeds: SPEEDS, target },
      hump,
    );
    expect(study.recommended.reason).toBe('keep-baseline');
    expect(study.decision.gainPercent).toBe(0);
  });

  it('scores by torque where asked', async () => {
    // The toy's torque is 100 times its efficiency.
    const study = await ask({ score: 'indicated-torque' });
    expect(study.recommended.length).toBe(0.164);
    expect(study.decision.bandMean).toBeGreaterThan(90);
  });
});
