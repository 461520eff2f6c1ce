/**
 * The working gas between and beyond the published rows of tests/prove/combustion.ts, and what
 * burning makes.
 */
import { describe, expect, it } from 'vitest';
import { combustionProducts } from '../../sim/gas/combustionProducts.ts';
import { componentOf, DRY_AIR, massOf, moistAir, totalMoles } from '../../sim/gas/component.ts';
import { perfectGas } from '../../sim/gas/gas.ts';
import { formationEnthalpy, SPECIES } from '../../sim/gas/species.ts';
import { caloric, gasCv, gasE } from '../../sim/step/gas.ts';
import { use } from '../../sim/step/lanes.ts';
import { airAndProducts, ISO_OCTANE } from '../gases.ts';

const gas = airAndProducts();
const TEMPERATURES = Array.from({ length: 57 }, (_, i) => 200 + 50 * i);

describe('working gas', () => {
  it('follows the laws of its components within 1e-9 of cv, products and vapour too', () => {
    const { moles } = combustionProducts(ISO_OCTANE, 1);
    const own = [
      [componentOf(DRY_AIR).heatCapacity, 0, 0],
      [componentOf(moles).heatCapacity, 1, 0],
      [(T: number) => 400 + 4.3 * T, 0, 1],
    ] as const;
    for (const [heatCapacity, burned, fuel] of own) {
      for (let T = 200; T <= 3500; T += 7) {
        const cv = heatCapacity(T) - gas.gasConstant(burned, fuel);
        expect(Math.abs(gas.heatCapacityVolume(T, burned, fuel) / cv - 1)).toBeLessThan(1e-9);
      }
    }
  });

  it('is the gas of the step to 1e-13', () => {
    use({ N: new Int32Array(0), K: gas.head(), X: new Float64Array(0) });
    for (const T of TEMPERATURES) {
      caloric(T, 0.3, 0.02, true);
      expect(Math.abs(gasCv / gas.heatCapacityVolume(T, 0.3, 0.02) - 1)).toBeLessThan(1e-13);
      expect(Math.abs(gasE - gas.internalEnergy(T, 0.3, 0.02))).toBeLessThan(1e-13 * gasCv * T);
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
  it('is lighter when moist', () => {
    const moist = componentOf(moistAir(0.02)).molarMass;
    expect(moist).toBeCloseTo(0.98 * componentOf(DRY_AIR).molarMass + 0.02 * 18.01528e-3, 8);
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

  it('of iso-octane give its lower heating value', () => {
    const { heat, moles } = combustionProducts(ISO_OCTANE, 1);
    expect(Math.abs(heat / ISO_OCTANE.lowerHeatingValue - 1)).toBeLessThan(1e-9);
    expect(totalMoles(moles)).toBeGreaterThan(60);
  });

  it('give less heat rich, by the heat of the CO and H2 left', () => {
    const ofCO = formationEnthalpy(SPECIES.CO) - formationEnthalpy(SPECIES.CO2);
    const ofH2 = formationEnthalpy(SPECIES.H2) - formationEnthalpy(SPECIES.H2O);
    const { moles, heat } = combustionProducts(ISO_OCTANE, 0.85);
    const lost = (moles.CO! * ofCO + moles.H2! * ofH2) / ISO_OCTANE.molarMass;
    expect(Math.abs(heat / (ISO_OCTANE.lowerHeatingValue - lost) - 1)).toBeLessThan(1e-9);
    // Water-gas balance, K = 3.5 (Heywood 1988, sec. 4.9).
    expect((moles.CO! * moles.H2O!) / (moles.CO2! * moles.H2!)).toBeCloseTo(3.5, 9);
  });
});
