/** Fog of a made-up mouth, of which what is to come is known: a life table leaps there at once. */
import { describe, expect, test } from 'vitest';
import { FogLeap } from '../../sim/spray/fogLeap.ts';
import { massOf, type Parcel } from '../../sim/spray/parcel.ts';

const parcel = (mass: number): Parcel =>
  ({ where: 'intake', s: -0.1, drop: { mass: [mass], T: 300 }, count: 1 }) as unknown as Parcel;

const mass = (fog: readonly Parcel[]) => fog.reduce((sum, one) => sum + massOf(one), 0);

/** Closings of a mouth that brings `brought` a cycle, of which what came i closings ago keeps `kept(i)`. */
class Mouth {
  fog: { parcel: Parcel; age: number }[] = [];
  readonly leap = new FogLeap();

  constructor(
    private readonly brought: number,
    private readonly kept: (age: number) => number,
  ) {}

  cycle(): void {
    for (const one of this.fog) one.parcel.count *= this.kept(one.age++);
    this.fog.push({ parcel: parcel(this.brought), age: 0 });
    this.leap.note(this.list());
  }

  list(): Parcel[] {
    return this.fog.map(({ parcel }) => parcel);
  }
}

describe('leap', () => {
  test('one that keeps 9 tenths a cycle comes to ten times what a cycle brings, and then stays', () => {
    const mouth = new Mouth(3, () => 0.9);
    const first = [1, 2, 3, 4].map(() => {
      mouth.cycle();
      return mass(mouth.list());
    });
    expect(first[3]).toBeCloseTo(3 * (1 + 0.9 + 0.81 + 0.729), 10);
    expect(mouth.leap.make()).toBeCloseTo(30 - first[3]!, 10);
    expect(mass(mouth.list())).toBeCloseTo(30, 10);
    for (let i = 0; i < 4; i++) mouth.cycle();
    expect(mass(mouth.list())).toBeCloseTo(30, 10);
    expect(Math.abs(mouth.leap.make())).toBeLessThan(1e-10);
  });

  test('what goes sooner the older it is comes to the sum of its life table', () => {
    const kept = (age: number) => [0.9, 0.8, 0.5, 0.1, 0][age] ?? 0;
    const mouth = new Mouth(1, kept);
    for (let i = 0; i < 8; i++) mouth.cycle();
    mouth.leap.make();
    const table = 1 + 0.9 + 0.9 * 0.8 + 0.9 * 0.8 * 0.5 + 0.9 * 0.8 * 0.5 * 0.1;
    expect(mass(mouth.list())).toBeCloseTo(table, 10);
  });

  test('is not due sooner than four closings after the last', () => {
    const mouth = new Mouth(3, () => 0.9);
    for (let i = 0; i < 3; i++) mouth.cycle();
    expect(mouth.leap.make()).toBe(0);
    mouth.cycle();
    expect(mouth.leap.make()).toBeGreaterThan(0);
    mouth.cycle();
    expect(mouth.leap.make()).toBe(0);
  });

  test('drops in the pipe and in the cylinder are no fog', () => {
    const leap = new FogLeap();
    const inside = { ...parcel(1), s: 0.02 };
    const burning = { ...parcel(1), where: 'cylinder' as const };
    for (let i = 0; i < 4; i++) leap.note([inside, burning]);
    expect(leap.make()).toBe(0);
    expect([inside.count, burning.count]).toEqual([1, 1]);
  });

  test('with no fog there is nothing to do', () => {
    const leap = new FogLeap();
    for (let i = 0; i < 4; i++) leap.note([]);
    expect(leap.make()).toBe(0);
  });
});
