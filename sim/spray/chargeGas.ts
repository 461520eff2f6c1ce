/**
 * The gas in the cylinder as drops see it, and the liquid that has met the cylinder's walls.
 *
 * Closure: drops fly into gas at rest, are braked and evaporate by the laws of droplet.ts; one that
 * has flown the length of the bore lies on the wall. Liquid on the walls, and film that ran in
 * through the seat, evaporates with the wall's heat by the start of the burn; drops that are left
 * then go with the gas's.
 */
import type { Volume } from '../boundary/reservoir.ts';
import type { Gas } from '../gas/gas.ts';
import type { SprayCouplingSpecification } from '../injectors.ts';
import type { Surroundings } from './evaporation.ts';
import type { Runoff } from './filmOptions.ts';
import { type LiquidFuel, totalMass } from './liquidFuel.ts';
import type { SprayLedger } from './sprayLedger.ts';

export class ChargeGas {
  /** Liquid on the walls. */
  readonly wall: Runoff;
  /** Vapour given off here that the coupling keeps from the gas, since the last closing [kg]. */
  withheld = 0;
  /** Whether the coupling's limits hold here: only until the valve closes. */
  limited = true;
  private readonly volume: Volume;
  private readonly gas: Gas;
  private T = 300;
  private fuel = 0;

  constructor(volume: Volume, liquid: LiquidFuel, gas: Gas) {
    this.volume = volume;
    this.gas = gas;
    this.wall = { mass: new Float64Array(liquid.parts.length), energy: 0 };
  }

  /** Liquid on the walls, as another had it. */
  takeOver({ wall, limited, withheld }: ChargeGas): void {
    this.wall.mass.set(wall.mass);
    this.wall.energy = wall.energy;
    this.limited = limited;
    this.withheld = withheld;
  }

  /** Reads the state of the cylinder. */
  read(): void {
    this.T = this.volume.temperature;
    this.fuel = this.volume.contents.fuel / this.volume.contents.mass;
  }

  around(out: Surroundings): void {
    out.T = this.T;
    out.p = this.volume.pressure;
    out.fuel = this.fuel;
  }

  /** Takes vapour [kg] and energy [J], the loss of a liquid. */
  give(
    vapour: number,
    energy: number,
    books: { coupling: SprayCouplingSpecification; ledger: SprayLedger },
  ): void {
    const { coupling, ledger } = books;
    const own = this.gas.internalEnergy(this.T, 0, 1);
    const mass = coupling.vapour !== 'off' || !this.limited ? vapour : 0;
    const cools = coupling.heat !== 'off' || !this.limited;
    const heat = mass * own + (cools ? energy - vapour * own : 0);
    this.volume.add({ mass, fuel: mass, energy: heat });
    ledger.withheldMass += vapour - mass;
    ledger.withheldEnergy += energy - heat;
    this.withheld += vapour - mass;
    const { contents } = this.volume;
    const burned = contents.burned / contents.mass;
    this.fuel = contents.fuel / contents.mass;
    const cv = this.gas.heatCapacityVolume(this.T, burned, this.fuel);
    this.T += (heat - mass * own) / (contents.mass * cv);
  }

  /** What is felt at the valve only: heat [J] drawn from the charge, vapour [kg] that joins it. */
  atValve(heat: number, vapour: number, ledger: SprayLedger): void {
    const energy = vapour * this.gas.internalEnergy(this.T, 0, 1) - heat;
    this.volume.add({ mass: vapour, fuel: vapour, energy });
    ledger.withheldMass -= vapour;
    ledger.withheldEnergy -= energy;
  }

  /** Drops that lie on the walls from now on. */
  wet(mass: Float64Array, count: number, energy: number): void {
    for (let i = 0; i < mass.length; i++) this.wall.mass[i]! += count * mass[i]!;
    this.wall.energy += energy;
  }

  /** The liquid on the walls joins the gas as vapour of the gas's temperature, by the wall's heat. */
  dryWalls(ledger: SprayLedger): void {
    const mass = totalMass(this.wall.mass);
    if (mass <= 0) return;
    const energy = mass * this.gas.internalEnergy(this.T, 0, 1);
    this.volume.add({ mass, fuel: mass, energy });
    ledger.wallHeat += energy - this.wall.energy;
    this.wall.mass.fill(0);
    this.wall.energy = 0;
  }
}
