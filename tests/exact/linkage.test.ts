/** From the foot to the plates: energy, friction, and parts taken off, against what holds exactly. */
import { describe, expect, it } from 'vitest';
import { closings } from '../../sim/linkage/closing.ts';
import { bendingStress, borneStress, type Coil, shearStress } from '../../sim/linkage/coil.ts';
import { effortAt, effortCurve, footTravel } from '../../sim/linkage/effort.ts';
import type { Linkage, Shaft, Spring } from '../../sim/linkage/linkage.ts';
import { armAt, pullAt } from '../../sim/linkage/torque.ts';

const spring = (rest: Partial<Spring> = {}): Spring => ({
  name: 'a',
  kind: 'tension',
  count: 1,
  rate: 800,
  preload: 10,
  lever: { radius: 0.025, squareAt: 0.7 },
  ...rest,
});
const torsion = (rest: Partial<Spring> = {}): Spring => {
  const { lever: _, ...one } = spring({ kind: 'torsion', rate: 0.2, preload: 0.15 });
  return { ...one, ...rest };
};
const shaft = (name: string, rest: Partial<Shaft> = {}): Shaft => ({
  name,
  plates: 1,
  friction: 0.03,
  springs: [torsion()],
  ...rest,
});

const LINKAGE: Linkage = {
  pedal: { length: 0.2, arm: 0.1, friction: 3, springs: [spring({ rate: 300 })] },
  cable: { bends: Math.PI, friction: 0.15, lever: { radius: 0.03, squareAt: 0.6 } },
  shafts: [
    shaft('one', { springs: [spring({ count: 2 }), torsion()] }),
    shaft('two', { drivenBy: 0 }),
    shaft('three', { drivenBy: 1 }),
  ],
  opening: 1.4,
};

const smooth: Linkage = {
  ...LINKAGE,
  pedal: { ...LINKAGE.pedal, friction: 0 },
  cable: { ...LINKAGE.cable, friction: 0 },
  shafts: LINKAGE.shafts.map((one) => ({ ...one, friction: 0 })),
};

/** Energy that a spring takes up between rest and an angle [J]. */
function stored({ count, rate, preload, lever }: Spring, angle: number): number {
  const way = lever ? pullAt(lever, angle) : angle;
  return count * (preload * way + (rate * way * way) / 2);
}

/** Work over a travel by Simpson's rule [J]. */
function work(linkage: Linkage, force: 'out' | 'back'): number {
  const steps = 2000;
  const points = Array.from({ length: steps + 1 }, (_, i) =>
    effortAt(linkage, (linkage.opening * i) / steps),
  );
  return points.reduce((sum, point, i) => {
    if (i % 2 === 0) return sum;
    const [before, after] = [points[i - 1]!, points[i + 1]!];
    const mean = (before[force] + 4 * point[force] + after[force]) / 6;
    return sum + mean * (after.travel - before.travel);
  }, 0);
}

describe('without friction', () => {
  it('the foot puts in what the springs store, and gets it back', () => {
    const { opening, pedal, shafts } = smooth;
    const turned = footTravel(smooth, opening) / pedal.length;
    const all =
      shafts.flatMap(({ springs }) => springs).reduce((sum, one) => sum + stored(one, opening), 0) +
      stored(pedal.springs[0]!, turned);
    expect(work(smooth, 'out') / all).toBeCloseTo(1, 6);
    expect(work(smooth, 'back') / all).toBeCloseTo(1, 6);
  });
});

describe('friction', () => {
  it('of the cable alone parts out and back by exp(2 mu theta)', () => {
    const bare = { ...smooth, pedal: { ...smooth.pedal, springs: [] }, cable: LINKAGE.cable };
    for (const { out, back } of effortCurve(bare)) {
      expect(out / back).toBeCloseTo(Math.exp(2 * 0.15 * Math.PI), 10);
    }
  });

  it('of pedal and plates alone parts them by its own force at the pad', () => {
    const plain = { ...LINKAGE, cable: { ...LINKAGE.cable, friction: 0 } };
    for (const { angle, out, back } of effortCurve(plain)) {
      const plates = (3 * 0.03 * 0.1) / 0.2 / armAt(plain.cable.lever, angle);
      expect(out - back).toBeCloseTo(2 * (plates + 3), 10);
    }
  });

  it('holds plates open just where the pedal no longer comes back by itself', () => {
    for (const weak of [0.02, 0.05, 0.1, 0.2, 0.4]) {
      const pedal = { ...LINKAGE.pedal, springs: [] };
      const one = {
        ...LINKAGE,
        pedal,
        shafts: [shaft('one', { springs: [torsion({ preload: weak })] })],
      };
      const returns = Math.min(...effortCurve(one).map(({ back }) => back)) > 0;
      expect(closings(one)[0]!.left > 0).toBe(returns);
    }
  });

  it('of the pedal alone: a spring at the stop must exceed friction times exp(mu theta)', () => {
    const quadrant = { ...LINKAGE.cable, lever: { radius: 0.03 } };
    const limit = ((3 * 0.2) / 0.1) * 0.03 * Math.exp(0.15 * Math.PI);
    const closes = (preload: number) =>
      closings({
        ...LINKAGE,
        pedal: { ...LINKAGE.pedal, springs: [] },
        cable: quadrant,
        shafts: [shaft('one', { friction: 0, springs: [torsion({ preload })] })],
      })[0]!.left > 0;
    expect(closes(limit * 1.0001)).toBe(true);
    expect(closes(limit * 0.9999)).toBe(false);
  });
});

