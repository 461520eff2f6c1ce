/** Dissociation and uneven mixing: the equilibrium against a library, the table against it, torque's peak. */
import { describe, expect, it } from 'vitest';
import { combustionProducts } from '../../sim/gas/combustionProducts.ts';
import { massOf } from '../../sim/gas/component.ts';
import { FUEL_NAMES, fuelNamed } from '../../sim/gas/fuel.ts';
import {
  DISSOCIATION_SPREAD,
  DISSOCIATION_TABLE,
  dissociationShare,
  releasedHeat,
  UNEVENNESS,
} from '../../sim/gas/releasedHeat.ts';
import { BurnedGas, cycleWork, type IdealCycle } from './equilibrium.ts';

const USUAL: IdealCycle = { compressionRatio: 10.5, temperature: 350 };
const petrol = fuelNamed('petrol');

function shareOf(lambda: number, cycle: IdealCycle, fuel = petrol): number {
  return cycleWork(lambda, cycle, true, fuel).work / cycleWork(lambda, cycle, false, fuel).work;
}

describe('equilibrium of burned iso-octane', () => {
  // Cantera 3.2 with the species of its file nasa_gas.yaml, run outside this program: temperature [K],
  // specific volume [m^3/kg], mole fractions.
  it.each([
    [
      1,
      2800,
      0.135128579,
      { CO: 0.02207, H2: 0.0040987, O2: 0.0080127, OH: 0.0060516, NO: 0.0068282 },
    ],
    [
      0.9,
      2800,
      0.138154391,
      { CO: 0.041774, H2: 0.0090209, O2: 0.0018816, OH: 0.0043506, NO: 0.00328 },
    ],
    [
      1.1,
      2600,
      0.125383272,
      { CO: 0.0065838, H2: 0.0011802, O2: 0.016735, OH: 0.0041645, NO: 0.007362 },
    ],
  ] as const)('lambda %f, %f K: as Cantera within 1.5 per cent', (lambda, T, volume, theirs) => {
    const { moles } = combustionProducts(fuelNamed('iso-octane'), lambda);
    const gas = new BurnedGas(moles);
    gas.equilibrate(T, volume * massOf(moles));
    for (const [name, fraction] of Object.entries(theirs)) {
      expect(Math.abs(gas.fraction(name) / fraction - 1)).toBeLessThan(0.015);
    }
  });

  it.each([
    [0.8, 2901.1, 2977.9],
    [0.9, 2951, 3118],
    [1, 2926.5, 3235.2],
    [1.1, 2860.3, 3071.3],
  ])(
    'lambda %f: burns at constant volume to the same temperatures within 2 K',
    (lambda, hot, cold) => {
      const fuel = fuelNamed('iso-octane');
      expect(Math.abs(cycleWork(lambda, USUAL, true, fuel).peak - hot)).toBeLessThan(2);
      expect(Math.abs(cycleWork(lambda, USUAL, false, fuel).peak - cold)).toBeLessThan(2);
    },
  );
});

describe('what dissociation leaves', () => {
  it.each(DISSOCIATION_TABLE.lambda.map((lambda, i) => [lambda, i]))(
    'at lambda %f is that of the cycle',
    (lambda, i) => {
      expect(Math.abs(shareOf(lambda, USUAL) - DISSOCIATION_TABLE.share[i]!)).toBeLessThan(2e-4);
    },
  );

  it.each([
    { compressionRatio: 8, temperature: 350 },
    { compressionRatio: 14, temperature: 350 },
    { compressionRatio: 10.5, temperature: 310 },
    { compressionRatio: 10.5, temperature: 400 },
  ])('stays within its spread at $compressionRatio from $temperature K', (cycle) => {
    for (const lambda of [0.8, 0.9, 1, 1.1]) {
      const off = shareOf(lambda, cycle) - dissociationShare(lambda);
      expect(Math.abs(off)).toBeLessThan(DISSOCIATION_SPREAD);
    }
  });

  it.each(FUEL_NAMES)('stays within its spread with %s', (name) => {
    const off = shareOf(1, USUAL, fuelNamed(name)) - dissociationShare(1);
    expect(Math.abs(off)).toBeLessThan(DISSOCIATION_SPREAD);
  });
});

describe('heat released', () => {
  const perAir = (lambda: number, unevenness?: number) =>
    releasedHeat(petrol, lambda, undefined, unevenness) /
    combustionProducts(petrol, lambda).airFuelRatio;

  it('of an even mixture is the cold heat less dissociation', () => {
    const { heat } = combustionProducts(petrol, 0.9);
    expect(releasedHeat(petrol, 0.9, undefined, 0) / heat).toBeCloseTo(dissociationShare(0.9), 9);
  });

  it('leaves 0.4 % oxygen at lambda 1', () => {
    // Mean of lambda - 1 where it is above 0, in moles of burned gas: 0.21 / 1.06 s / sqrt(2 pi).
    const left = (0.21 / 1.06) * (UNEVENNESS.usual / Math.sqrt(2 * Math.PI));
    expect(left).toBeCloseTo(0.004, 3);
  });

  it.each(Object.values(UNEVENNESS))('work of the air peaks rich, unevenness %f', (unevenness) => {
    // The engine's own cycle knows what cold products do with the heat; the rest is the ratio.
    const lambdas = Array.from({ length: 41 }, (_, i) => 0.75 + 0.01 * i);
    const work = lambdas.map((lambda) => {
      const { heat, airFuelRatio } = combustionProducts(petrol, lambda);
      const kept = perAir(lambda, unevenness) / (heat / airFuelRatio);
      return kept * cycleWork(lambda, USUAL, false, petrol).work;
    });
    const best = lambdas[work.indexOf(Math.max(...work))]!;
    expect(best).toBeGreaterThanOrEqual(0.85);
    expect(best).toBeLessThanOrEqual(0.925);
  });

  it('stays finite over the range of lambda, and lean of it falls with the fuel', () => {
    for (const lambda of [0.6, 0.8, 1, 1.2, 1.6]) {
      expect(perAir(lambda, UNEVENNESS.greatest)).toBeGreaterThan(1e6);
    }
    expect(perAir(1.5) / perAir(1.3)).toBeCloseTo(1.3 / 1.5, 2);
  });
});
