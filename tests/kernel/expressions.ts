/** Expressions of a step in another language: types from the leaves up, plain operators as calls of lanes. */
import type * as t from '@babel/types';
import {
  type Named,
  type Program,
  type Routine,
  SourceError,
  type Target,
  type Type,
} from './program.ts';

/** A translated expression. A literal has no type until its neighbour gives it one. */
export interface Value {
  text: string;
  type: Type | 'literal';
  /** Known before anything runs: literals, and constants that are integers. */
  value?: number;
}

/** Types of the arguments and of the result; `*` is V if any argument is, else R. */
const BUILT_IN: Record<string, { of: string; gives: Type | '*' }> = {
  sqrt: { of: '*', gives: '*' },
  abs: { of: '*', gives: '*' },
  min: { of: '**', gives: '*' },
  max: { of: '**', gives: '*' },
  any: { of: 'B', gives: 'b' },
  all: { of: 'B', gives: 'b' },
  real: { of: 'I', gives: 'R' },
  truncated: { of: 'R', gives: 'I' },
  exponent: { of: 'V', gives: 'V' },
  mantissa: { of: 'V', gives: 'V' },
  rounded: { of: 'V', gives: 'V' },
  scaled: { of: 'VV', gives: 'V' },
  lookup: { of: 'IV', gives: 'V' },
  lookupLane: { of: 'IIV', gives: 'V' },
  scatterLane: { of: 'IIVVB', gives: 'void' },
};
const ARITHMETIC: Record<string, string> = { '+': 'add', '-': 'sub', '*': 'mul', '/': 'div' };
const COMPARED: Record<string, string> = {
  ...{ '<': 'lt', '<=': 'le', '>': 'gt', '>=': 'ge', '===': 'eq', '!==': 'ne' },
};
const TYPE_IN: Record<'N' | 'K' | 'X', Type> = { N: 'I', K: 'R', X: 'V' };
const LOGICAL: Record<string, string> = { '&&': 'and', '||': 'or' };
export const WORDS: Record<Type | 'literal', string> = {
  I: 'an integer',
  R: 'a real of all lanes',
  V: 'a real of a lane',
  B: 'a mask of lanes',
  b: 'a boolean of all lanes',
  void: 'nothing',
  literal: 'a number',
};

export class Expressions {
  protected readonly globals = new Map<string, Named>();
  private readonly scopes: Map<string, Named>[] = [];
  /** Calls translated so far that write; what is chosen by lane must not. */
  private writes = 0;

  constructor(
    readonly program: Program,
    readonly target: Target,
    protected file = '',
  ) {}

  in(file: string): void {
    this.file = file;
  }

  enter(): void {
    this.scopes.push(new Map());
  }

  leave(): void {
    this.scopes.pop();
  }

  declare(named: Named): void {
    this.scopes.at(-1)!.set(named.name, named);
  }

  refuse(node: t.Node, sentence: string): never {
    throw new SourceError(this.file, node, sentence);
  }

  named(node: t.Identifier): Named {
    for (let i = this.scopes.length - 1; i >= 0; i--) {
      const found = this.scopes[i]!.get(node.name);
      if (found) return found;
    }
    const global = this.globals.get(this.program.called(this.file, node.name));
    return global ?? this.refuse(node, `${node.name} is not known here`);
  }

  /** The text of an expression where a type is needed. */
  as(node: t.Node, want: Type): string {
    return this.cast(this.value(node, want), want, node);
  }

  /** A value where another type may be needed: literals and reals of all lanes adapt. */
  cast({ text, type, value }: Value, want: Type, node: t.Node): string {
    if (type === want) return text;
    if (type === 'literal') {
      if (want === 'V' || want === 'R') return this.literal(value!, want);
      if (want === 'I' && Number.isInteger(value)) return `${value}`;
    }
    if (type === 'R' && want === 'V')
      return value === undefined ? this.target.spread(text) : this.literal(value, want);
    if (want === 'B' && node.type === 'BooleanLiteral') return `$truth(${text})`;
    return this.refuse(node, `${WORDS[want]} is needed here, this is ${WORDS[type]}`);
  }

  private constant(value: number, type: Value['type']): Value {
    const text = type === 'R' || type === 'V' ? this.literal(value, type) : `${value}`;
    return { text, type, value };
  }

  private literal(value: number, want: 'R' | 'V'): string {
    const digits = Number.isInteger(value) ? value.toFixed(1) : `${value}`;
    return want === 'V' ? this.target.constant(value, digits) : `(${this.target.real(digits)})`;
  }

