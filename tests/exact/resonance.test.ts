/**
 * Natural frequencies of pipes, cones and a Helmholtz resonator, as the solver has them.
 * Sources: closed-open pipe f = c/4L'; cone tan(kL) = -k x1, Fletcher & Rossing, The Physics of
 * Musical Instruments, ch. 8 (from memory); end corrections 0.6133 a unflanged (Levine & Schwinger
 * 1948, Phys. Rev. 73:383) and 0.8217 a flanged (Nomura 1960, from memory); rows computed from
 * these forms.
 */
import { describe, expect, it } from 'vitest';
import { DuctEnd } from '../../sim/boundary/ductEnd.ts';
import { openEnd } from '../../sim/boundary/openEnd.ts';
import { OpenAir } from '../../sim/boundary/reservoir.ts';
import { valve } from '../../sim/boundary/valve.ts';
import { Volume } from '../../sim/boundary/volume.ts';
import { Duct } from '../../sim/duct/duct.ts';
import { circleArea, type Profile, profileOf } from '../../sim/duct/profile.ts';
import { perfectGas } from '../../sim/gas/gas.ts';
import { monotonisedCentral } from '../../sim/scheme/slopeLimiter.ts';
import { network, oneDuct, runFor } from '../network.ts';

const SOUND = 343.2;
const PRESSURE = 101325;
const TEMPERATURE = 293.15;
const gas = perfectGas(1.4, SOUND ** 2 / (1.4 * TEMPERATURE));
const air = () => new OpenAir(gas, { pressure: PRESSURE, temperature: TEMPERATURE });
/** So weak that sound is linear to 1e-4. */
const AMPLITUDE = 1e-4;

/** Frequency [Hz] from the rising zero crossings of a signal of time [s]; the first are left out. */
function frequencyOf(times: number[], values: number[]): number {
  const crossings: number[] = [];
  for (let i = 1; i < values.length; i++) {
    const [a, b] = [values[i - 1]!, values[i]!];
    if (a < 0 && b >= 0)
      crossings.push(times[i - 1]! + ((times[i]! - times[i - 1]!) * -a) / (b - a));
  }
  const used = crossings.slice(1);
  return (used.length - 1) / (used[used.length - 1]! - used[0]!);
}

/** Rings a duct closed at its high end from a start near its first mode; pressure there [Hz]. */
function ring(profile: Profile, cells: number, periods: number, about: number): number {
  const length = profile[profile.length - 1]!.x;
  const duct = new Duct(profile, { name: 'pipe', largestCell: length / cells });
  duct.fillEach(gas, (x) => {
    const p = 1 + AMPLITUDE * Math.sin((Math.PI * x) / (2 * length));
    return { pressure: PRESSURE * p, temperature: TEMPERATURE * p ** (0.4 / 1.4) };
  });
  const net = oneDuct(
    duct,
    { gas, limiter: monotonisedCentral },
    { low: (end) => openEnd(end, air()) },
  );
  const times: number[] = [];
  const values: number[] = [];
  runFor(net, periods / about, (time) => {
    times.push(time);
    values.push(duct.prim.p[cells - 1]! - PRESSURE);
  });
  return frequencyOf(times, values);
}

/** The profile that the engine gives such a mouth: end correction, then the pipe. */
function withCorrection(length: number, radius: number, correction: number): Profile {
  const d = 2 * radius;
  return profileOf([{ length: length + correction * radius, outerDiameter: d, innerDiameter: d }]);
}

describe('pipe closed at one end', () => {
  it.each([
    // L, a, then f with no correction, unflanged 0.6133 a, flanged 0.8217 a; c = 343.2 m/s.
    [0.3, 0.021, 286.0, 274.23, 270.44],
    [0.35, 0.0225, 245.14, 235.84, 232.84],
    [0.4, 0.0225, 214.5, 207.35, 205.02],
    [0.5, 0.0225, 171.6, 166.99, 165.48],
  ])(
    '%f m long, radius %f m, sounds at theory within 0.5 %',
    (length, radius, bare, free, flanged) => {
      // A constant-pressure end has no end correction of its own: it comes with the profile.
      for (const [correction, expected] of [
        [0, bare],
        [0.6133, free],
        [0.8217, flanged],
      ] as const) {
        const found = ring(withCorrection(length, radius, correction), 60, 9, expected);
        expect(Math.abs(found / expected - 1)).toBeLessThan(5e-3);
      }
    },
  );

  it('would be off by the whole correction without it', () => {
    const bare = ring(withCorrection(0.35, 0.0225, 0), 60, 9, 245);
    expect(bare / 235.84 - 1).toBeGreaterThan(0.035);
  });
});

describe('cone, narrow end closed, ideal open end', () => {
  it.each([
    [22, 22, 245.143],
    [19, 25, 273.014],
  ])('of radii %f and %f mm sounds at %f Hz within 0.5 %', (narrow, wide, expected) => {
    const cone = profileOf([
      { length: 0.35, outerDiameter: 2e-3 * wide, innerDiameter: 2e-3 * narrow },
    ]);
    expect(Math.abs(ring(cone, 60, 9, expected) / expected - 1)).toBeLessThan(5e-3);
  });
});

describe('Helmholtz resonator, 1 litre with a neck of 20 mm bore and 50 mm length', () => {
  it("sounds at (c/2 pi) sqrt(S/V L') within 1 %", () => {
    // Free mouth 0.6133 a, flanged inner end 0.8217 a: 120.69 Hz. k L' is 0.14, so the neck's own
    // compliance lowers the lumped formula by (kL')^2/6 = 0.3 %.
    const volume = 1e-3;
    const radius = 0.01;
    const length = 0.05 + (0.6133 + 0.8217) * radius;
    const expected = (SOUND / (2 * Math.PI)) * Math.sqrt(circleArea(0.02) / (volume * length));
    expect(expected).toBeCloseTo(120.69, 1);

    const neck = new Duct(withCorrection(length, radius, 0), {
      name: 'neck',
      largestCell: length / 10,
    });
    neck.fill(gas, { pressure: PRESSURE, temperature: TEMPERATURE });
    const box = new Volume('box', volume);
    const start = 1 + AMPLITUDE;
    box.fill(gas, { pressure: PRESSURE * start, temperature: TEMPERATURE * start ** (0.4 / 1.4) });
    const net = network(
      [neck],
      [
        openEnd(new DuctEnd(neck, 'low'), air()),
        valve(new DuctEnd(neck, 'high'), box, () => circleArea(0.02)),
      ],
      { gas, limiter: monotonisedCentral, volumes: [box] },
    );
    const times: number[] = [];
    const values: number[] = [];
    runFor(net, 9 / expected, (time) => {
      times.push(time);
      values.push(box.pressure - PRESSURE);
    });
    expect(Math.abs(frequencyOf(times, values) / expected - 1)).toBeLessThan(1e-2);
  });
});
