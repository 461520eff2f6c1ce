/**
 * From the language of a step (sim/step/lanes.ts says its words) to a language with lanes.
 * Types are found from the leaves up; reals of a lane become 128 bit vectors, their operators calls,
 * their comparisons masks, a choice by a mask a selection of bits. The rest stays as it stands.
 */
import type * as t from '@babel/types';
import { Expressions } from './expressions.ts';
import {
  type Declaration,
  nameOf,
  Program,
  type Routine,
  type SourceModule,
  type Target,
  type Type,
  typeOf,
} from './program.ts';

/** Types that a caller outside can give and take. */
const OUTSIDE = new Set<Type>(['I', 'R', 'b', 'void']);

/** One text of all modules; callers outside get every exported function of common types. */
export function translate(modules: readonly SourceModule[], target: Target): string {
  const program = new Program(modules);
  const lines = new Translation(program, target).lines();
  return [target.prelude([...program.routines.values()]), ...lines].join('\n');
}

class Translation extends Expressions {
  private current: Routine | undefined;

  lines(): string[] {
    const declared = this.program.declarations.map((one) => this.global(one));
    return [
      ...declared.filter((line) => line !== ''),
      ...[...this.program.routines.values()].map((one) => this.routine(one)),
    ];
  }

  private global({ file, name, declarator, fixed }: Declaration): string {
    this.in(file);
    const type = typeOf(file, declarator, (declarator.id as t.Identifier).typeAnnotation);
    const init = declarator.init ?? this.refuse(declarator, `${name} has no value`);
    const { value } = this.value(init);
    if (value === undefined && init.type !== 'BooleanLiteral')
      this.refuse(init, 'a module has constants of numbers and earlier constants only');
    if (fixed && value !== undefined) {
      this.globals.set(name, { name, type, fixed, value });
      return '';
    }
    this.globals.set(name, { name, type, fixed });
    return `${this.target.variable(fixed, type, name, this.as(init, type))};`;
  }

  private routine(routine: Routine): string {
    const { parameters, result, body, file, exported } = routine;
    this.in(file);
    this.current = routine;
    this.enter();
    for (const parameter of parameters) this.declare(parameter);
    const text = this.block(body, '');
    this.leave();
    const types = [result, ...parameters.map(({ type }) => type)];
    const outside = exported && types.every((type) => OUTSIDE.has(type));
    return `${this.target.signature(routine, outside)} ${text}`;
  }

  private block(node: t.Statement, indent: string): string {
    const statements = node.type === 'BlockStatement' ? node.body : [node];
    this.enter();
    const lines = statements.map((one) => `${indent}  ${this.statement(one, `${indent}  `)}`);
    this.leave();
    return `{\n${lines.join('\n')}\n${indent}}`;
  }

  private statement(node: t.Statement, indent: string): string {
    switch (node.type) {
      case 'VariableDeclaration':
        return `${this.variables(node)};`;
      case 'ExpressionStatement':
        return `${this.effect(node.expression)};`;
      case 'IfStatement': {
        const test = `if (${this.condition(node.test)}) ${this.block(node.consequent, indent)}`;
        return node.alternate ? `${test} else ${this.block(node.alternate, indent)}` : test;
      }
      case 'ForStatement':
        return this.loop(node, indent);
      case 'WhileStatement':
        return `while (${this.condition(node.test)}) ${this.block(node.body, indent)}`;
      case 'ReturnStatement':
        return node.argument
          ? `return ${this.as(node.argument, this.current!.result)};`
          : 'return;';
      case 'BreakStatement':
        return 'break;';
      case 'ContinueStatement':
        return 'continue;';
      case 'BlockStatement':
        return this.block(node, indent);
      default:
        return this.refuse(node, `${node.type} is not part of the language of a step`);
    }
  }

  private condition(node: t.Expression): string {
    const value = this.value(node);
    if (value.type === 'B')
      this.refuse(node, 'lane mask used as a condition; use any() or all(), or choose with ? :');
    return this.cast(value, 'b', node);
  }

  private variables(node: t.VariableDeclaration): string {
    const parts = node.declarations.map((one) => {
      const name = nameOf(this.file, one.id);
      const annotation = (one.id as t.Identifier).typeAnnotation;
      const init = one.init ?? this.refuse(one, `${name} has no value`);
      const asked = annotation ? typeOf(this.file, one, annotation) : undefined;
      const value = this.value(init, asked);
      if (asked === undefined && value.type === 'literal')
        this.refuse(one, `the type of ${name} is not known; give it an annotation`);
      const type = asked ?? (value.type as Type);
      const text = this.cast(value, type, init);
      this.declare({ name, type, fixed: node.kind === 'const' });
      return this.target.variable(node.kind === 'const', type, name, text);
    });
    return parts.join('; ');
  }

  private loop(node: t.ForStatement, indent: string): string {
    this.enter();
    const first =
      node.init?.type === 'VariableDeclaration' && node.init.declarations.length === 1
        ? this.variables(node.init)
        : this.refuse(node, 'a loop begins with let and one name');
    const test = this.condition(node.test ?? this.refuse(node, 'a loop has a condition'));
    const next = this.effect(node.update ?? this.refuse(node, 'a loop has a step'));
    const text = `for (${first}; ${test}; ${next}) ${this.block(node.body, indent)}`;
    this.leave();
    return text;
  }

  /** Assignments and calls. */
  private effect(node: t.Expression): string {
    if (node.type === 'CallExpression') return this.call(node).text;
    if (node.type === 'UpdateExpression' && node.argument.type === 'Identifier') {
      const { name, type } = this.assignable(node.argument);
      if (type !== 'I') this.refuse(node, 'only integers are counted');
      return `${name}${node.operator}`;
    }
    if (node.type !== 'AssignmentExpression') return this.refuse(node, 'this does nothing');
    return this.assignment(node);
  }

  private assignable(node: t.Identifier) {
    const named = this.named(node);
    if (named.fixed) this.refuse(node, `${named.name} is constant`);
    return named;
  }

  private assignment(node: t.AssignmentExpression): string {
    const { left, operator, right } = node;
    const target = left.type === 'TSNonNullExpression' ? left.expression : left;
    const value: t.Expression =
      operator === '='
        ? right
        : {
            ...node,
            type: 'BinaryExpression',
            operator: operator.slice(0, -1) as '+',
            left: target as t.Expression,
            right,
          };
    if (target.type === 'Identifier') {
      const { name, type } = this.assignable(target);
      return `${name} = ${this.as(value, type)}`;
    }
    if (target.type !== 'MemberExpression') return this.refuse(node, 'this cannot be assigned to');
    const place = this.place(target);
    return place.store(this.as(value, place.type));
  }
}
