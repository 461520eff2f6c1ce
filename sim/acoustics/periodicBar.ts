/**
 * What hoses and bar make of a pressure that repeats every cycle, harmonic by harmonic.
 *
 *   R = (rho / 2) 8 sqrt(2) / (3 pi) Urms / (Cd A)^2
 *
 *   R  resistance of a jet [Pa s/m^3], of its square law by harmonic balance about the root mean square flow
 *   Urms [m^3/s] through it, until both agree   A  bore's area [m^2]   Cd  discharge coefficient [-]
 *
 * Runners are alike and shifted evenly. Linear, so the mean at the bar is that of the runners: what jets
 * rectify is in marchedBar.ts. Source of the balance: any text on describing functions (from memory).
 */
import type Complex from 'complex.js';
import { circleArea } from '../duct/profile.ts';
import { square } from '../elementary/powers.ts';
import { magnitude, real, turn } from './complex.ts';
import { samplesOf } from './fourierSeries.ts';
import type { RestingGas } from './line.ts';
import {
  armFlow,
  type BarLines,
  type BarResponse,
  barLines,
  barResponse,
  type Jet,
  type PressureBar,
} from './pressureBar.ts';

const BALANCE = (8 * Math.SQRT2) / (3 * Math.PI);
/** Resistance and flow agree to this, or this often was enough. */
const [AGREED, ROUNDS] = [1e-3, 30];

/** Pressures at the runners, as harmonics. */
export interface RunnerPressure {
  /** Mean [Pa]. */
  mean: number;
  /** Harmonics 1, 2, ... of the first runner [Pa]. */
  harmonics: readonly Complex[];
  /** Cycles a second [Hz]. */
  frequency: number;
  /** How late each runner is, in cycles [-]. */
  shifts: readonly number[];
}

/** One cycle at evenly spaced times [Pa]. */
export interface BarCycle {
  bar: number[];
  sensor: number[];
}

/** Pressures at bar and sensor over one cycle, `n` samples each. */
export function periodicBar(
  bar: PressureBar,
  runners: RunnerPressure,
  gas: RestingGas,
  n: number,
): BarCycle {
  const { harmonics, frequency, mean } = runners;
  const lines = harmonics.map((_, i) => barLines(bar, (i + 1) * frequency, gas));
  const found = settledHarmonics(lines, bar.jet, runners, gas);
  const cycle = (of: (one: Harmonic, i: number) => Complex) => samplesOf(mean, found.map(of), n);
  return {
    bar: cycle((one) => one.bar),
    sensor: cycle((one, i) => one.bar.mul(lines[i]!.sensor)),
  };
}

interface Harmonic {
  response: BarResponse;
  bar: Complex;
}

function settledHarmonics(
  lines: readonly BarLines[],
  jet: Jet | undefined,
  runners: RunnerPressure,
  gas: RestingGas,
): Harmonic[] {
  const sums = sumsOf(runners);
  let resistance = 0;
  let found = harmonicsAt(lines, sums, resistance);
  if (!jet) return found;
  for (let round = 0; round < ROUNDS; round++) {
    const wanted = jetResistance(jet, rootMeanSquareFlow(found, runners), gas);
    if (Math.abs(wanted - resistance) < AGREED * wanted) break;
    // Flow falls as resistance grows: the geometric mean meets between.
    resistance = resistance === 0 ? wanted : Math.sqrt(wanted * resistance);
    found = harmonicsAt(lines, sums, resistance);
  }
  return found;
}

/** Sum of all runners, by harmonic. */
function sumsOf({ harmonics, shifts }: RunnerPressure): Complex[] {
  return harmonics.map((one, i) => {
    const turns = shifts.reduce((sum, late) => sum.add(turn(shiftAngle(i, late))), real(0));
    return one.mul(turns);
  });
}

/** By how much runner and harmonic at place `i` are late [rad]. */
const shiftAngle = (i: number, late: number) => -2 * Math.PI * (((i + 1) * late) % 1);

function harmonicsAt(
  lines: readonly BarLines[],
  sums: readonly Complex[],
  resistance: number,
): Harmonic[] {
  return lines.map((one, i) => {
    const response = barResponse(one, resistance);
    return { response, bar: response.bar.mul(sums[i]!) };
  });
}

/** Through the jet of the first runner [m^3/s]; the others breathe alike. */
function rootMeanSquareFlow(found: readonly Harmonic[], { harmonics }: RunnerPressure): number {
  const power = found.reduce((sum, { response, bar }, i) => {
    return sum + 2 * square(magnitude(armFlow(response.arm, harmonics[i]!, bar)));
  }, 0);
  return Math.sqrt(power);
}

function jetResistance(jet: Jet, flow: number, { density }: RestingGas): number {
  return ((density / 2) * BALANCE * flow) / square(jet.coefficient * circleArea(jet.bore));
}
