/** Sod's problem: the step as TypeScript and in lanes beside a scalar loop in C, and error against time. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { perfectGas } from '../../sim/gas/gas.ts';
import { CRANK_LEFT, CRANK_RATE, DT } from '../../sim/step/layout.ts';
import { exactRiemann } from '../exact/exactRiemann.ts';
import { kernelWith } from '../lanes.ts';
import { oneDuct, pipe } from '../network.ts';
import { type Goal, heading, median, outputOf, ROUNDS, row, seconds } from './measure.ts';

const CELLS = 100;
const STEPS = 4000;
/** Solutions in one round: one is over too soon for the clock. */
const REPEATS = 20;
const MOST_STEPS = 1_000_000;

export function sod(): Goal[] {
  rates();
  return besideClawpack(errors());
}

function rates(): void {
  heading(`kernel, Sod, ${CELLS} cells`, 'M updates/s', 'ratio');
  const plain = rate(true);
  const lanes = rate(false);
  row('TypeScript, thermally perfect gas, two fractions', (plain / 1e6).toFixed(1), 1);
  row(
    'two f64 lanes, the same to the last bit',
    (lanes / 1e6).toFixed(1),
    (lanes / plain).toFixed(2),
  );
  const c = rateOfC();
  if (c === undefined) row('scalar C loop', 'no compiler here', '-');
  else
    row(
      'scalar C loop, constant gamma, two fractions',
      (c / 1e6).toFixed(1),
      (c / plain).toFixed(2),
    );
}

/** The problem at rest in a pipe, and what is known of it at time 0.2. */
function problem(cells: number) {
  const gas = perfectGas(1.4, 1);
  const duct = pipe(1, 1, cells);
  duct.fillEach(gas, (x) => ({ pressure: x < 0.5 ? 1 : 0.1, temperature: x < 0.5 ? 1 : 0.8 }));
  return { duct, net: oneDuct(duct, { gas }) };
}

/** Cell updates per second, of the TypeScript step or of all lanes together. */
function rate(plain: boolean): number {
  const { net } = problem(CELLS);
  const dt = 0.2 * net.longestStep();
  const { layout } = net;
  const kernel = kernelWith(layout, [layout.column, layout.column]);
  kernel.X.fill(dt, kernel.lanes * DT, kernel.lanes * (DT + 1));
  const run = () => {
    for (let i = 0; i < STEPS; i++) {
      if (plain) net.step({ crankAngle: 0, crankStep: 0, dt });
      else kernel.call.step!();
    }
  };
  run();
  return ((plain ? 1 : kernel.lanes) * CELLS * STEPS) / seconds(run);
}

/** The same of the C loop, where the machine has a compiler. */
function rateOfC(): number | undefined {
  const program = join(mkdtempSync(join(tmpdir(), 'bench-')), 'sod');
  const flags = ['-O3', '-march=native', '-o', program, 'tests/bench/sod.c', '-lm'];
  if (outputOf('cc', flags) === undefined) return undefined;
  const rates = Array.from({ length: ROUNDS }, () =>
    Number(outputOf(program, [`${CELLS}`, `${STEPS}`, '1'])),
  );
  return median(rates);
}

/** L1 error of density at time 0.2, and what a solution takes in one of two lanes. */
function errors(): Solution[] {
  heading('Sod, cells, in lanes', 'L1 error of density', 'ms', 'time over that at 100');
  solutions(100); // warm
  const base = solutions(100).time;
  return [50, 100, 200, 400].map((cells) => {
    const { error, time } = solutions(cells);
    row(cells, error.toExponential(2), (1e3 * time).toFixed(3), (time / base).toFixed(2));
    return { error, time };
  });
}

/** Mean error of density [-], and time of a solution [s]. */
interface Solution {
  error: number;
  time: number;
}

/** Time beside a general solver's at the error that it has, where Python and Clawpack are installed. */
function besideClawpack(ours: readonly Solution[]): Goal[] {
  heading('Sod, cells, Clawpack', 'L1 error of density', 'ms', 'our time at that error over it');
  const printed = outputOf('python3', ['tests/bench/sodByClawpack.py', `${CELLS}`, `${ROUNDS}`]);
  if (printed === undefined) {
    row(CELLS, 'no Clawpack here', '-', '-');
    return [];
  }
  const { rho, seconds: time } = JSON.parse(printed) as { rho: number[]; seconds: number };
  const error = errorOf(rho);
  const ratio = timeAt(error, ours) / time;
  row(CELLS, error.toExponential(2), (1e3 * time).toFixed(3), ratio.toFixed(2));
  const what = "Sod: our time over Clawpack's at equal L1 error";
  return [{ what, reached: ratio, goal: 1 / 3, unit: '' }];
}

/** Time [s] at which an error is reached: straight in logarithms between solutions, errors falling. */
function timeAt(error: number, solutions: readonly Solution[]): number {
  const next = solutions.findIndex((one) => one.error <= error);
  const upper = Math.min(Math.max(next < 0 ? solutions.length - 1 : next, 1), solutions.length - 1);
  const [a, b] = [solutions[upper - 1]!, solutions[upper]!];
  const share = Math.log(error / a.error) / Math.log(b.error / a.error);
  return a.time * (b.time / a.time) ** share;
}

/** L1 error of density at time 0.2 [-]. */
function errorOf(density: readonly number[]): number {
  const exact = exactRiemann({ rho: 1, u: 0, p: 1 }, { rho: 0.125, u: 0, p: 0.1 }, 1.4);
  const cells = density.length;
  return density.reduce((sum, rho, i) => {
    const { rho: right } = exact.sample(((i + 0.5) / cells - 0.5) / 0.2);
    return sum + Math.abs(rho - right) / cells;
  }, 0);
}

function solutions(cells: number): Solution {
  const { duct, net } = problem(cells);
  const { column } = net.layout;
  // A crank that turns a degree a second is a clock.
  column[CRANK_RATE] = 1;
  column[CRANK_LEFT] = 0.2;
  const kernel = kernelWith(net.layout, [column, column]);
  const start = kernel.X.slice();
  const time = seconds(() => {
    for (let i = 0; i < REPEATS; i++) {
      kernel.X.set(start);
      kernel.call.run!(MOST_STEPS);
    }
  });
  net.load(Float64Array.from(column, (_, place) => kernel.X[kernel.lanes * place]!));
  return { error: errorOf(duct.cells.rho.values()), time: time / REPEATS / kernel.lanes };
}
