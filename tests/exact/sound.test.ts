/** Mouths as sound: levels of known sources, orders at their frequencies, samples read back from a WAV. */
import FFT from 'fft.js';
import { describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { wavesOf } from '../../sim/cli/waves.ts';
import { level, levelA, orderPower } from '../../sim/sound/level.ts';
import { heard, type Listener, type Row } from '../../sim/sound/monopoles.ts';
import { cycleFrequency, type Orders, orderOf, ordersOf } from '../../sim/sound/orders.ts';
import { fullScaleOf, runUpSound, type Sound, steadySound } from '../../sim/sound/samples.ts';

const C = 343;
const SPEED = 6000;
const angles = (count: number) => Array.from({ length: count }, (_, i) => (720 * i) / count);
const turn = (harmonic: number, angle: number) => (2 * Math.PI * harmonic * angle) / 720;

/** A flow of one harmonic of the cycle [kg/s]. */
function sineFlow(harmonic: number, amplitude: number, speed = SPEED): Orders {
  const at = angles(720);
  const values = at.map((angle) => 0.1 + amplitude * Math.sin(turn(harmonic, angle)));
  return ordersOf(at, values, cycleFrequency(speed), 200);
}

const one: Row = { mouths: [{ place: 0, lag: 0 }], height: 0 };
const onGround = (distance: number): Listener => ({ distance, height: 0 });

describe('orders', () => {
  it('give amplitude and phase of each harmonic and leave the mean out', () => {
    const at = angles(720);
    const values = at.map(
      (angle) => 5 + 3 * Math.cos(turn(2, angle) + 0.4) + Math.sin(turn(7, angle)),
    );
    const { re, im } = ordersOf(at, values, 50, 12);
    expect(re[1]).toBeCloseTo(3 * Math.cos(0.4), 10);
    expect(im[1]).toBeCloseTo(3 * Math.sin(0.4), 10);
    expect(im[6]).toBeCloseTo(-1, 10);
    for (const k of [0, 2, 3, 4, 5, 7, 11]) expect(Math.hypot(re[k]!, im[k]!)).toBeLessThan(1e-10);
  });

  it('of rows that lie unevenly stay near', () => {
    const at = angles(720).map((angle, i) => angle + 0.2 * Math.sin(i * 1.7));
    const { re, im } = ordersOf(
      at,
      at.map((angle) => Math.sin(turn(4, angle))),
      50,
      20,
    );
    expect(Math.hypot(re[3]!, im[3]!)).toBeCloseTo(1, 3);
  });
});

describe('a mouth on hard ground', () => {
  it.each([
    [4, 0.02, 0.5],
    [12, 0.005, 7.5],
    [40, 0.001, 7.5],
  ])(
    'harmonic %s, %s kg/s, heard at %s m: f M / R over sqrt 2 and 20 uPa',
    (harmonic, amplitude, distance) => {
      const frequency = (harmonic * SPEED) / 120;
      // Twice omega M / (4 pi R), as the image doubles it.
      const pressure = (frequency * amplitude) / distance / Math.SQRT2;
      const sound = heard(sineFlow(harmonic, amplitude), one, onGround(distance), C);
      const expected = 20 * Math.log10(pressure / 20e-6);
      expect(Math.abs(level(sound) - expected)).toBeLessThan(1e-6);
    },
  );

  it('falls by 6 dB with twice the distance', () => {
    const at = (distance: number) => level(heard(sineFlow(8, 0.01), one, onGround(distance), C));
    expect(at(4) - at(8)).toBeCloseTo(20 * Math.log10(2), 9);
  });
});

describe('a mouth above the ground', () => {
  const row: Row = { mouths: [{ place: 0.3, lag: 0 }], height: 0.8 };
  const ear: Listener = { distance: 7.5, height: 1.2 };

  it('is heard as the rate of its flow, late by the way, direct and from its image', () => {
    const slope = (time: number) => {
      const omega = 2 * Math.PI * 10 * 50;
      return 0.01 * omega * Math.cos(omega * time);
    };
    const sound = heard(sineFlow(10, 0.01), row, ear, C);
    for (const time of [0, 0.0003, 0.0011, 0.0017]) {
      const [near, far] = [0.4, 2.0].map((rise) => Math.hypot(7.5, 0.3, rise));
      const expected =
        (slope(time - near! / C) / near! + slope(time - far! / C) / far!) / (4 * Math.PI);
      const phase = 2 * Math.PI * 10 * 50 * time;
      const ours = sound.re[9]! * Math.cos(phase) - sound.im[9]! * Math.sin(phase);
      expect(ours).toBeCloseTo(expected, 9);
    }
  });
});

describe('a row of four', () => {
  const orders = (pitch: number) => {
    const places = [0, 2, 3, 1].map((cylinder) => (cylinder - 1.5) * pitch);
    const mouths = places.map((place, i) => ({ place, lag: i / 4 }));
    const pulse = angles(720).map((angle) => Math.exp(-(((angle - 300) / 60) ** 2)));
    const flow = ordersOf(angles(720), pulse, cycleFrequency(SPEED), 24);
    return heard(flow, { mouths, height: 0.8 }, { distance: 0.5, height: 0.8 }, C);
  };
  const share = (sound: Orders) => {
    const power = sound.re.map((_, entry) => orderPower(sound, entry));
    const even = power.filter((_, entry) => orderOf(entry) % 2 === 0);
    const sum = (list: number[]) => list.reduce((a, b) => a + b, 0);
    return 1 - sum(even) / sum(power);
  };

  it('in one place sends orders 2, 4, 6 only; apart, others too', () => {
    expect(share(orders(0))).toBeLessThan(1e-12);
    expect(share(orders(0.1))).toBeGreaterThan(1e-4);
  });
});

/** What a player reads: samples as shares of full scale. */
function readBack(sound: Sound): Float64Array {
  const sounds = { 'x.wav': sound };
  const [[, bytes]] = wavesOf({ sounds, fullScale: fullScaleOf([sound]) }) as [
    [string, Uint8Array],
  ];
  const wave = new wavefile.WaveFile(bytes);
  expect(wave.fmt).toMatchObject({ numChannels: 1, sampleRate: 44100, bitsPerSample: 16 });
  return Float64Array.from(
    wave.getSamples(false, Float64Array),
    (sample) => Number(sample) / 32768,
  );
}

/** Powers of a window (Hann) of 16384 samples from a place on, by frequency in steps of 44100/16384 Hz. */
function spectrumOf(samples: Float64Array, from: number): number[] {
  const count = 16384;
  const fft = new FFT(count);
  const window = Array.from({ length: count }, (_, i) => {
    return samples[from + i]! * (1 - Math.cos((2 * Math.PI * i) / count));
  });
  const out = fft.createComplexArray();
  fft.realTransform(out, window);
  return Array.from(
    { length: count / 2 },
    (_, i) => (out[2 * i]! ** 2 + out[2 * i + 1]! ** 2) / count ** 2,
  );
}

/** Root of the power about a frequency: the amplitude of a sine there [share of full scale]. */
function amplitudeNear(spectrum: number[], frequency: number): number {
  const at = Math.round((frequency * 16384) / 44100);
  const sum = spectrum.slice(at - 3, at + 4).reduce((a, b) => a + b, 0);
  // A Hann window spreads a sine's power over its neighbours: 3/2 of the peak's.
  return 2 * Math.sqrt(sum / 1.5);
}

describe('a WAV', () => {
  const flow = (speed: number): Orders => {
    const parts = [2, 4, 12, 40].map((harmonic) => sineFlow(harmonic, 0.02 / harmonic, speed));
    const sum = (key: 're' | 'im') =>
      parts[0]![key].map((_, i) => parts.reduce((total, part) => total + part[key][i]!, 0));
    return { fundamental: parts[0]!.fundamental, re: sum('re'), im: sum('im') };
  };
  const sound = (speed: number) => heard(flow(speed), one, onGround(0.5), C);

  it('of one speed has its orders at their frequencies and at their level, within 0.1 dB', () => {
    const held = steadySound(sound(SPEED), 1);
    const spectrum = spectrumOf(readBack(held), 10000);
    const scale = fullScaleOf([held]);
    for (const harmonic of [2, 4, 12, 40]) {
      const frequency = harmonic * 50;
      // f M / R on hard ground, with M = 0.02 / harmonic.
      const expected = (frequency * 0.02) / harmonic / 0.5;
      const decibels = 20 * Math.log10((amplitudeNear(spectrum, frequency) * scale) / expected);
      expect(Math.abs(decibels)).toBeLessThan(0.1);
    }
    for (const nothing of [150, 350, 1000, 3000]) {
      expect(amplitudeNear(spectrum, nothing)).toBeLessThan(1e-3);
    }
  });

  it('of a run up carries each order from its first to its last frequency', () => {
    const speeds = [3000, 4500, 6000, 9000];
    const samples = readBack(runUpSound(speeds.map(sound), 8));
    expect(samples.length).toBe(8 * 44100);
    for (const time of [1, 3.5, 6.5]) {
      const spectrum = spectrumOf(samples, Math.round(time * 44100) - 8192);
      const middle = (3000 + (6000 * time) / 8) / 120;
      // Order 1 is the second harmonic of the cycle; all four have the same force here.
      const low = spectrum.slice(0, Math.round((3 * middle * 16384) / 44100));
      const peak = low.indexOf(Math.max(...low));
      expect(Math.abs((peak * 44100) / 16384 - 2 * middle)).toBeLessThan(10);
    }
  });

  it('keeps sounds to one scale and never clips', () => {
    const loud = steadySound(sound(6000), 0.2);
    const soft = { ...loud, pressure: loud.pressure.map((p) => p / 4) };
    const [a, b] = wavesOf({
      sounds: { a: loud, b: soft },
      fullScale: fullScaleOf([loud, soft]),
    }).map(([, bytes]) => {
      const samples = new wavefile.WaveFile(bytes).getSamples(false, Int16Array);
      return Math.max(...Array.from(samples as unknown as Int16Array, Math.abs));
    });
    expect(a! / b!).toBeCloseTo(4, 2);
    expect(a!).toBeLessThanOrEqual(32767);
    expect(a!).toBeGreaterThan(0.85 * 32767);
  });
});

describe('weighting A', () => {
  it('of a tone of 1 kHz is nothing, of 100 Hz 19.1 dB less', () => {
    const tone = (harmonic: number) => heard(sineFlow(harmonic, 0.01), one, onGround(1), C);
    expect(levelA(tone(20)) - level(tone(20))).toBeCloseTo(0, 9);
    expect(levelA(tone(2)) - level(tone(2))).toBeCloseTo(-19.1, 1);
  });
});
