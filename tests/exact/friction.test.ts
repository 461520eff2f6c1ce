/** Slow flow heated by the wall. Fanno and Rayleigh rows are in tests/prove/gasDynamics.ts. */
import { describe, expect, it } from 'vitest';
import { COLBURN } from '../../sim/scheme/wallSource.ts';
import { perfectAir } from '../gases.ts';
import { DIAMETER, LENGTH, P0, steadyPipe, T0 } from '../prove/cases/steadyPipe.ts';

const gas = perfectAir();

describe('slow flow heated by the wall', () => {
  it('nears the wall temperature as exp(-2 f Pr^(-2/3) x / D), by the Reynolds-Colburn analogy', () => {
    const f = 0.005;
    const wall = 380;
    const duct = steadyPipe({
      cells: 80,
      back: 0.99 * P0,
      time: 0.6,
      options: { wallTemperature: () => wall },
      fanning: f,
    });
    const left = Math.exp((-2 * f * COLBURN * LENGTH) / DIAMETER);
    const { high } = duct.endState;
    // Total temperature: the law is one of enthalpy.
    const cp = 3.5 * gas.rAir;
    const exit = high[2]! / (high[0]! * gas.rAir) + (0.5 * high[1]! ** 2) / cp;
    expect(Math.abs((exit - (wall - left * (wall - T0))) / (wall - T0))).toBeLessThan(5e-3);
  });
});
