/** Lambda of exhaust gas against another method, and what the equation must do whatever its constants. */
import { expect, test } from 'vitest';
import { type ExhaustGas, lambdaOfGas } from '../../sim/mixture/exhaustGas.ts';
import { dryExhaust } from '../prove/cases/dryExhaust.ts';

const FUEL = { hydrogen: 1.85, oxygen: 0 };

/**
 * Air over fuel by mass from carbon and oxygen: Spindt 1965, SAE 650507 (from memory), over that of
 * stoichiometric mixture with air of 28.96 g/mol and 20.95 % oxygen. Its constants are rounded.
 */
function lambdaSpindt({ CO, CO2, O2, HC }: ExhaustGas): number {
  const carbon = 12.011 / (12.011 + 1.008 * FUEL.hydrogen);
  const burned = (CO + CO2) / (CO + CO2 + 6 * HC);
  const [R, Q] = [CO / CO2, O2 / CO2];
  const ratio =
    burned * ((11.492 * carbon * (1 + R / 2 + Q)) / (1 + R) + (120 * (1 - carbon)) / (3.5 + R));
  const stoichiometric = ((1 + FUEL.hydrogen / 4) * (28.96 / 0.2095)) / (12.011 / carbon);
  return ratio / stoichiometric;
}

const gas = (CO: number, CO2: number, O2: number, HC: number): ExhaustGas => ({
  ...{ CO: CO / 100, CO2: CO2 / 100, O2: O2 / 100, HC: HC / 1e6, NO: 0 },
});

test.each([
  gas(1.2, 13.5, 0.3, 45),
  gas(0.01, 13.78, 2.29, 834),
  gas(0.5, 14.7, 0.5, 100),
  gas(4, 12, 0.4, 250),
  gas(0.1, 13, 2.8, 60),
])('within 0.5 %% of Spindt: %o', (dry) => {
  expect(Math.abs(lambdaOfGas(dry, FUEL) / lambdaSpindt(dry) - 1)).toBeLessThan(5e-3);
});

test.each([0.8, 0.85, 0.9, 0.95, 1, 1.05, 1.1, 1.2])(
  'gas burned at lambda %d comes back, here to 5e-6, by Spindt to 0.2 %%',
  (lambda) => {
    const dry = dryExhaust(FUEL.hydrogen, lambda);
    expect(lambdaOfGas(dry, FUEL)).toBeCloseTo(lambda, lambda < 1 ? 5 : 9);
    expect(Math.abs(lambdaSpindt(dry) / lambda - 1)).toBeLessThan(2e-3);
  },
);

test('only ratios of the gases count', () => {
  const dry = gas(1.2, 13.5, 0.3, 45);
  const thin = Object.fromEntries(Object.entries(dry).map(([name, x]) => [name, x / 2]));
  expect(lambdaOfGas(thin as unknown as ExhaustGas, FUEL)).toBeCloseTo(lambdaOfGas(dry, FUEL), 12);
});

test('air drawn in reads lean by its share', () => {
  const dry = dryExhaust(FUEL.hydrogen, 0.9);
  const drawn = { ...dry, O2: dry.O2 + 0.01 * 0.2095 };
  expect(lambdaOfGas(drawn, FUEL)).toBeGreaterThan(0.9 + 0.008);
});
