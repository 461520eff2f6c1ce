/** A drop of iso-octane at rest in still air of one atmosphere. */
import { componentOf, DRY_AIR } from '../../../sim/gas/component.ts';
import { fuelNamed } from '../../../sim/gas/fuel.ts';
import { Gas } from '../../../sim/gas/gas.ts';
import { dropDiameter, evaporateDrop } from '../../../sim/spray/droplet.ts';
import { wetSurface } from '../../../sim/spray/evaporation.ts';
import { liquidFuel } from '../../../sim/spray/liquidFuel.ts';

export interface DropLife {
  /** Temperature it settles to [K]. */
  wetBulb: number;
  /** Spalding number there [-]. */
  B: number;
  /** Rate at which d^2 falls there [mm^2/s]. */
  K: number;
  /** Time until it is gone [s]. */
  life: number;
}

/** Follows a drop of this diameter [m] that starts at its wet-bulb temperature, air at T [K]. */
export function dropLife(diameter: number, T: number): DropLife {
  const fuel = liquidFuel('iso-octane');
  const air = componentOf(DRY_AIR);
  const { molarMass, vapourHeatCapacity } = fuelNamed('iso-octane');
  // Nothing burns here: the products are of no account.
  const gas = new Gas(air, air, { molarMass, heatCapacity: vapourHeatCapacity });
  const around = { T, p: 101325, fuel: 0 };
  const surface = wetSurface(fuel);
  const mass = (Math.PI / 6) * diameter ** 3 * fuel.parts[0]!.density;
  const drop = { mass: Float64Array.of(mass), T };
  const dt = 2e-4 * (diameter / 50e-6) ** 2;
  for (let i = 0; i < 2000; i++) {
    drop.mass[0] = mass;
    evaporateDrop(fuel, gas, drop, around, 0, dt, surface);
  }
  drop.mass[0] = mass;
  const result = { wetBulb: drop.T, B: surface.B, K: 0, life: 0 };
  let time = 0;
  while (dropDiameter(fuel, drop) > 0.05 * diameter) {
    evaporateDrop(fuel, gas, drop, around, 0, dt, surface);
    time += dt;
  }
  const left = dropDiameter(fuel, drop);
  const K = (diameter ** 2 - left ** 2) / time;
  return { ...result, K: K * 1e6, life: diameter ** 2 / K };
}
