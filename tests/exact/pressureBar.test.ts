/** Hoses on a volume: what follows from the equations alone; published figures are in tests/prove/pressureLines.ts. */
import { describe, expect, it } from 'vitest';
import { imaginary, magnitude, ONE, real, turn } from '../../sim/acoustics/complex.ts';
import {
  fourPoleChain,
  fourPolePressure,
  fourPoleResistance,
} from '../../sim/acoustics/fourPole.ts';
import {
  fourPoleLine,
  laminarResistance,
  propagation,
  volumeAdmittance,
} from '../../sim/acoustics/line.ts';
import {
  armFlow,
  barLines,
  barResponse,
  type PressureBar,
} from '../../sim/acoustics/pressureBar.ts';
import { restingAir } from '../prove/cases/pressureLines.ts';

const gas = restingAir();
const hose = { length: 0.4, bore: 0.004 };
const bar: PressureBar = { hoses: 4, hose, volume: 50e-6, sensor: { volume: 1e-6 } };
const FREQUENCIES = [0.5, 7.5, 33, 100, 240];

describe('a line', () => {
  it('gives back what it takes: its determinant is 1', () => {
    for (const frequency of FREQUENCIES) {
      const { A, B, C, D } = fourPoleLine(hose, frequency, gas);
      expect(magnitude(A.mul(D).sub(B.mul(C)).sub(ONE))).toBeLessThan(1e-13);
    }
  });

  it('of twice the length is two of them', () => {
    const one = fourPoleLine(hose, 70, gas);
    const two = fourPoleLine({ ...hose, length: 0.8 }, 70, gas);
    const chain = fourPoleChain(one, one);
    for (const part of ['A', 'B', 'C', 'D'] as const) {
      expect(magnitude(chain[part].sub(two[part]))).toBeLessThan(1e-12 * magnitude(two[part]));
    }
  });

  it('takes 2 sqrt(gamma) / s (1 + i) where it is narrow', () => {
    const { re, im } = propagation(0.02, gas).perWaveNumber;
    expect(re / (Math.sqrt(1.4) * (2 / 0.02))).toBeCloseTo(1, 4);
    expect(im / (Math.sqrt(1.4) * (2 / 0.02))).toBeCloseTo(1, 4);
  });

  it('loses (1 + (gamma - 1) / sqrt(Pr)) / (sqrt(2) s) where it is wide', () => {
    const s = 2000;
    const wide = (1 + 0.4 / Math.sqrt(gas.prandtl)) / (Math.SQRT2 * s);
    const { re, im } = propagation(s, gas).perWaveNumber;
    expect(re / wide).toBeCloseTo(1, 2);
    expect((im - 1) / wide).toBeCloseTo(1, 2);
  });

  it('resists a slow flow as Hagen and Poiseuille have it', () => {
    const { B } = fourPoleLine(hose, 1e-3, gas);
    expect(B.re / laminarResistance(hose, gas)).toBeCloseTo(1, 6);
  });
});

describe('hoses on a volume', () => {
  it('all in phase are one hose on an N-th of the volume', () => {
    for (const frequency of FREQUENCIES) {
      const own = volumeAdmittance((bar.volume + bar.sensor.volume) / 4, frequency, gas);
      const one = fourPolePressure(fourPoleLine(hose, frequency, gas), own);
      const all = barResponse(barLines(bar, frequency, gas), 0).bar.mul(4);
      expect(magnitude(all.sub(one))).toBeLessThan(1e-12);
    }
  });

  it('fired evenly move it at every N-th harmonic of the cycle only', () => {
    const { bar: share } = barResponse(barLines(bar, 33, gas), 0);
    for (let k = 1; k <= 12; k++) {
      const sum = [0, 1, 2, 3].reduce(
        (all, i) => all.add(turn((-2 * Math.PI * k * i) / 4)),
        real(0),
      );
      const found = magnitude(share.mul(sum)) / magnitude(share);
      expect(found).toBeCloseTo(k % 4 === 0 ? 4 : 0, 12);
    }
  });

  it('send into the volume what it holds more', () => {
    const frequency = 60;
    const resistance = 2e6;
    const { bar: share, arm } = barResponse(barLines(bar, frequency, gas), resistance);
    const line = fourPoleLine(hose, frequency, gas);
    const ends = [real(100), imaginary(40), real(-30), real(0)];
    const inBar = ends.reduce((sum, p) => sum.add(p.mul(share)), real(0));
    // At the bar's end of each hose, from what the jet lets in at the other.
    const sent = ends.reduce((sum, p) => {
      const taken = armFlow(arm, p, inBar);
      const behindJet = p.sub(taken.mul(resistance));
      return sum.add(behindJet.sub(line.A.mul(inBar)).div(line.B));
    }, real(0));
    const held = volumeAdmittance(bar.volume + bar.sensor.volume, frequency, gas).mul(inBar);
    expect(magnitude(sent.sub(held))).toBeLessThan(1e-9 * magnitude(held));
  });

  it('of a sensor in a hose of its own see its volume through that hose', () => {
    const own = { ...bar, sensor: { hose: { length: 0.2, bore: 0.003 }, volume: 1e-6 } };
    const still = barLines(own, 0.5, gas).sensor;
    expect(magnitude(still)).toBeCloseTo(1, 4);
    // A quarter of a wave length from the top the closed end swings more than the bar.
    expect(magnitude(barLines(own, 240, gas).sensor)).toBeGreaterThan(1.1);
  });

  it('behind jets move less at every frequency', () => {
    const [narrow, none] = [5e7, 0];
    for (const frequency of FREQUENCIES) {
      const less = magnitude(barResponse(barLines(bar, frequency, gas), narrow).bar);
      expect(less).toBeLessThan(magnitude(barResponse(barLines(bar, frequency, gas), none).bar));
    }
  });
});

it('a resistance passes pressure on where nothing flows', () => {
  expect(fourPolePressure(fourPoleResistance(1e6), real(0)).re).toBe(1);
});
