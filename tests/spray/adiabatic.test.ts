/**
 * Full evaporation of a stoichiometric mixture in a closed, adiabatic duct, drop by drop, against an
 * enthalpy balance made in another way: latent heat from the table at the end temperature, air from
 * the species' polynomials, no use of the model's liquid enthalpy.
 */
import { describe, expect, test } from 'vitest';
import { Duct } from '../../sim/duct/duct.ts';
import { componentOf, DRY_AIR } from '../../sim/gas/component.ts';
import { type FuelName, fuelNamed } from '../../sim/gas/fuel.ts';
import { latentHeatMolar, molarMassOfFuel } from '../../sim/gas/fuelComponent.ts';
import { Gas } from '../../sim/gas/gas.ts';
import { evaporateDrop } from '../../sim/spray/droplet.ts';
import { wetSurface } from '../../sim/spray/evaporation.ts';
import { IntakeLine } from '../../sim/spray/intakeLine.ts';
import { componentsOf, liquidEnergy, liquidFuel, totalMass } from '../../sim/spray/liquidFuel.ts';
import { sprayLedger } from '../../sim/spray/sprayLedger.ts';
import { GAS_CONSTANT } from '../../sim/units.ts';

const LIQUID_TEMPERATURE = 298.15;

function duct(name: string): Duct {
  const profile = [
    { x: 0, diameter: 0.05 },
    { x: 0.1, diameter: 0.05 },
  ];
  return new Duct(profile, { name, largestCell: 0.01 });
}

/** Evaporates `phi` of the stoichiometric fuel in every cell; returns temperature and vapour. */
function evaporateAll(name: FuelName, T0: number, phi: number, duration: number) {
  const fuel = liquidFuel(name);
  const table = fuelNamed(name);
  const gas = new Gas(componentOf(DRY_AIR), componentOf({ N2: 1 }), {
    molarMass: table.molarMass,
    heatCapacity: table.vapourHeatCapacity,
  });
  const ducts = [duct('trumpet'), duct('runner')] as const;
  for (const one of ducts) one.fill(gas, { pressure: 101325, temperature: T0 });
  const before = ducts.map((one) => one.contents());
  const line = new IntakeLine(...ducts);
  const ledger = sprayLedger();
  const surface = wetSurface(fuel);
  const unit = Float64Array.from(fuel.parts, ({ share }) => share);
  const size = fuel.density * (Math.PI / 6) * 12e-6 ** 3;
  line.read();
  const drops = Array.from({ length: line.cells }, (_, k) => ({
    drop: { mass: unit.map((m) => m * size), T: LIQUID_TEMPERATURE },
    count: (phi * line.mass[k]!) / table.stoichiometricAirFuelRatio / size,
  }));
  const start = drops.reduce(
    (sum, { drop, count }) => sum + count * liquidEnergy(fuel, drop.mass, drop.T),
    0,
  );
  const around = { T: T0, p: 101325, fuel: 0 };
  const dt = 2e-5;
  for (let t = 0; t < duration; t += dt) {
    line.read();
    drops.forEach(({ drop, count }, k) => {
      const mass = totalMass(drop.mass);
      if (mass <= 0) return;
      const energy = liquidEnergy(fuel, drop.mass, drop.T);
      line.around(k, around);
      evaporateDrop(fuel, gas, drop, around, 0, dt, surface);
      const gone = count * (mass - totalMass(drop.mass));
      const lost = count * (energy - liquidEnergy(fuel, drop.mass, drop.T));
      line.give(k, gone, 0, lost, { heat: 'field', vapour: 'field' }, gas, ledger);
    });
    line.apply(gas);
  }
  const after = ducts.map((one) => one.contents());
  const sum = (
    parts: { energy: number; mass: number; fuel: number }[],
    key: 'energy' | 'mass' | 'fuel',
  ) => parts.reduce((total, part) => total + part[key], 0);
  const left = drops.reduce(
    (total, { drop, count }) => total + count * liquidEnergy(fuel, drop.mass, drop.T),
    0,
  );
  const liquid = drops.reduce((total, { drop, count }) => total + count * totalMass(drop.mass), 0);
  const asked = (phi * sum(before, 'mass')) / table.stoichiometricAirFuelRatio;
  return {
    T: ducts[0].prim.T.at(5),
    p: ducts[0].prim.p.at(5),
    vapourShare: sum(after, 'fuel') / asked,
    moleFraction: vapourMoleFraction(ducts[0].prim.fuel.at(5), table.molarMass),
    massError: (sum(after, 'mass') + liquid - sum(before, 'mass') - asked) / asked,
    energyError: (sum(after, 'energy') + left - sum(before, 'energy') - start) / Math.abs(start),
  };
}

