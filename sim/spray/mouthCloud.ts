/**
 * Vapour in front of the mouth: blown out by reversed flow, or given off there by drops.
 *
 * What leaves stands as a column as long as its jet has come, and wide as that spreads (mouthFlow.ts).
 * Inflow then empties a half sphere in front of the mouth,
 *
 *   r = (3 V / 2 pi)^(1/3)      V volume drawn in since the flow turned [m^3]
 *
 * and takes back the part of the column within it. What is left when an induction ends (an inflow of
 * more than half the swept volume) is lost; what waves push out and in between is not. Geometry
 * alone; no constant is fitted. Wind, and a neighbour's mouth, are left out.
 */
import { cubeRoot } from '../elementary/powers.ts';
import { FRONT } from './mouthFlow.ts';
import type { SprayLedger } from './sprayLedger.ts';

export class MouthCloud {
  /** Vapour [kg] and its energy [J]; the energy counts the cold of drops that evaporated here. */
  mass = 0;
  energy = 0;
  /** What has come back since it was last collected: vapour [kg], energy [J]. */
  readonly back = { mass: 0, energy: 0 };
  /** How far the jet has come since the flow last turned out [m]. */
  front = 0;
  /** Length of the column [m]. */
  private length = 0;
  private drawnVolume = 0;
  private drawnShare = 0;
  private inwards = false;
  private readonly area: number;
  private readonly induction: number;

  /** @param sweptVolume of the cylinder [m^3] */
  constructor(mouthArea: number, sweptVolume: number) {
    this.area = mouthArea;
    this.induction = 0.5 * sweptVolume;
  }

  /** Stands as another did. */
  takeOver(from: MouthCloud): void {
    Object.assign(this, from, { back: { ...from.back } });
  }

  /** Mass fraction of vapour in the column [-], the rest air of density rho [kg/m^3]. */
  concentration(rho: number): number {
    const area = this.area / FRONT;
    const air = rho * area * Math.max(this.length, Math.sqrt(area));
    return this.mass / (air + this.mass);
  }

  /** Takes vapour [kg] and energy [J] given off at distance z [m] in front of the mouth. */
  add(mass: number, energy: number, z: number): void {
    this.mass += mass;
    this.energy += energy;
    this.length = Math.max(this.length, z);
  }

  /** Gas flowed out of the mouth: travel of the column [m], with its vapour. */
  out(travel: number, mass: number, energy: number, ledger: SprayLedger): void {
    if (this.inwards) this.turn(ledger);
    this.length += FRONT * travel;
    this.front += FRONT * travel;
    this.mass += mass;
    this.energy += energy;
    ledger.blownMass += mass;
    ledger.blownEnergy += energy;
  }

  /** Gas flowed in: volume [m^3]; what comes back with it gathers in `back`. */
  in(volume: number): void {
    this.inwards = true;
    this.drawnVolume += volume;
    const reach = cubeRoot((1.5 / Math.PI) * this.drawnVolume);
    const share = this.length > 0 ? Math.min(1, reach / this.length) : 1;
    const now = this.drawnShare < 1 ? (share - this.drawnShare) / (1 - this.drawnShare) : 1;
    this.drawnShare = Math.max(share, this.drawnShare);
    const part = Math.max(now, 0);
    const mass = part * this.mass;
    const energy = part * this.energy;
    this.mass -= mass;
    this.energy -= energy;
    this.back.mass += mass;
    this.back.energy += energy;
  }

  private turn(ledger: SprayLedger): void {
    if (this.drawnVolume > this.induction) {
      ledger.lostMass += this.mass;
      ledger.lostEnergy += this.energy;
      this.mass = 0;
      this.energy = 0;
      this.length = 0;
    }
    this.front = 0;
    this.drawnVolume = 0;
    this.drawnShare = 0;
    this.inwards = false;
  }
}
