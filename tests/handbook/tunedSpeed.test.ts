/**
 * The linear estimate of tuned speeds: against closed forms (Engelman's worked example is in
 * tests/prove/tuning.ts), its own frequency domain, the
 * slow limit and the law of scale. The engine is invented.
 */
import FFT from 'fft.js';
import { describe, expect, it } from 'vitest';
import {
  type BreathingCylinder,
  type IntakePipe,
  inductionCycle,
  pipeReflection,
} from '../acoustics/linearInduction.ts';
import { inertialArea, quarterWaveFrequency } from '../acoustics/resonance.ts';
import { planeImpedance } from '../acoustics/transferMatrix.ts';
import {
  engelmanTunedSpeed,
  linearTunedPeaks,
  oneOscillationSpeed,
  orderTunedSpeed,
  tunedPeaks,
} from '../acoustics/tunedSpeed.ts';

const gas = { density: 1.2, soundSpeed: 343, pressure: 101325 };
const OPENS = 330;
const CLOSES = 605;
const COMPRESSION = 12;

/** Half a litre, two 33 mm valves, 275 deg; every length times `scale`. */
function cylinderOf(scale = 1): BreathingCylinder {
  const crank = 0.043 * scale;
  const rod = 0.143 * scale;
  const area = (Math.PI / 4) * (0.086 * scale) ** 2;
  const displacement = area * 2 * crank;
  const volume = (angle: number) => {
    const t = (angle * Math.PI) / 180;
    const travel =
      crank + rod - crank * Math.cos(t) - Math.sqrt(rod ** 2 - (crank * Math.sin(t)) ** 2);
    return displacement / (COMPRESSION - 1) + area * travel;
  };
  const effectiveArea = (angle: number) => {
    if (angle <= OPENS || angle >= CLOSES) return 0;
    const lift = 0.0105 * Math.sin((Math.PI * (angle - OPENS)) / (CLOSES - OPENS)) ** 2;
    return 2 * Math.min(0.62 * Math.PI * 0.033 * lift, 5.3e-4) * scale ** 2;
  };
  return { volume, effectiveArea, displacement, exhaustClosing: 385, intakeClosing: CLOSES };
}

function pipeOf(length: number, scale = 1): IntakePipe {
  const diameter = 0.045 * scale;
  return {
    sections: [{ length: length * scale, diameter1: diameter, diameter2: diameter }],
    endCorrection: 0.6127,
    loss: 0.5,
    lossDiameter: diameter,
  };
}

const rpm = (from: number, to: number, step: number) =>
  Array.from({ length: (to - from) / step + 1 }, (_, i) => (from + i * step) / 60);

describe('closed forms', () => {
  it('counts periods in a cycle of two revolutions and in an open angle', () => {
    expect(orderTunedSpeed(200, 4)).toBe(100); // 6000 rpm: 20 ms a cycle, 4 periods of 5 ms
    expect(oneOscillationSpeed(200, 180)).toBe(100); // 180 deg at 6000 rpm last 5 ms
  });

  it('finds the top of a parabola between its points', () => {
    const speeds = [10, 11, 12, 13];
    const [peak] = tunedPeaks(
      speeds,
      speeds.map((n) => 1 - (n - 11.3) ** 2),
    );
    expect(peak!.speed).toBeCloseTo(11.3, 10);
    expect(peak!.volumetricEfficiency).toBeCloseTo(1, 10);
  });
});

