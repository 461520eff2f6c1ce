/**
 * A cylinder with its valves shut and no heat to the wall: isentropic, by definition.
 *
 *   p V^gamma = const (perfect gas),   s = integral cp dT/T - R ln p = const (any ideal gas)
 */
import { describe, expect, it } from 'vitest';
import { cylinderVolume } from '../../sim/cylinder/crank.ts';
import type { Gas } from '../../sim/gas/gas.ts';
import { AIR_GAMMA, airAndProducts, perfectAir } from '../gases.ts';
import { MOTORED_CRANK, motor } from '../prove/cases/motored.ts';

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
    const start = 1e5 * cylinderVolume(MOTORED_CRANK, 540) ** AIR_GAMMA;
    for (const { angle, pressure } of seen) {
      const here = pressure * cylinderVolume(MOTORED_CRANK, angle) ** AIR_GAMMA;
      expect(Math.abs(here / start - 1)).toBeLessThan(2e-3);
    }
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
      const start = 1e5 * cylinderVolume(MOTORED_CRANK, 540) ** AIR_GAMMA;
      const errors = seen.map(({ angle, pressure }) =>
        Math.abs((pressure * cylinderVolume(MOTORED_CRANK, angle) ** AIR_GAMMA) / start - 1),
      );
      return Math.max(...errors);
    };
    const order = Math.log2(error(1.2) / error(0.6));
    expect(order).toBeGreaterThan(1.8);
    expect(order).toBeLessThan(2.2);
  });
});
