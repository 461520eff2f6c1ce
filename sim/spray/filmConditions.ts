/**
 * What the gas does to each patch of film: at an instant, or as the mean of a cycle.
 *
 * Transfer follows the stream, so temperatures and vapour are averaged with it as weight; shear is
 * averaged apart for both ways.
 */
import type { IntakeLine } from './intakeLine.ts';

export class FilmConditions {
  /** (f/2) rho |u| [kg/(m^2 s)]. */
  readonly stream: Float64Array;
  /** (f/2) rho u^2 towards the valve, and towards the mouth [Pa]; at the seat only while it is open. */
  readonly forward: Float64Array;
  readonly backward: Float64Array;
  /** Temperature [K], pressure [Pa] and mass fraction of vapour [-] of the gas. */
  readonly T: Float64Array;
  readonly p: Float64Array;
  readonly fuel: Float64Array;
  private readonly weight: Float64Array;
  private time = 0;

  constructor(patches: number) {
    const field = () => new Float64Array(patches);
    this.stream = field();
    this.forward = field();
    this.backward = field();
    this.T = field();
    this.p = field();
    this.fuel = field();
    this.weight = field();
  }

  /** Sets the conditions of this instant. */
  read(line: IntakeLine, valveOpen: boolean): void {
    const last = line.cells;
    for (let k = 0; k <= last; k++) {
      const cell = k < last ? k : last - 1;
      const u = line.u[cell]!;
      const stream = 0.5 * line.fanning(cell) * line.rho[cell]! * Math.abs(u);
      this.stream[k] = stream;
      const atSeat = k >= last - 1;
      this.forward[k] = u > 0 && (!atSeat || valveOpen) ? stream * u : 0;
      this.backward[k] = u < 0 && k !== last ? -stream * u : 0;
      this.T[k] = line.T[cell]!;
      this.p[k] = line.p[cell]!;
      this.fuel[k] = line.fuel[cell]!;
    }
  }

  /** Adds another's conditions over dt [s] to a mean in the making. */
  add(now: FilmConditions, dt: number): void {
    this.time += dt;
    for (let k = 0; k < this.stream.length; k++) {
      // A trace of weight where the gas stands still.
      const weight = (now.stream[k]! + 1e-6) * dt;
      this.weight[k]! += weight;
      this.stream[k]! += now.stream[k]! * dt;
      this.forward[k]! += now.forward[k]! * dt;
      this.backward[k]! += now.backward[k]! * dt;
      this.p[k]! += now.p[k]! * dt;
      this.T[k]! += now.T[k]! * weight;
      this.fuel[k]! += now.fuel[k]! * weight;
    }
  }

  /** Turns the sums into means; returns the time they cover [s]. */
  average(): number {
    const { time } = this;
    for (let k = 0; k < this.stream.length; k++) {
      for (const field of [this.stream, this.forward, this.backward, this.p]) field[k]! /= time;
      this.T[k]! /= this.weight[k]!;
      this.fuel[k]! /= this.weight[k]!;
    }
    return time;
  }

  clear(): void {
    for (const field of [this.stream, this.forward, this.backward, this.p, this.T, this.fuel]) {
      field.fill(0);
    }
    this.weight.fill(0);
    this.time = 0;
  }
}
