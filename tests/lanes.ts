/** The compiled step on networks that a test has laid out. */
import type { Layout } from '../sim/engine/layOut.ts';
import { BYTES } from '../sim/kernel/f64x2.ts';
import { type Kernel, load, moduleOf } from '../sim/kernel/load.ts';

/** A kernel that holds this network, and in its lanes these columns of reals. */
export function kernelWith({ N, K }: Layout, columns: readonly Float64Array[]): Kernel {
  const kernel = load(moduleOf(BYTES), 'f64x2', columns[0]!.length);
  kernel.N.set(N);
  kernel.K.set(K);
  columns.forEach((column, lane) => {
    column.forEach((value, place) => {
      kernel.X[kernel.lanes * place + lane] = value;
    });
  });
  return kernel;
}

/** What a lane holds. */
export function laneOf({ X, lanes }: Kernel, lane: number, places: number): Float64Array {
  return Float64Array.from({ length: places }, (_, place) => X[lanes * place + lane]!);
}
