/** Sod's problem: the step as TypeScript and in lanes beside a scalar loop in C, and error against time. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { perfectGas } from '../../sim/gas/gas.ts';
import { CRANK_LEFT, CRANK_RATE, DT } from '../../sim/step/layout.ts';
import { exactRiemann } from '../exact/exactRiemann.ts';
import { kernelWith } from '../lanes.ts';
import { oneDuct, pipe } from '../network.ts';
import { heading, median, outputOf, ROUNDS, row, seconds } from './measure.ts';

const CELLS = 100;
const STEPS = 4000;
/** Solutions in one round: one is over too soon for the clock. */
const REPEATS = 20;
const MOST_STEPS = 1_000_000;

export function sod(): void {
  rates();
  errors();
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
function errors(): void {
  heading('Sod, cells, in lanes', 'L1 error of density', 'ms', 'time over that at 100');
  solutions(100); // warm
  const base = solutions(100).time;
  for (const cells of [50, 100, 200, 400]) {
    const { error, time } = solutions(cells);
    row(cells, error.toExponential(2), (1e3 * time).toFixed(3), (time / base).toFixed(2));
  }
}

function solutions(cells: number): { error: number; time: number } {
  const exact = exactRiemann({ rho: 1, u: 0, p: 1 }, { rho: 0.125, u: 0, p: 0.1 }, 1.4);
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
  const error = duct.cells.rho
    .values()
    .reduce(
      (sum, rho, i) => sum + Math.abs(rho - exact.sample(((i + 0.5) / cells - 0.5) / 0.2).rho),
      0,
    );
  return { error: error / cells, time: time / REPEATS / kernel.lanes };
}
