/**
 * Thermodynamics of the working gas against published values.
 * Sources: NASA seven-coefficient polynomials from the Cantera library's air.yaml and gri30.yaml;
 * JANAF 1998; derived rows for dry air and burned gas computed from the polynomials.
 */
import { describe, expect, it } from 'vitest';
import { combustionProducts } from '../../sim/gas/combustionProducts.ts';
import { componentOf, DRY_AIR, massOf, moistAir, totalMoles } from '../../sim/gas/component.ts';
import { Gas, perfectGas } from '../../sim/gas/gas.ts';
import { formationEnthalpy, heatCapacityMolar, SPECIES } from '../../sim/gas/species.ts';
import { viscosity } from '../../sim/gas/viscosity.ts';
import { airAndProducts, ISO_OCTANE } from '../gases.ts';

const gas = airAndProducts();
const TEMPERATURES = Array.from({ length: 57 }, (_, i) => 200 + 50 * i);

describe('molar heat capacity', () => {
  const SOURCES = {
    H2O: SPECIES.H2O,
    CO2: SPECIES.CO2,
    CO: SPECIES.CO,
    O2: SPECIES.O2,
    N2: SPECIES.N2,
  };
  it.each([
    // T, then H2O, CO2, CO, O2, N2 of the polynomials as printed to five digits [J/mol K].
    [298.15, 33.588, 37.135, 29.141, 29.378, 29.071],
    [500, 35.214, 44.62, 29.811, 31.084, 29.636],
    [1000, 41.295, 54.321, 33.163, 34.883, 32.762],
    [1500, 47.291, 58.396, 35.211, 36.575, 34.805],
    [2000, 51.752, 60.359, 36.247, 37.796, 35.988],
    [3000, 56.791, 62.172, 37.209, 39.996, 37.028],
  ])('at %f K', (T, ...printed) => {
    Object.values(SOURCES).forEach((species, i) => {
      expect(Math.abs(heatCapacityMolar(species, T) - printed[i]!)).toBeLessThan(6e-4);
    });
  });

  it.each([
    // JANAF 1998: T, H2O (to 1000 K: a later revision above), CO2, CO.
    [298.15, 33.59, 37.129, 29.142],
    [500, 35.226, 44.627, 29.794],
    [1000, 41.268, 54.308, 33.183],
  ])('agrees with JANAF at %f K within 0.3 %%', (T, ...janaf) => {
    [SPECIES.H2O, SPECIES.CO2, SPECIES.CO].forEach((species, i) => {
      expect(Math.abs(heatCapacityMolar(species, T) / janaf[i]! - 1)).toBeLessThan(3e-3);
    });
  });
});

describe('working gas', () => {
  it.each([
    // Dry air: T, cp [J/kg K], gamma.
    [250, 998.5, 1.40343],
    [300, 1003.5, 1.40065],
    [400, 1015.4, 1.39409],
    [600, 1050.4, 1.37605],
    [800, 1097.7, 1.35408],
    [1000, 1142.8, 1.33542],
    [1500, 1210.2, 1.31094],
    [2000, 1251.0, 1.29779],
  ])('air at %f K: cp %f, gamma %f, within 0.5 %%', (T, cp, gamma) => {
    expect(Math.abs(gas.heatCapacityPressure(T, 0, 0) / cp - 1)).toBeLessThan(5e-3);
    expect(Math.abs(gas.gamma(T, 0, 0) / gamma - 1)).toBeLessThan(1.5e-3);
  });

  it.each([
    // Burned iso-octane, phi 1, frozen, nitrogen for all that is not oxygen: T, cp, gamma.
    [300, 1074, 1.371],
    [600, 1158, 1.3353],
    [900, 1253, 1.3022],
    [1200, 1327, 1.2805],
    [1500, 1381, 1.2666],
    [2000, 1442, 1.2525],
  ])('products at %f K: cp %f, gamma %f, within 0.5 %%', (T, cp, gamma) => {
    const burned = componentOf({ CO2: 8, H2O: 9, N2: 47.16 });
    expect(Math.abs(burned.molarMass / 28.605e-3 - 1)).toBeLessThan(2e-4);
    const mixture = new Gas(componentOf(DRY_AIR), burned, burned);
    expect(Math.abs(mixture.heatCapacityPressure(T, 1, 0) / cp - 1)).toBeLessThan(5e-3);
    expect(Math.abs(mixture.gamma(T, 1, 0) / gamma - 1)).toBeLessThan(5e-3);
  });

  it('follows the polynomials of air within 0.08 % of cv between its knots', () => {
    const air = componentOf(DRY_AIR);
    for (let T = 200; T <= 3000; T += 7) {
      const cv = air.heatCapacity(T) - gas.gasConstant(0, 0);
      expect(Math.abs(gas.heatCapacityVolume(T, 0, 0) / cv - 1)).toBeLessThan(8e-4);
    }
  });

  it.each([
    [0, 0],
    [1, 0],
    [0.4, 0.06],
  ])('finds temperature back from energy; burned %f, fuel %f', (burned, fuel) => {
    for (const T of [60, 199, 200.5, 298.15, 300, 1000, 2750, 3999, 4200]) {
      const e = gas.internalEnergy(T, burned, fuel);
      for (const guess of [150, 300, 2500]) {
        expect(Math.abs(gas.temperature(e, burned, fuel, guess) / T - 1)).toBeLessThan(1e-13);
      }
    }
  });

  it('has an energy whose slope is cv and an enthalpy that is zero at 298.15 K', () => {
    for (const T of TEMPERATURES) {
      const rise = gas.internalEnergy(T + 0.5, 0.3, 0.02) - gas.internalEnergy(T - 0.5, 0.3, 0.02);
      expect(Math.abs(rise / gas.heatCapacityVolume(T, 0.3, 0.02) - 1)).toBeLessThan(1e-3);
    }
    for (const [burned, fuel] of [
      [0, 0],
      [1, 0],
      [0, 1],
    ] as const) {
      expect(Math.abs(gas.enthalpy(298.15, burned, fuel))).toBeLessThan(1e-6);
    }
  });

  it('is a gas of constant gamma when asked', () => {
    const perfect = perfectGas(1.4, 287.05);
    for (const T of TEMPERATURES) {
      expect(Math.abs(perfect.gamma(T, 0.3, 0.2) - 1.4)).toBeLessThan(1e-12);
      expect(Math.abs(perfect.soundSpeed(T, 0, 0) / Math.sqrt(1.4 * 287.05 * T) - 1)).toBeLessThan(
        1e-12,
      );
    }
  });
});