describe('parts taken off', () => {
  const found = closings(LINKAGE);
  const left = (without: string, name: string) =>
    found.find((one) => one.without === without && one.shaft === name)!;

  it('are each spring, each link and the cable, one at a time', () => {
    expect([...new Set(found.map(({ without }) => without))]).toEqual([
      '',
      'a, one of 2 (one)',
      'a (one)',
      'a (two)',
      'a (three)',
      'a (pedal)',
      'link one - two',
      'link two - three',
      'cable',
    ]);
  });

  it('a link parts the shafts beyond it from those before it', () => {
    expect(left('link two - three', 'three').springs).toBeCloseTo(0.15, 12);
    expect(left('link one - two', 'two').springs).toBeCloseTo(0.3, 12);
    expect(left('link one - two', 'three')).toMatchObject({ resistance: 0.06 });
    const start = 2 * 10 * 0.025 * Math.cos(0.7) + 0.15;
    expect(left('link one - two', 'one').springs).toBeCloseTo(start, 12);
  });

  it('a spring takes its torque with it; the pedal spring draws no plate shut', () => {
    const whole = left('', 'one').springs;
    expect(whole - left('a (three)', 'one').springs).toBeCloseTo(0.15, 12);
    expect(whole - left('a, one of 2 (one)', 'one').springs).toBeCloseTo(0.25 * Math.cos(0.7), 12);
    expect(left('a (pedal)', 'one').springs).toBe(whole);
    expect(left('a (pedal)', 'one').resistance).toBeGreaterThan(left('', 'one').resistance);
  });

  it('one spring alone is no second source', () => {
    const pedal = { ...LINKAGE.pedal, friction: 0 };
    const single = { ...LINKAGE, pedal, shafts: [shaft('one')] };
    expect(closings(single).some((one) => one.without === 'a (one)' && one.left <= 0)).toBe(true);
    const two = { ...single, shafts: [shaft('one', { springs: [torsion(), torsion()] })] };
    expect(closings(two).every((one) => one.left > 0)).toBe(true);
  });

  it('a spring that goes over centre holds open', () => {
    const over = spring({ lever: { radius: 0.025, squareAt: -0.5 }, preload: 40 });
    const one = { ...LINKAGE, shafts: [shaft('one', { springs: [over] })] };
    const [whole] = closings(one);
    expect(whole!.left).toBeLessThan(0);
    expect(whole!.angle).toBeCloseTo(1.4, 12);
  });
});

describe('stress', () => {
  const coil: Coil = { material: 'drawn', wire: 0.002, diameter: 0.02, coils: 10, legs: 0 };

  it('of a wide coil is that of a straight bar in torsion and in bending', () => {
    const wide = { ...coil, diameter: 20 };
    const section = Math.PI * 0.002 ** 3;
    expect(shearStress(wide, 1) / ((16 * 10) / section)).toBeCloseTo(1, 3);
    expect(bendingStress(wide, 1) / (32 / section)).toBeCloseTo(1, 3);
  });

  it('grows with curvature: w = 10 gives 10.5/9.25 and 10.07/9.25', () => {
    const section = Math.PI * 0.002 ** 3;
    expect(shearStress(coil, 30) / ((8 * 30 * 0.02) / section)).toBeCloseTo(10.5 / 9.25, 12);
    expect(bendingStress(coil, 0.5) / (16 / section)).toBeCloseTo(10.07 / 9.25, 12);
  });

  it('is borne as the table of the wire has it, EN 10270-1 class SM, from memory', () => {
    // Least strength of 1, 2, 3 and 5 mm wire [N/mm2], printed to tens.
    for (const [wire, strength] of [
      [1, 1980],
      [2, 1760],
      [3, 1630],
      [5, 1460],
    ] as const) {
      const borne = borneStress('torsion', { ...coil, wire: wire / 1000 })! / 0.7e6;
      expect(Math.abs(borne - strength)).toBeLessThan(5);
    }
    expect(borneStress('torsion', { ...coil, material: 'stainless' })).toBeUndefined();
  });
});
