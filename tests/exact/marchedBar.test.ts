/** Hoses and bar in time: against the exact linear theory where swings are small, and against closed forms. */
import { describe, expect, it } from 'vitest';
import { marchedCycle, stepAnswer } from '../../sim/acoustics/barMarches.ts';
import { harmonicsOf, samplesOf } from '../../sim/acoustics/fourierSeries.ts';
import { JetLaw } from '../../sim/acoustics/marchedBar.ts';
import { periodicBar } from '../../sim/acoustics/periodicBar.ts';
import type { PressureBar } from '../../sim/acoustics/pressureBar.ts';
import { nozzleFlux } from '../../sim/loss/nozzle.ts';
import { restingAir } from '../prove/cases/pressureLines.ts';

const gas = restingAir(293.15, 65e3);
const N = 720;
const bar: PressureBar = {
  hoses: 4,
  hose: { length: 0.4, bore: 0.004 },
  volume: 50e-6,
  sensor: { volume: 0.5e-6 },
};
const shifts = [0, 0.25, 0.5, 0.75];
const swing = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / N;

/** Runners that swing by an amplitude [Pa] at a harmonic of the cycle. */
const swinging = (amplitude: number, harmonic: number) =>
  Array.from({ length: N }, (_, j) => {
    return gas.pressure + amplitude * Math.sin((2 * Math.PI * harmonic * j) / N);
  });

/** A deep pulse a cycle, and a slow climb. */
const pulses = (depth: number) =>
  Array.from({ length: N }, (_, j) => gas.pressure - depth * Math.exp(-j / 60) + depth / 12);

const shifted = (history: readonly number[], late: number) =>
  history.map((_, j) => history[(j - late * N + N) % N]!);

/** Ripple at the sensor in time and by the linear theory [Pa]. */
function both(of: PressureBar, history: readonly number[], frequency: number) {
  const all = shifts.map((late) => shifted(history, late));
  const marched = marchedCycle(of, all, 1 / frequency, gas, 4 * frequency);
  const runners = {
    mean: mean(history),
    harmonics: harmonicsOf(history, 60),
    frequency,
    shifts,
  };
  return { marched, linear: periodicBar(of, runners, gas, N) };
}

describe('at small amplitude, without jets', () => {
  // Firing at 20, 33 and 100 Hz: below, near and above what the bar rings at.
  it.each([5, 8.25, 25])('time and frequency agree, %d cycles a second', (frequency) => {
    const { marched, linear } = both(bar, swinging(50, 4), frequency);
    expect(marched.repeats).toBe(true);
    expect(swing(marched.sensor) / swing(linear.sensor)).toBeGreaterThan(0.95);
    expect(swing(marched.sensor) / swing(linear.sensor)).toBeLessThan(1.05);
    expect(Math.abs(mean(marched.sensor) - gas.pressure)).toBeLessThan(0.1);
  });

  it('so they do with the sensor at the end of a hose of its own', () => {
    const own = { ...bar, sensor: { hose: { length: 0.3, bore: 0.003 }, volume: 1e-6 } };
    const { marched, linear } = both(own, swinging(50, 4), 12);
    expect(swing(marched.sensor) / swing(linear.sensor)).toBeCloseTo(1, 1);
  });
});

describe('jets', () => {
  const jet = { bore: 0.001, coefficient: 0.82 };
  const law = new JetLaw(jet, gas);

  it('pass what an isentropic nozzle does, within what the ellipse is off', () => {
    const area = jet.coefficient * (Math.PI / 4) * jet.bore ** 2;
    for (const ratio of [0.2, 0.528, 0.6, 0.7, 0.8, 0.9, 0.98]) {
      const exact = area * nozzleFlux(9e4, 293.15, 287.05, 1.4, ratio * 9e4);
      expect(Math.abs(law.flow(9e4, ratio * 9e4) / exact - 1), `${ratio}`).toBeLessThan(0.0032);
    }
  });

  it('pass as much back as forth, and nothing between equals', () => {
    expect(law.flow(9e4, 6e4)).toBe(-law.flow(6e4, 9e4));
    expect(law.flow(9e4, 9e4)).toBe(0);
  });

  it('rectify large pulses: the bar reads above the mean of short deep ones', () => {
    const { marched } = both({ ...bar, jet }, pulses(60e3), 8.25);
    const { marched: small } = both({ ...bar, jet }, pulses(60), 8.25);
    const offset = mean(marched.sensor) - mean(pulses(60e3));
    expect(offset).toBeGreaterThan(1e3);
    // The root law rectifies small pulses too, in proportion.
    expect(mean(small.sensor) - mean(pulses(60))).toBeLessThan(0.01 * offset);
  });
});

it('gas that crosses by the bar sums to zero', () => {
  const jet = { bore: 0.001, coefficient: 0.82 };
  const all = shifts.map((late, i) => {
    return shifted(pulses(50e3), late).map((p) => p + (i === 0 ? 3e3 : 0));
  });
  const { net, out, repeats } = marchedCycle({ ...bar, jet }, all, 0.12, gas, 33);
  expect(repeats).toBe(true);
  expect(net[0]).toBeGreaterThan(1e-3 * out[0]!);
  const sum = net.reduce((total, one) => total + one, 0);
  expect(Math.abs(sum)).toBeLessThan(1e-4 * net[0]!);
});

it('a choked fill takes V / (gamma A psi sqrt(R T)) from nothing to one e-th', () => {
  // From deep below, gas comes at one rate: from 10 to 40 % of a step to ten times the pressure.
  const volume = 50e-6;
  const jet = { bore: 0.0008, coefficient: 1 };
  const short = { ...bar, hoses: 1, hose: { length: 0.01, bore: 0.004 }, volume, jet };
  const low = restingAir(293.15, 5e4);
  const { lag } = stepAnswer(short, 1e3, 1e5, low, 5, 3);
  const area = (Math.PI / 4) * jet.bore ** 2;
  // Choked up to 52.8 %, then slower: the whole of 10 to 90 % lies between these.
  const rate = area * 0.684731 * Math.sqrt(287.05 * 293.15) * 1e5 * 1.4;
  const choked = ((0.9 - 0.1) * 99e3 * (volume + 0.5e-6 + 0.126e-6)) / rate;
  expect(lag).toBeGreaterThan(choked);
  expect(lag).toBeLessThan(1.3 * choked);
});

it('a history comes back from its harmonics', () => {
  const history = swinging(100, 3).map((p, j) => p + 40 * Math.cos((2 * Math.PI * 7 * j) / N));
  const back = samplesOf(mean(history), harmonicsOf(history, 10), N);
  expect(Math.max(...back.map((p, j) => Math.abs(p - history[j]!)))).toBeLessThan(1e-6);
});
