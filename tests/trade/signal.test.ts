/** What is known of pressure bars: common practice, no source, unless named. */
import { describe, expect, it } from 'vitest';
import { mean, readingOf, SAMPLES, swing, windowMean } from '../../sim/acoustics/barReading.ts';
import { resonanceOf } from '../../sim/acoustics/barTrial.ts';
import { magnitude } from '../../sim/acoustics/complex.ts';
import { harmonicsOf } from '../../sim/acoustics/fourierSeries.ts';
import { periodicBar } from '../../sim/acoustics/periodicBar.ts';
import type { PressureBar } from '../../sim/acoustics/pressureBar.ts';
import { airInHoses } from '../../sim/acoustics/restingAir.ts';
import { aloneOf, shiftsOf } from '../../sim/study/signal/hoses.ts';
import { loadSense } from '../../sim/study/signal/load.ts';
import { searchBars } from '../../sim/study/signal/search.ts';
import { type BarsJob, type Computer, TASKS } from '../../sim/sweep/tasks.ts';

const ambient = { pressure: 1e5, temperature: 293.15, relativeHumidity: 0.5 };
/** Behind a plate at idle: drawn down within an induction, filled again through the plate. */
const idle = Array.from({ length: SAMPLES }, (_, angle) => {
  const since = (angle - 540 + SAMPLES) % SAMPLES;
  return 35e3 + 60e3 * (since < 540 ? 1 - Math.exp(-since / 250) : (SAMPLES - since) / 200);
});
const gas = airInHoses(ambient, mean(idle));
const four = { frequency: 1000 / 120, cylinders: 4 };
const bar: PressureBar = {
  hoses: 4,
  hose: { length: 0.4, bore: 0.004 },
  volume: 20e-6,
  sensor: { volume: 0.5e-6 },
  jet: { bore: 0.001, coefficient: 0.82 },
};
const shifts = shiftsOf(4, 4);
const read = (of: PressureBar, cycle = four) =>
  readingOf({ bar: of, history: idle, shifts: shiftsOf(of.hoses, 4), gas, ...cycle });

describe('a bar', () => {
  it('steadies what a single runner pulses', () => {
    const alone = readingOf({ bar: aloneOf(bar), history: idle, shifts: [0], gas, ...four });
    expect(read(bar).ripple).toBeLessThan(alone.ripple / 5);
  });

  it('does not where it rings with the firing: 200 cm3 on wide hoses at idle', () => {
    // Harmonic 4 of the cycle, the firing: 33 Hz, at which hoses without jets lift it.
    const big = { hoses: 4, hose: bar.hose, volume: 200e-6, sensor: bar.sensor };
    const runners = { mean: mean(idle), harmonics: harmonicsOf(idle, 24), ...four, shifts };
    const firing = (samples: readonly number[]) => magnitude(harmonicsOf(samples, 4)[3]!);
    const swung = (volume: number) =>
      firing(periodicBar({ ...big, volume }, runners, gas, SAMPLES).sensor);
    expect(swung(200e-6)).toBeGreaterThan(1.5 * firing(idle));
    expect(swung(200e-6)).toBeGreaterThan(swung(50e-6));
  });

  it('without jets is damped by its nipples alone where runners swing by tens of kPa, not where by one', () => {
    // Discharge coefficient of a short cylindrical mouthpiece: Unwin, Hydraulics, Encyclopaedia Britannica 1911.
    const open = { ...bar, volume: 200e-6, jet: { bore: 0.004, coefficient: 0.82 } };
    const lifted = (history: readonly number[]) => {
      const runners = { mean: gas.pressure, harmonics: harmonicsOf(history, 24), ...four, shifts };
      const { sensor } = periodicBar(open, runners, gas, SAMPLES);
      return magnitude(harmonicsOf(sensor, 4)[3]!) / magnitude(harmonicsOf(history, 4)[3]!);
    };
    expect(lifted(idle)).toBeLessThan(1);
    expect(lifted(idle.map((p) => gas.pressure + (p - gas.pressure) / 60))).toBeGreaterThan(2.5);
  });

  it('that rings with the firing of 1000 rpm rings higher with less volume', () => {
    const at = (volume: number) => resonanceOf({ ...bar, volume }, gas).frequency;
    expect(at(200e-6)).toBeGreaterThan(25);
    expect(at(200e-6)).toBeLessThan(45);
    expect(at(20e-6)).toBeGreaterThan(2 * at(200e-6));
  });

  it('of evenly fired cylinders has every fourth harmonic of the cycle only', () => {
    const { sensor } = read(bar).marched;
    const found = harmonicsOf(sensor, 12).map(magnitude);
    const kept = Math.max(...found.filter((_, i) => (i + 1) % 4 === 0));
    const gone = Math.max(...found.filter((_, i) => (i + 1) % 4 !== 0));
    expect(gone).toBeLessThan(0.01 * kept);
  });

  it('with hoses on two runners of four has every second', () => {
    const { sensor } = read({ ...bar, hoses: 2 }).marched;
    const [first, second] = harmonicsOf(sensor, 2).map(magnitude);
    expect(first!).toBeLessThan(0.01 * second!);
  });

  it('answers later and swings less behind smaller jets', () => {
    const wide = read({ ...bar, jet: { bore: 0.002, coefficient: 0.82 } });
    expect(read(bar).ripple).toBeLessThan(wide.ripple);
  });
});

