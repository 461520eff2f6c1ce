/** Transfer matrices; published frequencies are in tests/prove/pipeAcoustics.ts. */
import { describe, expect, it } from 'vitest';
import { fourPoleChain } from '../../sim/acoustics/fourPole.ts';
import { helmholtzFrequency, inertialArea, naturalFrequencies } from '../acoustics/resonance.ts';
import {
  type DuctSection,
  fourPoleDuct,
  fourPoleDucts,
  fourPoleImpedance,
  fourPoleVolume,
  planeImpedance,
  reversedDucts,
  waveNumber,
} from '../acoustics/transferMatrix.ts';

const air = { density: 1.2041, soundSpeed: 343.2 };
const limit = 1500;
const straight = (length: number, diameter: number): DuctSection => ({
  length,
  diameter1: diameter,
  diameter2: diameter,
});

describe('cone closed at its narrow end', () => {
  it('keeps its frequencies when cut into ten pieces', () => {
    const at = (x: number) => 0.038 + (0.012 * x) / 0.35;
    const pieces = Array.from({ length: 10 }, (_, i) => ({
      length: 0.035,
      diameter1: at(0.035 * i),
      diameter2: at(0.035 * (i + 1)),
    }));
    const closing = { volume: 0, endCorrection: 0.01, limit };
    const whole = naturalFrequencies(
      [{ length: 0.35, diameter1: 0.038, diameter2: 0.05 }],
      closing,
      air,
    );
    const cut = naturalFrequencies(pieces, closing, air);
    expect(whole.length).toBeGreaterThan(2);
    whole.forEach((frequency, i) => {
      expect(cut[i]).toBeCloseTo(frequency, 6);
    });
  });
});

describe('Helmholtz resonator of 1 litre, neck 20 mm x 50 mm', () => {
  const area = Math.PI * 0.01 ** 2;

  it('is the low-frequency limit of the transfer matrix', () => {
    const closing = { volume: 1e-3, endCorrection: 0, limit: 500 };
    const [lowest] = naturalFrequencies([straight(0.05, 0.02)], closing, air);
    // Next term of the series: the neck counts as a third of its own volume.
    const corrected = helmholtzFrequency(area, 0.05, 1e-3 + (area * 0.05) / 3, 343.2);
    expect(lowest! / corrected).toBeCloseTo(1, 4);
  });
});

describe('four-pole matrices', () => {
  const chain = [
    straight(0.1, 0.04),
    { length: 0.2, diameter1: 0.04, diameter2: 0.06 },
    { length: 0.05, diameter1: 0.06, diameter2: 0.03 },
  ];
  const k = waveNumber(370, air);

  it('have determinant 1', () => {
    const { A, B, C, D } = fourPoleDucts(chain, () => k, air);
    const determinant = A.mul(D).sub(B.mul(C));
    expect(determinant.re).toBeCloseTo(1, 10);
    expect(determinant.im).toBeCloseTo(0, 10);
  });

  it('turned round swap A and D', () => {
    const there = fourPoleDucts(chain, () => k, air);
    const back = fourPoleDucts(reversedDucts(chain), () => k, air);
    expect(back.A.re).toBeCloseTo(there.D.re, 10);
    expect(back.D.re).toBeCloseTo(there.A.re, 10);
    expect(back.B.im / there.B.im).toBeCloseTo(1, 10);
    expect(back.C.im / there.C.im).toBeCloseTo(1, 10);
  });

  it('of a slight cone tend to those of a cylinder', () => {
    const cone = fourPoleDuct({ length: 0.3, diameter1: 0.05, diameter2: 0.050003 }, k, air);
    const pipe = fourPoleDuct(straight(0.3, 0.05), k, air);
    expect(cone.A.re).toBeCloseTo(pipe.A.re, 3);
    expect(cone.B.im / pipe.B.im).toBeCloseTo(1, 3);
    expect(cone.C.im / pipe.C.im).toBeCloseTo(1, 3);
  });

  it('carry a matched pipe as its own impedance', () => {
    const Z = planeImpedance(0.05, air);
    const pipe = fourPoleDuct(straight(0.3, 0.05), k, air);
    const seen = fourPoleImpedance(pipe, pipe.A.mul(0).add(Z));
    expect(seen.re / Z).toBeCloseTo(1, 10);
    expect(seen.im / Z).toBeCloseTo(0, 10);
  });

  it('of a volume give the same frequency as a volume at the closed end', () => {
    const [expected] = naturalFrequencies(chain, { volume: 5e-4, endCorrection: 0, limit }, air);
    // U1 = 0 before the volume and p2 = 0 at the mouth: D of the whole is 0 there.
    const wave = () => waveNumber(expected!, air);
    const whole = fourPoleChain(
      fourPoleVolume(5e-4, expected!, air),
      fourPoleDucts(chain, wave, air),
    );
    expect(whole.D.re).toBeCloseTo(0, 8);
  });
});

it('the inertial area of a cone is that of its geometric mean diameter', () => {
  const cone = { length: 0.2, diameter1: 0.04, diameter2: 0.09 };
  expect(inertialArea([cone])).toBeCloseTo((Math.PI / 4) * 0.06 ** 2, 10);
});
