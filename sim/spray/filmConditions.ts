/** What the gas does to each patch of film at an instant. */
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

  constructor(patches: number) {
    const field = () => new Float64Array(patches);
    this.stream = field();
    this.forward = field();
    this.backward = field();
    this.T = field();
    this.p = field();
    this.fuel = field();
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
}