describe('a crank window on one runner', () => {
  it('repeats, but is not the mean', () => {
    const { sensor } = readingOf({
      bar: aloneOf(bar),
      history: idle,
      shifts: [0],
      gas,
      ...four,
    }).marched;
    const window = { from: 450, to: 540 };
    expect(Math.abs(windowMean(sensor, window) - mean(idle))).toBeGreaterThan(0.05 * swing(idle));
  });

  it('may run over the firing dead centre', () => {
    const rising = Array.from({ length: SAMPLES }, (_, i) => i);
    expect(windowMean(rising, { from: 718, to: 722 })).toBe((718 + 719 + 0 + 1) / 4);
  });
});

describe('load', () => {
  const point = (angle: number, kilopascals: number, efficiency: number) => ({
    angle,
    mean: kilopascals * 1e3,
    efficiency,
  });

  it('is no longer told once the pressure lies near its value wide open', () => {
    const points = [point(9, 40, 0.1), point(20, 80, 0.5), point(40, 96, 0.75), point(90, 98, 0.8)];
    const { blindFrom, missing, atWidest } = loadSense(3000, points, 4e3, 1e5);
    expect(blindFrom).toBeCloseTo(20 + (14 / 16) * 20, 9);
    expect(missing).toBeCloseTo(1 - (0.5 + (14 / 16) * 0.25) / 0.8, 9);
    expect(atWidest).toBe(-2e3);
  });

  it('is told by nothing where the pressure never moves', () => {
    const flat = [point(9, 98, 0.7), point(90, 98, 0.8)];
    expect(loadSense(3000, flat, 2e3, 1e5).blindFrom).toBeUndefined();
  });
});

describe('the search', () => {
  /** As with plates wide open at the same speed: a twentieth of the swing. */
  const slight = idle.map((p) => gas.pressure + (p - gas.pressure) / 20);
  const points = [{ speed: 1000, angle: 90, history: slight, frequency: four.frequency, gas }];
  const step = { from: 35e3, to: 1e5, gas, frequency: 33 };
  const here = {
    task: async (name: 'bars', job: BarsJob) => TASKS[name](job),
  } as unknown as Computer;
  const asked = searchBars(bar, { shifts, points, step, mostLag: 0.02 }, here);

  it('gives the steadiest within the lag, which no other beats', async () => {
    const found = await asked;
    const { best, tried } = found;
    const quick = tried.filter(({ lag }) => lag <= 0.02);
    expect(best!.ripple).toBe(Math.min(...quick.map(({ ripple }) => ripple)));
    expect(found.unbeaten).toContain(best);
  });

  it('finds bigger bars that swing more, and says which', async () => {
    const found = await asked;
    expect(found.worseThough.length).toBeGreaterThan(0);
    for (const { smaller, bigger } of found.worseThough) {
      expect(bigger.bar).toEqual({ ...smaller.bar, volume: bigger.bar.volume });
      expect(bigger.bar.volume).toBeGreaterThan(smaller.bar.volume);
      expect(bigger.ripple).toBeGreaterThan(smaller.ripple);
    }
  });
});