describe('linear induction cycle', () => {
  it('settles where pressure and flow obey the impedance of the pipe, harmonic by harmonic', () => {
    const cylinder = cylinderOf();
    const pipe = pipeOf(0.35);
    const speed = 100;
    const { pipePressure, flow, lossFlow } = inductionCycle(pipe, cylinder, gas, speed);
    const fft = new FFT(flow.length);
    const [p, U] = [pipePressure, flow].map((signal) => {
      const out = fft.createComplexArray();
      fft.realTransform(out, Array.from(signal));
      return out;
    });
    for (const harmonic of [1, 2, 3, 4, 5, 8]) {
      const R = pipeReflection(pipe, (harmonic * speed) / 2, lossFlow, gas);
      const Z = planeImpedance(0.045, gas);
      const impedance = (Z * R.add(1).abs()) / R.neg().add(1).abs();
      const at = 2 * harmonic;
      const ratio = Math.hypot(p![at], p![at + 1]) / Math.hypot(U![at], U![at + 1]);
      // The Gaussian fade at cut-on takes 1e-2 off the reflection at 400 Hz.
      expect(Math.abs(ratio / impedance - 1)).toBeLessThan(0.03);
    }
  });

  it('behind a stub and valves that shut at once fills the cylinder to feed pressure', () => {
    const open = (angle: number) => (angle > OPENS && angle < CLOSES ? 1e-3 : 0);
    const cylinder = { ...cylinderOf(), effectiveArea: open };
    const { volumetricEfficiency, pressureAtClosing } = inductionCycle(
      pipeOf(0.005),
      cylinder,
      gas,
      800 / 60,
    );
    const trapped = cylinder.volume(CLOSES) - cylinder.volume(385);
    const expected = trapped / cylinder.displacement;
    expect(Math.abs(volumetricEfficiency / expected - 1)).toBeLessThan(0.01);
    expect(Math.abs(pressureAtClosing)).toBeLessThan(0.01 * gas.pressure);
  });

  it('tunes an engine of half the size at twice the speed', () => {
    const [full] = linearTunedPeaks(pipeOf(0.35), cylinderOf(), gas, rpm(4000, 8000, 100));
    const [half] = linearTunedPeaks(pipeOf(0.35, 0.5), cylinderOf(0.5), gas, rpm(8000, 16000, 200));
    // Wall loss does not scale and damps the smaller pipe more.
    expect(Math.abs(half!.speed / full!.speed / 2 - 1)).toBeLessThan(0.005);
  });

  // Common practice, no source.
  it('tunes a longer pipe to a lower speed', () => {
    const best = [0.25, 0.4, 0.6].map(
      (L) => linearTunedPeaks(pipeOf(L), cylinderOf(), gas, rpm(2600, 9000, 200))[0]!.speed,
    );
    expect(best[0]!).toBeGreaterThan(1.1 * best[1]!);
    expect(best[1]!).toBeGreaterThan(1.1 * best[2]!);
  });
});

describe('linear peaks against closed forms', () => {
  const length = 0.35;
  const pipe = pipeOf(length);
  const corrected = length + 0.6127 * 0.0225;
  const peaks = linearTunedPeaks(pipe, cylinderOf(), gas, rpm(3000, 8000, 50));

  it('lie between the whole orders of the shut pipe, where left-over waves help', () => {
    const f1 = quarterWaveFrequency(corrected, gas.soundSpeed);
    expect(peaks.length).toBeGreaterThan(2);
    for (const peak of peaks.slice(0, 3)) {
      const order = (2 * f1) / peak.speed;
      const fraction = order - Math.floor(order);
      expect(fraction).toBeGreaterThan(0.25);
      expect(fraction).toBeLessThan(0.75);
    }
  });

  it("surround Engelman's speed: the two highest peaks have it between them", () => {
    const engelman = engelmanTunedSpeed(
      { area: inertialArea(pipe.sections), length: corrected },
      { displacement: cylinderOf().displacement, compressionRatio: COMPRESSION },
      gas.soundSpeed,
    );
    const [low, high] = [peaks[0]!.speed, peaks[1]!.speed].sort((a, b) => a - b);
    expect(engelman).toBeGreaterThan(low!);
    expect(engelman).toBeLessThan(high!);
  });

  it('lie below the speed of one oscillation of the shut pipe in the open angle', () => {
    const f1 = quarterWaveFrequency(corrected, gas.soundSpeed);
    expect(peaks[0]!.speed).toBeLessThan(oneOscillationSpeed(f1, CLOSES - OPENS));
  });
});
