/**
 * Marches of a bar: one cycle that repeats, and the answer to a step of all runners at once.
 * No source: book-keeping over marchedBar.ts.
 */
import type { RestingGas } from './line.ts';
import { MarchedBar, type RunnerGroup } from './marchedBar.ts';
import type { BarCycle } from './periodicBar.ts';
import type { PressureBar } from './pressureBar.ts';

/** A cycle repeats when the bar ends it within this share of where it began [-]. */
const REPEATS = 2e-6;
/** Cycles before that is asked, and after which it is given up. */
const [LEAST_CYCLES, MOST_CYCLES] = [3, 400];

/** One cycle, and the gas that passes from runner to runner in it. */
export interface MarchedCycle extends BarCycle {
  /** Gas out of each runner into its hose less what comes back, over the cycle [kg]. */
  net: number[];
  /** What goes out of each runner alone [kg]. */
  out: number[];
  repeats: boolean;
}

/**
 * The cycle that repeats.
 *
 * @param histories pressure of each tapped runner at evenly spaced times of one cycle [Pa]
 * @param period of the cycle [s]
 * @param frequency at which friction and inertia of the hoses are taken [Hz]
 */
export function marchedCycle(
  bar: PressureBar,
  histories: readonly (readonly number[])[],
  period: number,
  gas: RestingGas,
  frequency: number,
): MarchedCycle {
  const n = histories[0]!.length;
  const groups = histories.map((samples): RunnerGroup => {
    return { count: 1, pressure: (time) => sampleAt(samples, (time / period) * n) };
  });
  const march = new MarchedBar(bar, groups, gas, gas.pressure, frequency);
  const steps = n * Math.ceil(period / march.step / n);
  let cycles = 0;
  let repeats = false;
  let cycle = emptyCycle(groups.length);
  while (!repeats && cycles < MOST_CYCLES) {
    const before = march.bar;
    cycle = emptyCycle(groups.length);
    oneCycle(march, cycle, { steps, every: steps / n, dt: period / steps });
    cycles++;
    repeats = cycles >= LEAST_CYCLES && Math.abs(march.bar / before - 1) < REPEATS;
  }
  return { ...cycle, repeats };
}

function emptyCycle(hoses: number): Omit<MarchedCycle, 'repeats'> {
  const none = () => new Array<number>(hoses).fill(0);
  return { bar: [], sensor: [], net: none(), out: none() };
}

function oneCycle(
  march: MarchedBar,
  cycle: Omit<MarchedCycle, 'repeats'>,
  { steps, every, dt }: { steps: number; every: number; dt: number },
): void {
  for (let k = 0; k < steps; k++) {
    if (k % every === 0) {
      cycle.bar.push(march.bar);
      cycle.sensor.push(march.sensor);
    }
    march.advance(dt);
    march.flows.forEach((flow, i) => {
      cycle.net[i] = cycle.net[i]! + flow * dt;
      cycle.out[i] = cycle.out[i]! + Math.max(flow, 0) * dt;
    });
  }
}

/** A periodic history at a place between its samples. */
function sampleAt(samples: readonly number[], place: number): number {
  const n = samples.length;
  const whole = Math.floor(place);
  const first = samples[whole % n]!;
  return first + (place - whole) * (samples[(whole + 1) % n]! - first);
}

/** The sensor's answer to a step of all runners. */
export interface StepAnswer {
  /** From 10 to 90 % of the step [s]; infinite where it is not there in time. */
  lag: number;
  /** Highest reading beyond the step, over the step [-]. */
  overshoot: number;
}

/** How the sensor follows all runners stepping from one pressure to another [Pa], watched for a time [s]. */
export function stepAnswer(
  bar: PressureBar,
  from: number,
  to: number,
  gas: RestingGas,
  frequency: number,
  watched: number,
): StepAnswer {
  const group: RunnerGroup = { count: bar.hoses, pressure: () => to };
  const march = new MarchedBar(bar, [group], gas, from, frequency);
  let [tenth, ninth, highest] = [Number.NaN, Number.POSITIVE_INFINITY, 0];
  while (march.time < watched) {
    march.advance(march.step);
    const share = (march.sensor - from) / (to - from);
    if (Number.isNaN(tenth) && share >= 0.1) tenth = march.time;
    if (ninth === Number.POSITIVE_INFINITY && share >= 0.9) ninth = march.time;
    highest = Math.max(highest, share);
    if (march.time > 4 * ninth) break;
  }
  return { lag: ninth - tenth, overshoot: Math.max(highest - 1, 0) };
}
