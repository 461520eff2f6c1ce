/** Engine friction by its correlation: worked by hand, beside another correlation, and as brake torque. */
import { describe, expect, it } from 'vitest';
import { friction } from '../../sim/cylinder/friction.ts';
import { brakeTorque } from '../../sim/decision/brakeTorque.ts';
import { hillClimb } from '../prove/cases/engine.ts';
import { readDemo } from '../toy.ts';

const engine = hillClimb();

describe('the hill-climb four, 86 x 86 mm, at 6000 rpm', () => {
  // Worked by hand from the correlation in mm and kPa: D 53.32, L 24.08, d 47.3, l 22.36 mm, Sp 17.2 m/s.
  const found = friction(engine, 6000);

  it('crankshaft: seals 2.56, journals 13.04, churning 17.27 kPa', () => {
    expect(found.crankshaft / 1e3).toBeCloseTo(2.56 + 13.04 + 17.27, 1);
  });

  it('pistons: skirts 58.80, rings 5.95, rod bearings 6.76, gas pressure 20.25 kPa', () => {
    expect(found.pistons / 1e3).toBeCloseTo(58.8 + 5.95 + 6.76 + 20.25, 1);
  });

  it('auxiliaries: 46.3 kPa', () => {
    expect(found.auxiliaries / 1e3).toBeCloseTo(8.32 + 11.16 + 26.82, 2);
  });

  it('is the sum of its parts', () => {
    const { crankshaft, pistons, valveTrain, auxiliaries, total } = found;
    expect(crankshaft + pistons + valveTrain + auxiliaries).toBeCloseTo(total, 6);
    expect(valveTrain / 1e3).toBeGreaterThan(10);
    expect(valveTrain / 1e3).toBeLessThan(30);
  });
});

it.each([2000, 3000, 4500, 6000])(
  'at %f rpm is half to all of the motored engine, which pumps as well',
  (speed) => {
    // Barnes-Moss (1975), four cylinders of 0.85 to 2 l, wide open throttle, as in Heywood (1988)
    // eq. 13.6, from memory: 0.97 + 0.15 (N/1000) + 0.05 (N/1000)^2 bar, pumping counted.
    const N = speed / 1000;
    const motored = 1e5 * (0.97 + 0.15 * N + 0.05 * N * N);
    const share = friction(engine, speed).total / motored;
    expect(share).toBeGreaterThan(0.5);
    expect(share).toBeLessThan(1);
  },
);

it('rises with speed and with the size of bearings and lift', () => {
  const at = (speed: number) => friction(engine, speed).total;
  for (const speed of [2000, 4000, 6000]) expect(at(speed + 1000)).toBeGreaterThan(at(speed));
  const lifted = hillClimb();
  if (lifted.intake.valve.lift.kind === 'timing') lifted.intake.valve.lift.maximum *= 1.2;
  expect(friction(lifted, 3000).total).toBeGreaterThan(at(3000));
});

describe('brake torque', () => {
  it('of 220 N m indicated at 6000 rpm leaves 85 to 90 %, as SAE J1349 takes for granted 85 %', () => {
    const brake = brakeTorque({ speed: 6000, indicatedTorque: 220 }, engine);
    expect(brake.mechanicalEfficiency).toBeGreaterThan(0.84);
    expect(brake.mechanicalEfficiency).toBeLessThan(0.9);
    expect(brake.torque + brake.frictionTorque).toBeCloseTo(220, 9);
    // 1 kW is 9549.3 / N times the torque in N m.
    expect(brake.power / 1e3).toBeCloseTo((brake.torque * 6000) / 9549.3, 2);
    expect(brake.torqueDeviation).toBeCloseTo(0.2 * brake.frictionTorque, 9);
  });

  it.each(['hill-climb', 'sprint-single', 'endurance-six', 'boosted-four'])(
    '%s: friction is sane',
    (name) => {
      const demo = readDemo(name).engine;
      const { total } = friction(demo, 5000);
      expect(total).toBeGreaterThan(1e5);
      expect(total).toBeLessThan(3e5);
    },
  );
});
