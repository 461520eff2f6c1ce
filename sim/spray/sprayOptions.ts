/** What a spray is given: injectors, fuel, and the intake and cylinder it is sprayed into. */
import type { DuctEnd } from '../boundary/ductEnd.ts';
import type { Cylinder } from '../cylinder/cylinder.ts';
import type { Gas } from '../gas/gas.ts';
import type { InjectorsSpecification } from '../injectors.ts';
import type { LiquidFuel } from './liquidFuel.ts';

export interface SprayOptions {
  injectors: InjectorsSpecification;
  fuel: LiquidFuel;
  gas: Gas;
  /** Ducts with their ends. */
  mouth: DuctEnd;
  intakeValve: DuctEnd;
  cylinder: Cylinder;
  /** Distance of the rim plane behind x = 0 of the trumpet duct [m]; negative in front of it. */
  rim: number;
  /** Share of the bore that the plate blocks [-] and the width of what blocks it [m]. */
  plate: { blocked: number; width: number };
  /** Intake valves: diameter of one [m], how many. */
  valve: { diameter: number; count: number };
  /** Bore [m] and swept volume [m^3] of the cylinder. */
  bore: number;
  sweptVolume: number;
  outside: { temperature: number; pressure: number };
  /** Speed [rpm]. */
  speed: number;
  /** Crank angles of this cylinder [deg]: valve opening and closing. */
  angles: { open: number; close: number };
  /** Air per fuel as burned, by mass [-]. */
  airFuelRatio: number;
  /** Air of a full cylinder at ambient density [kg]. */
  fullAir: number;
}
