/**
 * The exact solution of the Riemann problem for a gas of constant gamma; the reference for tests.
 * Newton iteration on the pressure between the waves. Source: Toro (2009), ch. 4 (from memory).
 */

export interface RiemannState {
  /** Density, velocity and pressure in any consistent units. */
  rho: number;
  u: number;
  p: number;
}

export interface RiemannSolution {
  /** Pressure and velocity between the two acoustic waves. */
  pStar: number;
  uStar: number;
  /** Density left and right of the contact. */
  rhoStarLeft: number;
  rhoStarRight: number;
  /** The state at x/t = s, the discontinuity having been at x = 0. */
  sample(s: number): RiemannState;
}

/** Solves the problem; throws RangeError where the states would leave a vacuum between them. */
export function exactRiemann(
  left: RiemannState,
  right: RiemannState,
  gamma: number,
): RiemannSolution {
  const cL = Math.sqrt((gamma * left.p) / left.rho);
  const cR = Math.sqrt((gamma * right.p) / right.rho);
  if ((2 / (gamma - 1)) * (cL + cR) <= right.u - left.u) {
    throw new RangeError('the two states leave a vacuum between them');
  }
  const pStar = starPressure(left, right, cL, cR, gamma);
  const fL = waveFunction(pStar, left, cL, gamma);
  const fR = waveFunction(pStar, right, cR, gamma);
  const uStar = 0.5 * (left.u + right.u) + 0.5 * (fR.value - fL.value);
  const rhoStarLeft = starDensity(pStar, left, gamma);
  const rhoStarRight = starDensity(pStar, right, gamma);
  const mirror = (state: RiemannState): RiemannState => ({ ...state, u: -state.u });
  return {
    pStar,
    uStar,
    rhoStarLeft,
    rhoStarRight,
    sample: (s) =>
      s <= uStar
        ? sampleLeft(s, left, cL, pStar, uStar, rhoStarLeft, gamma)
        : mirror(sampleLeft(-s, mirror(right), cR, pStar, -uStar, rhoStarRight, gamma)),
  };
}

/** Velocity change across the wave that joins `state` to pressure p, and its derivative. */
function waveFunction(p: number, state: RiemannState, c: number, gamma: number) {
  if (p > state.p) {
    const a = 2 / ((gamma + 1) * state.rho);
    const b = ((gamma - 1) / (gamma + 1)) * state.p;
    const root = Math.sqrt(a / (p + b));
    return { value: (p - state.p) * root, slope: root * (1 - (p - state.p) / (2 * (p + b))) };
  }
  const ratio = p / state.p;
  return {
    value: ((2 * c) / (gamma - 1)) * (ratio ** ((gamma - 1) / (2 * gamma)) - 1),
    slope: ratio ** (-(gamma + 1) / (2 * gamma)) / (state.rho * c),
  };
}

function starPressure(
  left: RiemannState,
  right: RiemannState,
  cL: number,
  cR: number,
  gamma: number,
): number {
  // Start from the two-rarefaction pressure: positive, and exact where both waves are fans.
  const z = (gamma - 1) / (2 * gamma);
  const numerator = cL + cR - 0.5 * (gamma - 1) * (right.u - left.u);
  let p = (numerator / (cL / left.p ** z + cR / right.p ** z)) ** (1 / z);
  for (let i = 0; i < 100; i++) {
    const fL = waveFunction(p, left, cL, gamma);
    const fR = waveFunction(p, right, cR, gamma);
    const step = (fL.value + fR.value + right.u - left.u) / (fL.slope + fR.slope);
    const next = Math.max(p - step, 1e-3 * p);
    if (Math.abs(next - p) <= 1e-14 * p) return next;
    p = next;
  }
  return p;
}

function starDensity(p: number, state: RiemannState, gamma: number): number {
  const ratio = p / state.p;
  const k = (gamma - 1) / (gamma + 1);
  return state.rho * (ratio > 1 ? (ratio + k) / (k * ratio + 1) : ratio ** (1 / gamma));
}

function sampleLeft(
  s: number,
  state: RiemannState,
  c: number,
  pStar: number,
  uStar: number,
  rhoStar: number,
  gamma: number,
): RiemannState {
  const star = { rho: rhoStar, u: uStar, p: pStar };
  if (pStar > state.p) {
    const ratio = pStar / state.p;
    const mach = Math.sqrt((0.5 * (gamma + 1) * ratio) / gamma + (gamma - 1) / (2 * gamma));
    return s < state.u - c * mach ? state : star;
  }
  if (s < state.u - c) return state;
  if (s > uStar - Math.sqrt((gamma * pStar) / rhoStar)) return star;
  const fan = 2 / (gamma + 1) + ((gamma - 1) / ((gamma + 1) * c)) * (state.u - s);
  return {
    rho: state.rho * fan ** (2 / (gamma - 1)),
    u: (2 / (gamma + 1)) * (c + 0.5 * (gamma - 1) * state.u + s),
    p: state.p * fan ** ((2 * gamma) / (gamma - 1)),
  };
}
