/**
 * Four-pole matrices of what sound passes through, exp(i omega t).
 *
 *   [p1]   [A B] [p2]      p  acoustic pressure [Pa]
 *   [U1] = [C D] [U2]      U  volume velocity from side 1 to side 2 [m^3/s]
 *
 * Source: Munjal, Acoustics of Ducts and Mufflers, ch. 2-3 (from memory). Of what gives back what it
 * takes the determinant is 1. For small amplitude.
 */
import type Complex from 'complex.js';
import { ONE, real, ZERO } from './complex.ts';

/** p1 = A p2 + B U2, U1 = C p2 + D U2. */
export interface FourPole {
  A: Complex;
  B: Complex;
  C: Complex;
  D: Complex;
}

/** Matrix of nothing at all. */
export const FOUR_POLE_IDENTITY: FourPole = { A: ONE, B: ZERO, C: ZERO, D: ONE };

/** Matrix of `first` followed by `second`. */
export function fourPoleChain(first: FourPole, second: FourPole): FourPole {
  return {
    A: first.A.mul(second.A).add(first.B.mul(second.C)),
    B: first.A.mul(second.B).add(first.B.mul(second.D)),
    C: first.C.mul(second.A).add(first.D.mul(second.C)),
    D: first.C.mul(second.B).add(first.D.mul(second.D)),
  };
}

/** Admittance U1/p1 [m^3/(Pa s)] of a matrix that ends in the admittance U2/p2, 0 where it is shut. */
export function fourPoleAdmittance({ A, B, C, D }: FourPole, end: Complex): Complex {
  return D.mul(end).add(C).div(B.mul(end).add(A));
}

/** Pressure p2/p1 at the end of a matrix that ends in the admittance U2/p2. */
export function fourPolePressure({ A, B }: FourPole, end: Complex): Complex {
  return ONE.div(B.mul(end).add(A));
}

/** Matrix of a resistance p/U on the way [Pa s/m^3], such as a jet made linear. */
export function fourPoleResistance(resistance: number): FourPole {
  return { A: ONE, B: real(resistance), C: ZERO, D: ONE };
}
