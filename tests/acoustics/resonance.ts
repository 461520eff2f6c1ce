/**
 * Natural frequencies of pipes: closed forms, and chains of ducts by their transfer matrix.
 *
 *   quarter wave        f = (2n - 1) c / (4 L)
 *   closed-open cone    tan(k L) = -k x1,  x1 = r1 L / (r2 - r1), closed at the narrow end
 *   Helmholtz           f = c / (2 pi) sqrt(S / (V L'))
 *
 * Frequencies [Hz]; L, L' lengths with end corrections [m]; S neck area [m^2]; V volume [m^3].
 * Sources: Fletcher & Rossing, The Physics of Musical Instruments, ch. 8; Rayleigh, The Theory of
 * Sound, secs. 303-314. Valid without loss and mean flow, for plane waves; Helmholtz for kL' << 1.
 */
import {
  areaOf,
  type DuctSection,
  fourPoleDucts,
  type Medium,
  waveNumber,
} from './transferMatrix.ts';

/** Frequency of mode 1, 2, 3, ... of a straight pipe with one end closed and one open. */
export function quarterWaveFrequency(length: number, soundSpeed: number, mode = 1): number {
  return ((2 * mode - 1) * soundSpeed) / (4 * length);
}

/** Frequency of a volume behind a neck. */
export function helmholtzFrequency(
  neckArea: number,
  neckLength: number,
  volume: number,
  soundSpeed: number,
): number {
  return (soundSpeed / (2 * Math.PI)) * Math.sqrt(neckArea / (volume * neckLength));
}

/** Lowest frequency of a cone closed at radius r1 and open (p = 0) at radius r2 > r1 [m]. */
export function closedConeFrequency(
  length: number,
  r1: number,
  r2: number,
  soundSpeed: number,
): number {
  const x1 = (r1 * length) / (r2 - r1);
  // sin(kL) + k x1 cos(kL) keeps its sign change where tan has a pole.
  const residual = (kL: number) => Math.sin(kL) + (kL / length) * x1 * Math.cos(kL);
  return (bisect(residual, Math.PI / 2, Math.PI) * soundSpeed) / (2 * Math.PI * length);
}

/**
 * Natural frequencies below `limit` [Hz] of ducts closed at side 1 by a volume [m^3] (0: a rigid
 * wall) and open at side 2, p = 0 at a distance `endCorrection` [m] beyond it.
 */
export function naturalFrequencies(
  sections: readonly DuctSection[],
  closing: { volume: number; endCorrection: number; limit: number },
  medium: Medium,
): number[] {
  const mouth = sections.at(-1)!.diameter2;
  const length = closing.endCorrection;
  const chain =
    length > 0 ? [...sections, { length, diameter1: mouth, diameter2: mouth }] : sections;
  const stiffness = (medium.density * medium.soundSpeed ** 2) / closing.volume;
  // U1 = -i omega V/(rho c^2) p1 with p1 = B U2, U1 = D U2; B is imaginary, D real without loss.
  const residual = (frequency: number) => {
    const { B, D } = fourPoleDucts(chain, () => waveNumber(frequency, medium), medium);
    return D.re - (2 * Math.PI * frequency * B.im) / stiffness;
  };
  return signChanges(residual, closing.limit, 400).map(([low, high]) =>
    bisect(residual, low, high),
  );
}

/** Area [m^2] of the straight duct with the same inertia as the chain, for the same length. */
export function inertialArea(sections: readonly DuctSection[]): number {
  const length = sections.reduce((sum, section) => sum + section.length, 0);
  // Integral of dx/S along a cone is L / (pi/4 d1 d2).
  const inertia = sections.reduce(
    (sum, { length: L, diameter1, diameter2 }) =>
      sum + L / areaOf(Math.sqrt(diameter1 * diameter2)),
    0,
  );
  return length / inertia;
}

function signChanges(f: (x: number) => number, limit: number, steps: number): [number, number][] {
  const xs = Array.from({ length: steps }, (_, i) => (limit * (i + 1)) / steps);
  const ys = xs.map(f);
  return xs
    .slice(1)
    .flatMap((x, i): [number, number][] => (ys[i]! * ys[i + 1]! < 0 ? [[xs[i]!, x]] : []));
}

function bisect(f: (x: number) => number, low: number, high: number): number {
  const rising = f(high) > 0;
  let [a, b] = [low, high];
  while (b - a > 1e-12 * high) {
    const middle = (a + b) / 2;
    if (f(middle) > 0 === rising) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}
