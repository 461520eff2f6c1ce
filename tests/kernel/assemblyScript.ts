/** A step as AssemblyScript, and the built-ins of sim/step/builtins.ts for lanes. */
import { AT, BYTES_OF_LANES } from '../../sim/kernel/layout.ts';
import type { Lanes } from '../../sim/kernel/load.ts';

import type { Routine, Target, Type } from './program.ts';

interface Form {
  real: string;
  /** Integer lanes of the same width, and their scalar. */
  bits: string;
  word: string;
  /** log2 of the bytes of a real. */
  shift: number;
  count: number;
  mantissa: number;
  /** Bits of sqrt(1/2), as in builtins.ts; of 1.5 x 2^(bits of the mantissa). */
  rootHalf: string;
  rounder: string;
}

const FORMS: Record<Lanes, Form> = {
  f64x2: {
    ...{ real: 'f64', bits: 'i64x2', word: 'i64', shift: 3, count: 2, mantissa: 52 },
    ...{ rootHalf: '0x3fe6a09e00000000', rounder: '6755399441055744.0' },
  },
  f32x4: {
    ...{ real: 'f32', bits: 'i32x4', word: 'i32', shift: 2, count: 4, mantissa: 23 },
    ...{ rootHalf: '0x3f3504f3', rounder: '12582912.0' },
  },
};

/** Two operands, both lanes: name here, instruction. */
const TWO = { add: 'add', sub: 'sub', mul: 'mul', div: 'div', min: 'pmin', max: 'pmax' };
const COMPARED = ['lt', 'le', 'gt', 'ge', 'eq', 'ne'];
const ONE = ['neg', 'sqrt', 'abs'];

const inline = (text: string) => `@inline function ${text}`;

const TYPES: Record<Type, string> = { I: 'I', R: 'R', V: 'V', B: 'B', b: 'bool', void: 'void' };

export function assemblyScript(lanes: Lanes): Target {
  const { real, shift } = FORMS[lanes];
  const pool = new Pool(FORMS[lanes]);
  const FORM = {
    N: { bits: 2, load: 'load<i32>', store: 'store<i32>' },
    K: { bits: shift, load: `load<${real}>`, store: `store<${real}>` },
    X: { bits: BYTES_OF_LANES, load: 'v128.load', store: 'v128.store' },
  };
  const address = (array: keyof typeof AT, rest: string | undefined, constant: number) => {
    const offset = AT[array] + constant * 2 ** FORM[array].bits;
    if (rest === undefined) return { at: `${offset}`, offset: '' };
    return { at: `<usize>${rest} << ${FORM[array].bits}`, offset: `, ${offset}` };
  };
  return {
    prelude: () => prelude(lanes, pool),
    real: (digits) => (real === 'f64' ? digits : `<R>${digits}`),
    constant: (value, digits) => pool.constant(value, digits),
    spread: (text) =>
      text.startsWith(FORM.K.load)
        ? pool.splat(text.slice(FORM.K.load.length + 1, -1))
        : `$k(${text})`,
    variable: (fixed, type, name, value) =>
      `${fixed ? 'const' : 'let'} ${name}: ${TYPES[type]} = ${value}`,
    signature,
    load: (array, rest, constant) => {
      const { at, offset } = address(array, rest, constant);
      return `${FORM[array].load}(${at}${offset})`;
    },
    store: (array, rest, constant, value) => {
      const { at, offset } = address(array, rest, constant);
      return `${FORM[array].store}(${at}, ${value}${offset})`;
    },
  };
}

/**
 * Constants of lanes in memory: one load each, where V8 makes three instructions of a constant. A step
 * takes 0.95 of the time.
 */
class Pool {
  private readonly entries: string[] = [];

  constructor(private readonly form: Form) {}

  constant(value: number, digits: string): string {
    if (value === 0) return '$k(0)';
    const known = this.entries.indexOf(digits);
    const place = known < 0 ? this.entries.push(digits) - 1 : known;
    return this.splat(`POOL, ${place << this.form.shift}`);
  }

  /** The real at an address in every lane. */
  splat(address: string): string {
    return `v128.load${8 << this.form.shift}_splat(${address})`;
  }

  declaration(): string {
    return `const POOL: usize = memory.data<R>([${this.entries.join(', ')}]);`;
  }
}

function signature({ name, parameters, result, inline }: Routine, outside: boolean): string {
  const given = parameters.map((one) => `${one.name}: ${TYPES[one.type]}`).join(', ');
  const head = `${inline ? '@inline ' : ''}${outside ? 'export ' : ''}function`;
  return `${head} ${name}(${given}): ${TYPES[result]}`;
}