function vapourMoleFraction(Y: number, M: number): number {
  const moles = Y / M;
  return moles / (moles + (1 - Y) / componentOf(DRY_AIR).molarMass);
}

/** Latent heat [J/kg] and liquid heat capacity [J/(kg K)] of the blend sprayed, from the tables. */
function blendOf(name: FuelName) {
  const parts = componentsOf(name).map(([component, volume]) => ({
    component,
    mass: component.density * volume,
    M: molarMassOfFuel(component),
  }));
  const total = parts.reduce((sum, { mass }) => sum + mass, 0);
  const mean = (value: (part: (typeof parts)[number]) => number) =>
    parts.reduce((sum, part) => sum + (part.mass / total) * value(part), 0);
  return {
    latentHeat: (T: number) => mean(({ component, M }) => latentHeatMolar(component, T) / M),
    liquidHeatCapacity: mean(({ component, M }) => component.liquidCp / M),
  };
}

/** End temperature [K] at constant volume by bisection. */
function balance(name: FuelName, T0: number): number {
  const fuel = fuelNamed(name);
  const blend = blendOf(name);
  const air = componentOf(DRY_AIR);
  const AFR = fuel.stoichiometricAirFuelRatio;
  const meanCv = (T: number) => air.heatCapacity(0.5 * (T0 + T)) - GAS_CONSTANT / air.molarMass;
  const surplus = (T: number) => {
    const heated = blend.liquidHeatCapacity * (T - LIQUID_TEMPERATURE);
    // Energy, not enthalpy: at constant volume the vapour does no work on its surroundings.
    const latent = blend.latentHeat(T) - (GAS_CONSTANT * T) / fuel.molarMass;
    return AFR * meanCv(T) * (T0 - T) - heated - latent;
  };
  let [low, high] = [150, T0];
  for (let i = 0; i < 60; i++) {
    const middle = 0.5 * (low + high);
    if (surplus(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

describe('full evaporation', () => {
  test.each<[FuelName, number]>([
    ['iso-octane', 330],
    ['petrol', 350],
    ['ethanol', 450],
    ['methanol', 520],
  ])('%s cools the air as an enthalpy balance says', (name, T0) => {
    const ours = evaporateAll(name, T0, 1, 0.2);
    expect(ours.vapourShare).toBeCloseTo(1, 6);
    expect(Math.abs((T0 - ours.T) / (T0 - balance(name, T0)) - 1)).toBeLessThan(0.03);
    expect(Math.abs(ours.massError)).toBeLessThan(1e-10);
    expect(Math.abs(ours.energyError)).toBeLessThan(1e-10);
  });

  test.each<FuelName>(['ethanol', 'methanol'])(
    '%s at room temperature stops where the air is saturated',
    (name) => {
      const ours = evaporateAll(name, 300, 1, 0.4);
      expect(ours.vapourShare).toBeLessThan(0.95);
      const saturated = fuelNamed(name).vapourPressure(ours.T) / ours.p;
      expect(ours.moleFraction).toBeLessThan(1.005 * saturated);
      expect(ours.moleFraction).toBeGreaterThan(0.97 * saturated);
    },
  );
});
