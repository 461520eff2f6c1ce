/**
 * A step as C++ with vectors of the same lanes, so that a compiler of long standing can be measured on
 * the very same lines: as WebAssembly in the same memory, and native in an array of its own.
 */
import { AT, BYTES_OF_LANES } from '../../sim/kernel/layout.ts';
import type { Lanes } from '../../sim/kernel/load.ts';
import type { Routine, Target, Type } from '../kernel/program.ts';

const TYPES: Record<Type, string> = { I: 'I', R: 'R', V: 'V', B: 'B', b: 'bool', void: 'void' };

export function cpp(lanes: Lanes): Target {
  const entry = (array: 'N' | 'K' | 'X', rest: string | undefined, constant: number) => {
    const bits = { N: 2, K: lanes === 'f64x2' ? 3 : 2, X: BYTES_OF_LANES }[array];
    const offset = AT[array] + constant * 2 ** bits;
    return `${array}_AT(${offset}, (usize)(${rest ?? 0}) << ${bits})`;
  };
  return {
    prelude: (routines) =>
      [
        ...Object.entries(AT).map(([array, at]) => `#define AT_${array} ${at}`),
        '#include "lanes.h"',
        ...routines.map((one) => `${signature(one)};`),
      ].join('\n'),
    real: (digits) => `R(${digits})`,
    constant: (_, digits) => `$k(R(${digits}))`,
    spread: (real) => `$k(${real})`,
    variable: (fixed, type, name, value) =>
      `${fixed ? 'const ' : ''}${TYPES[type]} ${name} = ${value}`,
    signature,
    load: entry,
    store: (array, rest, constant, value) => `${entry(array, rest, constant)} = ${value}`,
  };
}

/** Everything stays inside but `run`, through which harness and page drive the step. */
function signature({ name, parameters, result, inline }: Routine): string {
  const given = parameters.map((one) => `${TYPES[one.type]} ${one.name}`).join(', ');
  const kind = name === 'run' ? 'OUTSIDE' : inline ? 'INLINE' : 'static';
  return `${kind} ${TYPES[result]} ${name}(${given})`;
}
