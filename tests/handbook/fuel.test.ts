/** Fuels beside the published rows of tests/prove/fuel.ts. */
import { describe, expect, it } from 'vitest';
import { combustionProducts } from '../../sim/gas/combustionProducts.ts';
import { FUEL_NAMES, fuelNamed } from '../../sim/gas/fuel.ts';

const within = (ours: number, published: number, tolerance: number) =>
  expect(Math.abs(ours / published - 1)).toBeLessThan(tolerance);

describe('blends', () => {
  it('burning petrol gives its lower heating value where air is not short', () => {
    const fuel = fuelNamed('petrol');
    within(combustionProducts(fuel, 1.1).heat, fuel.lowerHeatingValue, 1e-9);
  });
});

it.each(FUEL_NAMES)('vapour of %s keeps a positive heat capacity far outside its range', (name) => {
  const fuel = fuelNamed(name);
  for (const T of [0, 100, 1000, 4000]) {
    expect(fuel.vapourHeatCapacity(T)).toBeGreaterThan(500);
    expect(fuel.vapourHeatCapacity(T)).toBeLessThan(5000);
  }
});
