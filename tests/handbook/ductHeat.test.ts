/** Heat of pipes in unsteady flow: the correlation, and what it is beside steady flow. */
import { expect, it } from 'vitest';
import { PRANDTL } from '../../sim/gas/viscosity.ts';
import { fanningFactor } from '../../sim/loss/friction.ts';
import { ductNusselt, ductStanton } from './ductHeat.ts';

/** The doubt of engine.pipeHeat [-]. */
const SPREAD = 0.3;
/** Pr^(-2/3). */
const COLBURN = PRANDTL ** (-2 / 3);

it.each([
  // 0.07 Re^0.75 (Depcik & Assanis 2002, abstract), by hand.
  [1e4, 70],
  [1.6e5, 560],
])('at Re %f Nu is %f', (reynolds, nusselt) => {
  expect(ductNusselt(reynolds)).toBeCloseTo(nusselt, 6);
});

it('Stanton and Nusselt number are the same heat', () => {
  for (const Re of [1e3, 5e4, 3e5]) {
    expect(ductStanton(Re) * Re * PRANDTL).toBeCloseTo(ductNusselt(Re), 9);
  }
  expect(ductStanton(0)).toBe(ductStanton(100));
});

it.each([2e4, 5e4, 1e5])('at Re %f carries 1.8 to 2.3 times what steady flow does', (Re) => {
  // Dittus & Boelter (1930), heated gas: 0.023 Re^0.8 Pr^0.4.
  const steady = 0.023 * Re ** 0.8 * PRANDTL ** 0.4;
  const ratio = ductNusselt(Re) / steady;
  expect(ratio).toBeGreaterThan(1.8);
  expect(ratio).toBeLessThan(2.3);
  // The smooth wall's friction by Colburn's analogy is that steady flow.
  const analogy = (fanningFactor(Re, 0) / 2) * COLBURN;
  expect(ductStanton(Re) / analogy).toBeGreaterThan(1 + 2 * SPREAD);
});