  /** Translates an expression; `want` only tells a choice between literals its type. */
  value(node: t.Node, want?: Type): Value {
    switch (node.type) {
      case 'NumericLiteral':
        return this.constant(node.value, 'literal');
      case 'BooleanLiteral':
        return { text: `${node.value}`, type: 'b' };
      case 'Identifier':
        return this.identifier(node);
      case 'MemberExpression':
        return this.member(node);
      case 'TSNonNullExpression':
        return this.value(node.expression, want);
      case 'UnaryExpression':
        return this.unary(node);
      case 'BinaryExpression':
        return this.binary(node);
      case 'LogicalExpression':
        return this.logical(node);
      case 'ConditionalExpression':
        return this.choice(node, want);
      case 'CallExpression':
        return this.call(node);
      default:
        return this.refuse(node, `${node.type} is not part of the language of a step`);
    }
  }

  private identifier(node: t.Identifier): Value {
    if (node.name === 'DOUBLE') return { text: 'DOUBLE', type: 'b' };
    const { name, type, value } = this.named(node);
    return value === undefined ? { text: name, type } : this.constant(value, type);
  }

  private member(node: t.MemberExpression): Value {
    if (node.object.type !== 'Identifier') return this.refuse(node, 'only N, K and X have entries');
    if (node.object.name === 'Math' && node.property.type === 'Identifier') {
      const value = Math[node.property.name as 'PI'];
      if (typeof value === 'number') return this.constant(value, 'literal');
    }
    const place = this.place(node);
    return { text: place.load, type: place.type };
  }

  /** How an entry of memory is read and written. */
  place(node: t.MemberExpression) {
    const name = node.object.type === 'Identifier' ? node.object.name : '';
    if (name !== 'N' && name !== 'K' && name !== 'X')
      return this.refuse(node, 'only N, K and X have entries');
    const { rest, constant } = this.sum(node.property);
    return {
      type: TYPE_IN[name],
      load: this.target.load(name, rest, constant),
      store: (value: string) => this.target.store(name, rest, constant, value),
    };
  }

  /** An index as a part known only at run time and a constant one, which costs nothing. */
  private sum(node: t.Node): { rest: string | undefined; constant: number } {
    if (node.type === 'BinaryExpression' && (node.operator === '+' || node.operator === '-')) {
      const [a, b] = [this.sum(node.left), this.sum(node.right)];
      if (node.operator === '+') {
        const rests = [a.rest, b.rest].filter((rest) => rest !== undefined);
        const rest = rests.length > 1 ? `(${rests.join(' + ')})` : rests[0];
        return { rest, constant: a.constant + b.constant };
      }
      if (b.rest === undefined) return { rest: a.rest, constant: a.constant - b.constant };
    }
    const value = this.value(node);
    if (value.value !== undefined) return { rest: undefined, constant: value.value };
    return { rest: this.cast(value, 'I', node), constant: 0 };
  }

  private unary(node: t.UnaryExpression): Value {
    const { text, type, value } = this.value(node.argument);
    if (node.operator === '!') {
      if (type === 'B') return { text: `$not(${text})`, type };
      return { text: `!${this.cast({ text, type }, 'b', node)}`, type: 'b' };
    }
    if (node.operator !== '-') return this.refuse(node, `${node.operator} is not used here`);
    if (value !== undefined) return this.constant(-value, type);
    if (type === 'V') return { text: `$neg(${text})`, type };
    if (type === 'I' || type === 'R') return { text: `(-${text})`, type };
    return this.refuse(node, `a minus before ${WORDS[type]}`);
  }

  private binary(node: t.BinaryExpression): Value {
    const { operator } = node;
    const [a, b] = [this.value(node.left), this.value(node.right)];
    if (operator in COMPARED) return this.comparison(node, a, b);
    if (a.value !== undefined && b.value !== undefined) {
      const value = folded(operator, a.value, b.value);
      if (value !== undefined) {
        const type = a.type === 'literal' ? b.type : a.type;
        return this.constant(value, type);
      }
    }
    const type = this.common(node, a, b);
    const both = [this.cast(a, type, node.left), this.cast(b, type, node.right)] as const;
    if (type === 'I') {
      if (!/^([-+*&|]|<<|>>)$/.test(operator))
        this.refuse(node, `${operator} between integers is not part of the language of a step`);
      return { text: `(${both[0]} ${operator} ${both[1]})`, type };
    }
    const name = ARITHMETIC[operator];
    if (name === undefined || (type !== 'R' && type !== 'V'))
      return this.refuse(node, `${operator} between ${WORDS[a.type]} and ${WORDS[b.type]}`);
    if (type === 'R') return { text: `(${both[0]} ${operator} ${both[1]})`, type };
    return { text: `$${name}(${both.join(', ')})`, type };
  }

