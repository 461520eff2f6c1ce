/**
 * The books of a film over one cycle, and from them the film that would lie after a longer time.
 *
 *   dm_i/dt = landed_i + ahead_i(k - 1) + back_i(k + 1) - (e_i W + f V + b V) m_i
 *
 *   W = w(M) / w(Mean),  w = min(1, M / thin) / M    wet area a mass: evaporation, patchy or whole
 *   V = v(M) / v(Mean),  v = max(M, thin)            thickness: transport, patchy or whole
 *   e, f, b   what a cycle took as vapour, ahead and back over what lay there on its mean [1/s]
 *   thin      mass of a patch that is just wet all over [kg]
 *
 * A film whose cycle takes as much as it brings stays as it is: this has the fixed point of the cycle
 * itself, whatever the cycle did, and only the way there is short. Source: balance of a patch, our own.
 */
import { totalMass } from './liquidFuel.ts';

/** Step [s]; longer than the quickest patches take, which it does not put off their balance. */
const STEP = 0.02;
/** A patch with less [kg] is left alone: nothing is known of what it loses. */
export const NOTHING = 1e-13;

type Rows = Float64Array<ArrayBufferLike>[];

/** Sums over a cycle, by patch and component. */
export class FilmBooks {
  /**
   * Landed as drops, given off as vapour, moved to the next patch towards the valve and
   * the mouth, run off into the cylinder [kg].
   */
  readonly landed: Rows;
  readonly vapour: Rows;
  readonly ahead: Rows;
  readonly back: Rows;
  readonly runOff: Rows;
  /** What lay there, summed over time [kg s], and that time [s]. */
  private readonly lay: Rows;
  private time = 0;

  constructor(patches: number, parts: number) {
    const rows = () => Array.from({ length: patches }, () => new Float64Array(parts));
    this.landed = rows();
    this.vapour = rows();
    this.ahead = rows();
    this.back = rows();
    this.runOff = rows();
    this.lay = rows();
  }

  /** Notes that `film` lay for dt [s]. */
  add(film: Rows, dt: number): void {
    this.time += dt;
    for (let k = 0; k < film.length; k++)
      for (let i = 0; i < film[k]!.length; i++) this.lay[k]![i]! += film[k]![i]! * dt;
  }

  clear(): void {
    for (const rows of [this.landed, this.vapour, this.ahead, this.back, this.runOff, this.lay])
      for (const row of rows) row.fill(0);
    this.time = 0;
  }

  /** Mean masses of the cycle, and what they come to after `duration` [s] [kg]; `thin` by patch [kg]. */
  after(duration: number, thin: ArrayLike<number>): { mean: Rows; later: Rows } {
    const mean: Rows = this.lay.map((row) => row.map((x) => (this.time > 0 ? x / this.time : 0)));
    let later: Rows = mean;
    if (this.time <= 0) return { mean, later };
    const rates = new Rates(this, mean, this.time);
    for (let t = 0; t < duration; t += STEP) later = rates.step(later, thin);
    return { mean, later };
  }
}

/** What a cycle took from its mean film and brought to it. */
class Rates {
  private readonly mean: Rows;
  /** Brought from outside the film [kg/s]; taken of what lies there [1/s]. */
  private readonly brought: Rows;
  private readonly vapour: Rows;
  private readonly ahead: Rows;
  private readonly back: Rows;
  /** Ahead, back and into the cylinder together [1/s]. */
  private readonly moved: Rows;

  constructor(books: FilmBooks, mean: Rows, time: number) {
    const rate = (rows: Rows): Rows =>
      rows.map((row, k) =>
        row.map((m, i) => (mean[k]![i]! > NOTHING ? m / time / mean[k]![i]! : 0)),
      );
    this.mean = mean;
    // Vapour that condensed comes from outside.
    this.brought = books.landed.map((row, k) =>
      row.map((m, i) => (m + Math.max(-books.vapour[k]![i]!, 0)) / time),
    );
    this.vapour = rate(books.vapour).map((row) => row.map((e) => Math.max(e, 0)));
    this.ahead = rate(books.ahead);
    this.back = rate(books.back);
    const off = rate(books.runOff);
    this.moved = off.map((row, k) => row.map((m, i) => m + this.ahead[k]![i]! + this.back[k]![i]!));
  }

  /** A step on, implicit in what leaves a patch. */
  step(film: Rows, thin: ArrayLike<number>): Rows {
    const thick = film.map((row, k) =>
      thickness(totalMass(row), totalMass(this.mean[k]!), thin[k]!),
    );
    const moved = (from: Rows, k: number, i: number) =>
      film[k] ? from[k]![i]! * thick[k]!.transport * film[k]![i]! : 0;
    return film.map((row, k) =>
      row.map((m, i) => {
        const { transport, wet } = thick[k]!;
        const taken = this.vapour[k]![i]! * wet + this.moved[k]![i]! * transport;
        const came =
          this.brought[k]![i]! + moved(this.ahead, k - 1, i) + moved(this.back, k + 1, i);
        return (m + STEP * came) / (1 + STEP * taken);
      }),
    );
  }
}

/** Transport and wet area a mass, over those of the mean film [-]. */
function thickness(mass: number, mean: number, thin: number): { transport: number; wet: number } {
  const transport = Math.max(mass, thin) / Math.max(mean, thin);
  return { transport, wet: 1 / transport };
}

/** A film of now [kg] after what its mean over a cycle does [kg]; stays above nothing. */
export function followed(now: number, mean: number, later: number): number {
  return later >= mean ? now + later - mean : (now * later) / mean;
}
