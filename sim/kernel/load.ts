/**
 * A step compiled for lanes, in a memory of its own. N and K are common to all lanes; place e of X
 * holds lane l at X[lanes e + l].
 */
import { AT, BYTES_OF_LANES } from './layout.ts';

export type Lanes = 'f64x2' | 'f32x4';

export interface Kernel {
  lanes: 2 | 4;
  N: Int32Array<ArrayBuffer>;
  K: Float64Array<ArrayBuffer> | Float32Array<ArrayBuffer>;
  X: Float64Array<ArrayBuffer> | Float32Array<ArrayBuffer>;
  /** Functions of the step whose arguments and result are common to all lanes. */
  call: Record<string, (...given: number[]) => number>;
}

const PAGE = 65536;

/** A module from its text; one serves any number of kernels. */
export function moduleOf(base64: string): WebAssembly.Module {
  return new WebAssembly.Module(Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0)));
}

/** A kernel with room for so many places in X. */
export function load(module: WebAssembly.Module, lanes: Lanes, places: number): Kernel {
  const initial = Math.ceil((AT.X + places * (1 << BYTES_OF_LANES)) / PAGE);
  const memory = new WebAssembly.Memory({ initial });
  const { exports } = new WebAssembly.Instance(module, { env: { memory } });
  const { buffer } = memory;
  const Reals = lanes === 'f64x2' ? Float64Array : Float32Array;
  const real = Reals.BYTES_PER_ELEMENT;
  return {
    lanes: lanes === 'f64x2' ? 2 : 4,
    N: new Int32Array(buffer, AT.N, (AT.K - AT.N) / Int32Array.BYTES_PER_ELEMENT),
    K: new Reals(buffer, AT.K, (AT.X - AT.K) / real),
    X: new Reals(buffer, AT.X, (places * (1 << BYTES_OF_LANES)) / real),
    call: exports as Kernel['call'],
  };
}
