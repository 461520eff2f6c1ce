/**
 * Root of a monotone function in a bracket, by secant steps that fall back to bisection. A search
 * is made once for each boundary and remembers the last root and slope: from step to step both
 * change little, so that two or three evaluations serve.
 */

/** A function whose root is sought. */
export interface Residual {
  at(x: number): number;
}

/** Share of the bracket at which the root counts as found: gas all but at rest needs its own scale. */
const TOLERANCE = 1e-10;
/** Relative spacing of floating-point numbers. */
const ROUND_OFF = 2.3e-16;
/** First step where no slope is known, as a share of the way to the bracket's end. */
const FIRST_STEP = 1e-3;
const MOST_STEPS = 100;

export class RootSearch {
  private readonly sign: number;
  private root = Number.NaN;
  private slope = Number.NaN;

  /** `falling`: the function falls from positive to negative; it rises otherwise. */
  constructor(falling: boolean) {
    this.sign = falling ? 1 : -1;
  }

  /** The x in [low, high] where f changes sign; an end of the bracket where it does not. */
  find(f: Residual, low: number, high: number): number {
    const { sign } = this;
    const tolerance = Math.max(TOLERANCE * (high - low), ROUND_OFF * Math.abs(high));
    let a = low;
    let b = high;
    let x0 = this.root > a && this.root < b ? this.root : 0.5 * (a + b);
    let y0 = sign * f.at(x0);
    if (y0 > 0) a = x0;
    else b = x0;
    const step = y0 === 0 ? 0 : -y0 / this.slope;
    let x = x0 + step;
    if (!(x > a && x < b)) x = x0 + FIRST_STEP * ((y0 > 0 ? b : a) - x0);
    for (let i = 0; i < MOST_STEPS && x !== x0; i++) {
      const y = sign * f.at(x);
      if (y > 0) a = x;
      else b = x;
      const slope = (y - y0) / (x - x0);
      // A slope taken over a step of round-off tells nothing.
      if (slope < 0 && Math.abs(x - x0) > tolerance) this.slope = slope;
      const secant = x - y / this.slope;
      const settled = Math.abs(secant - x) <= tolerance && secant >= low && secant <= high;
      x0 = x;
      y0 = y;
      if (settled) {
        x = secant;
        break;
      }
      if (b - a <= tolerance) break;
      x = secant > a && secant < b ? secant : 0.5 * (a + b);
    }
    this.root = x;
    return x;
  }
}