  /** The type two operands meet in. */
  private common(node: t.Node, a: Value, b: Value): Type {
    const types = [a.type, b.type];
    const [real, whole] = [types.includes('R') || types.includes('V'), types.includes('I')];
    if (real && whole) this.refuse(node, 'an integer among reals; use real()');
    for (const type of ['V', 'R', 'I', 'B', 'b'] as const) if (types.includes(type)) return type;
    return this.refuse(node, 'the type of this number is not known; give the name an annotation');
  }

  private comparison(node: t.BinaryExpression, a: Value, b: Value): Value {
    const type = this.common(node, a, b);
    const both = [this.cast(a, type, node.left), this.cast(b, type, node.right)] as const;
    if (type === 'V') return { text: `$${COMPARED[node.operator]}(${both.join(', ')})`, type: 'B' };
    if (type === 'B') return this.refuse(node, 'masks of lanes are joined by &&, || and ! only');
    const operator = node.operator.replace('===', '==').replace('!==', '!=');
    return { text: `(${both[0]} ${operator} ${both[1]})`, type: 'b' };
  }

  private logical(node: t.LogicalExpression): Value {
    const a = this.value(node.left);
    const before = this.writes;
    const b = this.value(node.right);
    const name = LOGICAL[node.operator];
    if (name === undefined) return this.refuse(node, `${node.operator} is not used here`);
    if (a.type === 'b' && b.type === 'b')
      return { text: `(${a.text} ${node.operator} ${b.text})`, type: 'b' };
    if (a.type !== 'B' || b.type !== 'B')
      return this.refuse(node, `${node.operator} between ${WORDS[a.type]} and ${WORDS[b.type]}`);
    this.refuseWrites(node, before);
    return { text: `$${name}(${a.text}, ${b.text})`, type: 'B' };
  }

  private choice(node: t.ConditionalExpression, want?: Type): Value {
    const test = this.value(node.test);
    const before = this.writes;
    const [a, b] = [this.value(node.consequent, want), this.value(node.alternate, want)];
    const literals = a.type === 'literal' && b.type === 'literal';
    if (test.type === 'B') {
      this.refuseWrites(node, before);
      const type = a.type === 'B' || b.type === 'B' ? 'B' : 'V';
      const both = [this.cast(a, type, node.consequent), this.cast(b, type, node.alternate)];
      return { text: `$pick(${both.join(', ')}, ${test.text})`, type };
    }
    const type = literals && want !== undefined ? want : this.common(node, a, b);
    const both = [this.cast(a, type, node.consequent), this.cast(b, type, node.alternate)] as const;
    return { text: `(${this.cast(test, 'b', node.test)} ? ${both[0]} : ${both[1]})`, type };
  }

  private refuseWrites(node: t.Node, before: number): void {
    if (this.writes > before)
      this.refuse(
        node,
        'a function that writes, where lanes choose: both sides are always worked out',
      );
  }

  call(node: t.CallExpression): Value {
    if (node.callee.type !== 'Identifier')
      return this.refuse(node, 'only plain functions are called');
    const { name } = node.callee;
    const routine = this.program.routines.get(this.program.called(this.file, name));
    if (routine) return this.ownCall(node, routine);
    const builtIn = BUILT_IN[name];
    if (!builtIn) return this.refuse(node, `${name} is not a function of the step`);
    if (builtIn.of.length !== node.arguments.length)
      this.refuse(node, `${name} takes ${builtIn.of.length} arguments`);
    if (name === 'scatterLane') this.writes++;
    if (builtIn.gives === '*') return this.realCall(node, name);
    const given = node.arguments.map((one, i) => this.as(one, builtIn.of[i] as Type));
    return { text: `$${name}(${given.join(', ')})`, type: builtIn.gives };
  }

  private ownCall(node: t.CallExpression, { name, parameters, result, writes }: Routine): Value {
    if (parameters.length !== node.arguments.length)
      this.refuse(node, `${name} takes ${parameters.length} arguments`);
    const given = node.arguments.map((one, i) => this.as(one, parameters[i]!.type));
    if (writes) this.writes++;
    return { text: `${name}(${given.join(', ')})`, type: result };
  }

  /** sqrt, abs, min, max: of lanes as soon as one argument is. */
  private realCall(node: t.CallExpression, name: string): Value {
    const values = node.arguments.map((one) => this.value(one));
    const type = values.some((one) => one.type === 'V') ? 'V' : 'R';
    const given = values.map((one, i) => this.cast(one, type, node.arguments[i]!));
    return { text: `$${name}${type === 'V' ? '' : 'R'}(${given.join(', ')})`, type };
  }
}

function folded(operator: string, a: number, b: number): number | undefined {
  if (operator === '+') return a + b;
  if (operator === '-') return a - b;
  if (operator === '*') return a * b;
  if (operator === '/') return a / b;
  return undefined;
}