function prelude(lanes: Lanes, pool: Pool): string {
  const form = FORMS[lanes];
  const { real } = form;
  const two = [...Object.entries(TWO), ...COMPARED.map((name) => [name, name])];
  return [
    `type I = i32; type R = ${real}; type V = v128; type B = v128;`,
    `const DOUBLE: bool = ${real === 'f64'};`,
    inline(`$k(x: R): V { return ${lanes}.splat(x); }`),
    ...two.map(([name, op]) => inline(`$${name}(a: V, b: V): V { return ${lanes}.${op}(a, b); }`)),
    ...ONE.map((op) => inline(`$${op}(a: V): V { return ${lanes}.${op}(a); }`)),
    inline('$and(a: B, b: B): B { return v128.and(a, b); }'),
    inline('$or(a: B, b: B): B { return v128.or(a, b); }'),
    inline('$not(a: B): B { return v128.not(a); }'),
    inline('$pick(a: V, b: V, where: B): V { return v128.bitselect(a, b, where); }'),
    inline('$minR(a: R, b: R): R { return b < a ? b : a; }'),
    inline('$maxR(a: R, b: R): R { return a < b ? b : a; }'),
    inline(`$sqrtR(a: R): R { return sqrt<R>(a); }`),
    inline(`$absR(a: R): R { return abs<R>(a); }`),
    inline('$truth(x: bool): B { return i32x4.splat(x ? -1 : 0); }'),
    inline('$any(b: B): bool { return v128.any_true(b); }'),
    inline(`$all(b: B): bool { return ${form.bits}.all_true(b); }`),
    inline('$real(i: I): R { return <R>i; }'),
    inline('$truncated(x: R): I { return <i32>x; }'),
    bits(form, pool),
    lookup(lanes, form),
    lookupLane(lanes, form),
    scatterLane(lanes, form),
    pool.declaration(),
  ].join('\n');
}

function bits({ bits, mantissa, rootHalf, rounder }: Form, pool: Pool): string {
  const round = pool.constant(Number(rounder), rounder);
  return [
    inline(
      `$power(x: V): V { return ${bits}.shr_s(${bits}.sub(x, ${bits}.splat(${rootHalf})), ${mantissa}); }`,
    ),
    inline(`$exponent(x: V): V { return $sub(${bits}.add($power(x), ${round}), ${round}); }`),
    inline(`$mantissa(x: V): V { return ${bits}.sub(x, ${bits}.shl($power(x), ${mantissa})); }`),
    inline(`$rounded(x: V): V { return $sub($add(x, ${round}), ${round}); }`),
    inline(
      `$scaled(x: V, e: V): V { return ${bits}.add(x, ${bits}.shl($add(e, ${round}), ${mantissa})); }`,
    ),
  ].join('\n');
}

const whole = (lanes: Lanes) =>
  lanes === 'f64x2' ? 'i32x4.trunc_sat_f64x2_s_zero(x)' : 'i32x4.trunc_sat_f32x4_s(x)';
const back = (lanes: Lanes) =>
  lanes === 'f64x2' ? 'f64x2.convert_low_i32x4_s(n)' : 'f32x4.convert_i32x4_s(n)';

/** Lines for each lane. */
const each = (count: number, line: (lane: number) => string) =>
  Array.from({ length: count }, (_, lane) => `  ${line(lane)}`).join('\n');

/** Two neighbours of a table lie side by side: one load a lane, then they are sorted. */
function lookup(lanes: Lanes, { real, shift, count }: Form): string {
  return inline(`$lookup(base: I, x: V): V {
  const n = ${whole(lanes)};
  let low = $k(0), high = $k(0);
${each(count, (lane) => {
  const at = `p${lane}`;
  return `const ${at} = <usize>(base + i32x4.extract_lane(n, ${lane})) << ${shift}; low = ${lanes}.replace_lane(low, ${lane}, load<${real}>(${at}, ${AT.K})); high = ${lanes}.replace_lane(high, ${lane}, load<${real}>(${at}, ${AT.K + (1 << shift)}));`;
})}
  return $add(low, $mul($sub(x, ${back(lanes)}), $sub(high, low)));
}`);
}

function lookupLane(lanes: Lanes, { real, shift, count }: Form): string {
  return inline(`$lookupLane(base: I, stride: I, x: V): V {
  const n = ${whole(lanes)};
  let low = $k(0), high = $k(0);
${each(count, (lane) => {
  const [at, offset] = [`p${lane}`, AT.X + (lane << shift)];
  return `const ${at} = <usize>(base + stride * i32x4.extract_lane(n, ${lane})) << ${BYTES_OF_LANES}; low = ${lanes}.replace_lane(low, ${lane}, load<${real}>(${at}, ${offset})); high = ${lanes}.replace_lane(high, ${lane}, load<${real}>(${at} + (<usize>stride << ${BYTES_OF_LANES}), ${offset}));`;
})}
  return $add(low, $mul($sub(x, ${back(lanes)}), $sub(high, low)));
}`);
}

function scatterLane(lanes: Lanes, { real, word, bits, shift, count }: Form): string {
  return inline(`$scatterLane(base: I, stride: I, x: V, value: V, where: B): void {
  const n = ${whole(lanes)};
${each(
  count,
  (lane) =>
    `if (${bits}.extract_lane(where, ${lane}) != <${word}>0) store<${real}>(<usize>(base + stride * i32x4.extract_lane(n, ${lane})) << ${BYTES_OF_LANES}, ${lanes}.extract_lane(value, ${lane}), ${AT.X + (lane << shift)});`,
)}
}`);
}
