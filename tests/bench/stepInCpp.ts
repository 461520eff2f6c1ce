/**
 * The whole step of an engine in lanes beside the same lines in C++ (cpp.ts), compiled with -O3 as
 * WebAssembly and natively, in turn, on the same memory. All must come to the same state.
 */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { Run } from '../../sim/engine/cycle.ts';
import { engineModel } from '../../sim/engine/plan.ts';
import { BYTES as F32X4 } from '../../sim/kernel/f32x4.ts';
import { BYTES as F64X2 } from '../../sim/kernel/f64x2.ts';
import { type Kernel, type Lanes, load } from '../../sim/kernel/load.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { CRANK_LEFT } from '../../sim/step/layout.ts';
import { stepModules } from '../kernel/build.ts';
import { translate } from '../kernel/translate.ts';
import { cpp } from './cpp.ts';
import { type Goal, heading, outputOf, row } from './measure.ts';

const OURS: Record<Lanes, string> = { f64x2: F64X2, f32x4: F32X4 };
/** Steps in a round, rounds of a turn, and turns of all three. */
const STEPS = 100;
const ROUNDS = 20;
const TURNS = 25;
const PLACES = 1 << 17;
/** Further than `STEPS` steps go [deg]. */
const FAR = 1e6;

export function stepAgainstCpp(engine: EngineSpecification): Goal[] {
  // Without its quick first compiler the platform compiles well at once.
  setFlagsFromString('--no-liftoff');
  heading(
    'whole step, microseconds for all lanes',
    'ours',
    'clang, wasm',
    'clang, native',
    'ours / wasm',
    'ours / native',
  );
  return (['f64x2', 'f32x4'] as const).flatMap((lanes) => {
    const times = measure(lanes, engine);
    if (!times) {
      row(lanes, '-', 'no clang here', '-', '-', '-');
      return [];
    }
    const { ours, wasm, native } = times;
    const [overWasm, overNative] = [ours / wasm, ours / native];
    const micro = (time: number) => ((1e6 * time) / STEPS).toFixed(2);
    row(lanes, micro(ours), micro(wasm), micro(native), overWasm.toFixed(2), overNative.toFixed(2));
    const what = `whole step over the same in C++ -O3, ${lanes}`;
    return [
      { what: `${what}, WebAssembly`, reached: overWasm, goal: 1.3, unit: '' },
      { what: `${what}, native`, reached: overNative, goal: 1.3, unit: '' },
    ];
  });
}

function measure(lanes: Lanes, engine: EngineSpecification) {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  writeFileSync(join(folder, 'step.h'), translate(stepModules(), cpp(lanes)));
  const wasm = clangWasm(folder, lanes);
  const native = clangNative(folder, lanes);
  if (!wasm || !native) return undefined;
  const [ours, theirs] = [Buffer.from(OURS[lanes], 'base64'), wasm].map((bytes) =>
    prepared(bytes, lanes, engine),
  ) as [Kernel, Kernel];
  const image = join(folder, 'image');
  writeFileSync(image, new Uint8Array(ours.X.buffer));
  const given = [image, `${CRANK_LEFT}`, `${STEPS}`, `${ROUNDS}`];
  const runNative = () => outputOf(native, given)!.split(' ').map(Number) as [number, number];
  const [, left] = runNative();
  const ends = [rounds(ours), rounds(theirs), { left }].map((end) => end.left);
  if (new Set(ends).size > 1) throw new Error(`${lanes}: not the same step: ${ends.join(', ')}`);
  const times = Array.from({ length: TURNS }, () => ({
    ours: rounds(ours).time,
    wasm: rounds(theirs).time,
    native: runNative()[0],
  }));
  // The least is what the code takes; all above it is what else the machine did.
  const least = (which: 'ours' | 'wasm' | 'native') => Math.min(...times.map((one) => one[which]));
  return { ours: least('ours'), wasm: least('wasm'), native: least('native') };
}

/** A kernel with an engine under way in every lane. */
function prepared(bytes: Uint8Array, lanes: Lanes, engine: EngineSpecification): Kernel {
  const model = engineModel(engine);
  const kernel = load(new WebAssembly.Module(bytes as BufferSource), lanes, PLACES);
  const { N, K, column } = model.network.layout;
  kernel.N.set(N);
  kernel.K.set(K);
  for (let lane = 0; lane < kernel.lanes; lane++) {
    const run = new Run(model, 6000 - 500 * lane);
    run.start(false);
    run.beginCycle();
    column.forEach((value, place) => {
      kernel.X[kernel.lanes * place + lane] = value;
    });
  }
  return kernel;
}

/** Least seconds of several rounds, and how far is left after the last. */
function rounds({ X, lanes, call }: Kernel): { time: number; left: number } {
  let time = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round++) {
    X.fill(FAR, lanes * CRANK_LEFT, lanes * (CRANK_LEFT + 1));
    const start = performance.now();
    call.run!(STEPS);
    time = Math.min(time, (performance.now() - start) / 1e3);
  }
  return { time, left: X[lanes * CRANK_LEFT]! };
}

const flags = (folder: string, lanes: Lanes) => [
  ...['-w', '-O3', '-I', folder, '-I', 'tests/bench'],
  ...(lanes === 'f32x4' ? ['-DF32'] : []),
];

function clangWasm(folder: string, lanes: Lanes): Uint8Array | undefined {
  const [source, out] = [join(folder, 'step.cpp'), join(folder, 'step.wasm')];
  writeFileSync(source, '#include "step.h"\n');
  const link = [
    '--no-entry',
    '--export-dynamic',
    '--import-memory',
    '--stack-first',
    '-zstack-size=32768',
  ];
  const done = outputOf('clang++', [
    ...['--target=wasm32', '-msimd128', '-nostdlib', '-fno-exceptions', ...flags(folder, lanes)],
    ...link.map((one) => `-Wl,${one}`),
    ...['-o', out, source],
  ]);
  return done === undefined ? undefined : readFileSync(out);
}

function clangNative(folder: string, lanes: Lanes): string | undefined {
  const out = join(folder, 'step');
  const done = outputOf('clang++', [
    '-march=native',
    ...flags(folder, lanes),
    '-o',
    out,
    'tests/bench/step.cpp',
  ]);
  return done === undefined ? undefined : out;
}
