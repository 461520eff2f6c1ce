/**
 * A cylinder with its valves shut and no heat to the wall: isentropic, by definition.
 *
 *   p V^gamma = const (perfect gas),   s = integral cp dT/T - R ln p = const (any ideal gas)
 */
import { describe, expect, it } from 'vitest';
import { cylinderVolume } from '../../sim/cylinder/crank.ts';
import { Cylinder } from '../../sim/cylinder/cylinder.ts';
import type { Gas } from '../../sim/gas/gas.ts';
import { AIR_GAMMA, airAndProducts, perfectAir } from '../gases.ts';

const CRANK = { bore: 0.086, stroke: 0.086, rodLength: 0.143, compressionRatio: 12.4 };
const SPEED = 6000;

interface Seen {
  angle: number;
  pressure: number;
  temperature: number;
}

/** Turns a shut cylinder from bottom to top and back in steps of the engine's usual size. */
function motor(gas: Gas, stepDegrees: number): Seen[] {
  const cylinder = new Cylinder(
    { name: 'cylinder', crank: CRANK, speed: SPEED, shut: { from: 540, to: 180 } },
    540,
  );
  cylinder.fill(gas, { pressure: 1e5, temperature: 330, burned: 0.05 });
  const seen: Seen[] = [];
  const dt = stepDegrees / (6 * SPEED);
  for (let turned = 0; turned < 360 - 1e-9; turned += stepDegrees) {
    const middle = (540 + turned + 0.5 * stepDegrees) % 720;
    const moment = { crankAngle: middle, crankStep: stepDegrees, dt };
    cylinder.predict(gas, moment);
    cylinder.advance(moment);
    const end = (540 + turned + stepDegrees) % 720;
    const { mass, energy } = cylinder.contents;
    const temperature = gas.temperature(energy / mass, 0.05, 0, cylinder.temperature);
    const pressure = (mass * gas.gasConstant(0.05, 0) * temperature) / cylinderVolume(CRANK, end);
    seen.push({ angle: end, pressure, temperature });
  }
  return seen;
}

/** Integral of cp dT/T from 300 K by Simpson's rule [J/kg K]. */
function entropyAt(gas: Gas, T: number, p: number): number {
  const n = 2000;
  const h = Math.log(T / 300) / n;
  let sum = 0;
  for (let i = 0; i <= n; i++) {
    const weight = i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * gas.heatCapacityPressure(300 * Math.exp(i * h), 0.05, 0);
  }
  return (sum * h) / 3 - gas.gasConstant(0.05, 0) * Math.log(p);
}

describe('motored cylinder, valves shut, adiabatic', () => {
  it('keeps p V^gamma within 0.2 % with a perfect gas', () => {
    const seen = motor(perfectAir(), 0.8);
    const start = 1e5 * cylinderVolume(CRANK, 540) ** AIR_GAMMA;
    for (const { angle, pressure } of seen) {
      const here = pressure * cylinderVolume(CRANK, angle) ** AIR_GAMMA;
      expect(Math.abs(here / start - 1)).toBeLessThan(2e-3);
    }
    // Top dead centre is far from where it began: 12.4^1.4 = 33.9 bar.
    expect(Math.max(...seen.map((s) => s.pressure))).toBeGreaterThan(33e5);
  });

  it('keeps its entropy with air and products, to 0.2 % of the pressure', () => {
    const gas = airAndProducts();
    const R = gas.gasConstant(0.05, 0);
    const start = entropyAt(gas, 330, 1e5);
    for (const { pressure, temperature } of motor(gas, 0.8)) {
      // A change of entropy ds is a change of pressure of exp(-ds/R) at the same temperature.
      const shift = Math.exp((entropyAt(gas, temperature, pressure) - start) / R) - 1;
      expect(Math.abs(shift)).toBeLessThan(2e-3);
    }
  });

  it('errs four times less at half the step: second order', () => {
    const gas = perfectAir();
    const error = (step: number) => {
      const seen = motor(gas, step);
      const start = 1e5 * cylinderVolume(CRANK, 540) ** AIR_GAMMA;
      const errors = seen.map(({ angle, pressure }) =>
        Math.abs((pressure * cylinderVolume(CRANK, angle) ** AIR_GAMMA) / start - 1),
      );
      return Math.max(...errors);
    };
    const order = Math.log2(error(1.2) / error(0.6));
    expect(order).toBeGreaterThan(1.8);
    expect(order).toBeLessThan(2.2);
  });
});