describe('air', () => {
  it('has the molar mass of the US Standard Atmosphere 1976, 28.9644 g/mol, and lighter when moist', () => {
    expect(Math.abs(componentOf(DRY_AIR).molarMass / 28.9644e-3 - 1)).toBeLessThan(2e-4);
    const moist = componentOf(moistAir(0.02)).molarMass;
    expect(moist).toBeCloseTo(0.98 * componentOf(DRY_AIR).molarMass + 0.02 * 18.01528e-3, 8);
  });

  it.each([
    // US Standard Atmosphere 1976: T, mu [Pa s].
    [288.15, 1.7894e-5],
    [275.154, 1.726e-5],
    [268.659, 1.6938e-5],
  ])('has the standard viscosity at %f K', (T, mu) => {
    expect(Math.abs(viscosity(T) / mu - 1)).toBeLessThan(1e-4);
  });
});

describe('products of combustion', () => {
  const atoms = (moles: Record<string, number | undefined>) => {
    const of = (name: string) => moles[name] ?? 0;
    return {
      C: of('CO2') + of('CO'),
      H: 2 * of('H2O') + 2 * of('H2'),
      O: 2 * of('O2') + 2 * of('CO2') + of('CO') + of('H2O'),
      N: 2 * of('N2'),
    };
  };

  it.each([0.75, 0.88, 1, 1.2])('keep every atom and the mass at lambda %f', (lambda) => {
    const air = moistAir(0.01);
    const { moles, airFuelRatio } = combustionProducts(ISO_OCTANE, lambda, air);
    const scale = (airFuelRatio * ISO_OCTANE.molarMass) / massOf(air);
    const before = atoms(Object.fromEntries(Object.entries(air).map(([s, n]) => [s, n * scale])));
    const after = atoms(moles);
    expect(after.C).toBeCloseTo(before.C + ISO_OCTANE.carbon, 10);
    expect(after.H).toBeCloseTo(before.H + ISO_OCTANE.hydrogen, 10);
    expect(after.O).toBeCloseTo(before.O, 10);
    expect(after.N).toBeCloseTo(before.N, 10);
    for (const n of Object.values(moles)) expect(n).toBeGreaterThanOrEqual(0);
    const inflow = ISO_OCTANE.molarMass * (1 + airFuelRatio);
    // Atomic masses in the species' molar masses are rounded.
    expect(Math.abs(massOf(moles) / inflow - 1)).toBeLessThan(2e-5);
  });

  it('needs 15.13 kg of dry air per kg of iso-octane and gives its lower heating value', () => {
    const { airFuelRatio, heat, moles } = combustionProducts(ISO_OCTANE, 1);
    expect(Math.abs(airFuelRatio / 15.13 - 1)).toBeLessThan(3e-3);
    expect(Math.abs(heat / ISO_OCTANE.lowerHeatingValue - 1)).toBeLessThan(1e-9);
    expect(totalMoles(moles)).toBeGreaterThan(60);
  });

  it('give less heat rich, by the heat of the CO and H2 left: 282.98 and 241.83 kJ/mol', () => {
    // Heats of combustion from the same enthalpies of formation; CRC Handbook: 283.0, 241.8.
    const ofCO = formationEnthalpy(SPECIES.CO) - formationEnthalpy(SPECIES.CO2);
    const ofH2 = formationEnthalpy(SPECIES.H2) - formationEnthalpy(SPECIES.H2O);
    expect(Math.abs(ofCO / 283.0e3 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(ofH2 / 241.8e3 - 1)).toBeLessThan(1e-3);
    const { moles, heat } = combustionProducts(ISO_OCTANE, 0.85);
    const lost = (moles.CO! * ofCO + moles.H2! * ofH2) / ISO_OCTANE.molarMass;
    expect(Math.abs(heat / (ISO_OCTANE.lowerHeatingValue - lost) - 1)).toBeLessThan(1e-9);
    // Water-gas balance, K = 3.5 (Heywood 1988, sec. 4.9).
    expect((moles.CO! * moles.H2O!) / (moles.CO2! * moles.H2!)).toBeCloseTo(3.5, 9);
  });
});
