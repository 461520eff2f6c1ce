/**
 * Four-pole matrices (sim/acoustics/fourPole.ts) of plane and spherical waves in ducts, exp(i omega t).
 *
 * A conical duct carries spherical waves p = psi/x with x counted from the apex of the cone
 * (negative and rising where the duct narrows); psi'' + k^2 psi = 0, i omega rho U = -S dp/dx.
 *
 * Sources: Fletcher & Rossing, The Physics of Musical Instruments, ch. 8; Munjal, Acoustics of
 * Ducts and Mufflers, ch. 2-3. Derived here from the wave equation; determinant is 1.
 * Valid for small amplitude, no mean flow, below the cut-on of cross modes (ka < 1.84).
 */
import Complex from 'complex.js';
import { ONE, ZERO } from '../../sim/acoustics/complex.ts';
import { FOUR_POLE_IDENTITY, type FourPole, fourPoleChain } from '../../sim/acoustics/fourPole.ts';

/** The resting gas that carries sound. */
export interface Medium {
  /** Density [kg/m^3]. */
  density: number;
  /** Speed of sound [m/s]. */
  soundSpeed: number;
}

/** A round duct whose diameter runs straight from side 1 to side 2 [m]. */
export interface DuctSection {
  length: number;
  diameter1: number;
  diameter2: number;
}

const I = new Complex(0, 1);

/** Cross-sectional area [m^2] of a diameter [m]. */
export function areaOf(diameter: number): number {
  return (Math.PI / 4) * diameter * diameter;
}

/** Impedance p1/U1 [Pa s/m^3] of a matrix that ends in the impedance p2/U2. */
export function fourPoleImpedance({ A, B, C, D }: FourPole, end: Complex): Complex {
  return A.mul(end).add(B).div(C.mul(end).add(D));
}

/** Plane-wave impedance rho c / S [Pa s/m^3] of a duct of this diameter [m]. */
export function planeImpedance(diameter: number, medium: Medium): number {
  return (medium.density * medium.soundSpeed) / areaOf(diameter);
}

/**
 * Wave number [1/m] with viscous and thermal loss at the wall: omega/c - i alpha, where
 * alpha = 3e-5 sqrt(f) / a for air near room temperature. Fletcher & Rossing eq. 8.15 (from
 * memory); laminar boundary layer, thin beside the radius: at a shear wave number of 5 the loss
 * comes out 20 % low, at 10 still 10 % (sim/acoustics/line.ts has the whole law); pipes here have 100 and
 * more. The small change of phase speed is left out.
 */
export function waveNumberWithLoss(frequency: number, diameter: number, medium: Medium): Complex {
  const alpha = (3e-5 * Math.sqrt(frequency)) / (diameter / 2);
  return new Complex((2 * Math.PI * frequency) / medium.soundSpeed, -alpha);
}

/** Wave number omega/c [1/m] without loss. */
export function waveNumber(frequency: number, medium: Medium): Complex {
  return new Complex((2 * Math.PI * frequency) / medium.soundSpeed, 0);
}

/** Matrix of a cylindrical duct of length L [m]. */
export function fourPoleUniform(
  length: number,
  diameter: number,
  k: Complex,
  medium: Medium,
): FourPole {
  const Z = planeImpedance(diameter, medium);
  const phase = k.mul(length);
  const cos = phase.cos();
  const iSin = phase.sin().mul(I);
  return { A: cos, B: iSin.mul(Z), C: iSin.div(Z), D: cos };
}

/** Matrix of a conical or cylindrical duct; k must not be 0 in a cone. */
export function fourPoleDuct(section: DuctSection, k: Complex, medium: Medium): FourPole {
  const { length, diameter1, diameter2 } = section;
  const slope = (diameter2 - diameter1) / length;
  // Below a taper of 1e-6 the apex is so far away that the cone cancels badly.
  if (Math.abs(slope) < 1e-6) return fourPoleUniform(length, diameter1, k, medium);
  const x1 = diameter1 / slope;
  const x2 = diameter2 / slope;
  const ratio = x2 / x1;
  const cos = k.mul(length).cos();
  const sin = k.mul(length).sin();
  const A = cos.mul(ratio).sub(sin.div(k.mul(x1)));
  const B = sin.mul(I).mul(ratio * planeImpedance(diameter2, medium));
  // U1 = i S1/(rho c k) dp1/dx, with x1 dp1/dx = dpsi1/dx - p1.
  const slopeOfP = sin.mul(k).mul(x2).add(cos).sub(A).div(x1);
  const C = slopeOfP.mul(I).div(k.mul(planeImpedance(diameter1, medium)));
  const D = cos.add(sin.div(k.mul(x1))).div(ratio);
  return { A, B, C, D };
}

/** Matrix of ducts in series, the first at side 1; `wave` gives the wave number in each. */
export function fourPoleDucts(
  sections: readonly DuctSection[],
  wave: (section: DuctSection) => Complex,
  medium: Medium,
): FourPole {
  return sections.reduce(
    (matrix, section) => fourPoleChain(matrix, fourPoleDuct(section, wave(section), medium)),
    FOUR_POLE_IDENTITY,
  );
}

/** Matrix of a volume [m^3] on the way, small beside a wave length: same p, U1 - U2 fills it. */
export function fourPoleVolume(volume: number, frequency: number, medium: Medium): FourPole {
  const compliance = volume / (medium.density * medium.soundSpeed ** 2);
  const C = new Complex(0, 2 * Math.PI * frequency * compliance);
  return { A: ONE, B: ZERO, C, D: ONE };
}

/** The same ducts seen from the other end. */
export function reversedDucts(sections: readonly DuctSection[]): DuctSection[] {
  return sections
    .map(({ length, diameter1, diameter2 }) => ({
      length,
      diameter1: diameter2,
      diameter2: diameter1,
    }))
    .reverse();
}
