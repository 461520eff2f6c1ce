/** What the modules of a step declare: functions, constants, variables; see translate.ts. */
import { parse } from '@babel/parser';
import type * as t from '@babel/types';

/** I integer, R real of all lanes, V real of a lane, B truth of a lane, b truth common to all lanes. */
export type Type = 'I' | 'R' | 'V' | 'B' | 'b' | 'void';

export interface SourceModule {
  file: string;
  text: string;
}

/** A name and what it stands for; `value` where that is known before anything runs. */
export interface Named {
  name: string;
  type: Type;
  value?: number;
  fixed: boolean;
}

export interface Routine {
  name: string;
  parameters: Named[];
  result: Type;
  body: t.BlockStatement;
  file: string;
  exported: boolean;
  /** Functions it calls, once for every place where it does. */
  calls: string[];
  loops: boolean;
  /** Whether it writes to memory or to variables of its module, itself or by what it calls. */
  writes: boolean;
  /** Nodes of its tree, with those of the functions that stand in it where they are called. */
  size: number;
  /** Whether it stands where it is called. */
  inline: boolean;
}

/** The language a step is translated to: how it says what the step's own language says otherwise. */
export interface Target {
  /** What stands before everything. */
  prelude(routines: readonly Routine[]): string;
  real(digits: string): string;
  /** The same number in every lane: a known one, and a real of all lanes. */
  constant(value: number, digits: string): string;
  spread(real: string): string;
  variable(fixed: boolean, type: Type, name: string, value: string): string;
  /** Head of a function; `outside`: callers outside can have it. */
  signature(routine: Routine, outside: boolean): string;
  /** An entry of N, K or X at the sum of what is known at run time only and a constant. */
  load(array: 'N' | 'K' | 'X', rest: string | undefined, constant: number): string;
  store(array: 'N' | 'K' | 'X', rest: string | undefined, constant: number, value: string): string;
}

export class SourceError extends Error {
  constructor(file: string, node: t.Node, sentence: string) {
    super(`${file}:${node.loc?.start.line ?? 0}: ${sentence}`);
  }
}

export interface Declaration {
  file: string;
  name: string;
  /** A constant or a variable of a module. */
  declarator: t.VariableDeclarator;
  fixed: boolean;
}

/** Functions without loops up to this size stand where they are called. */
const SMALL = 120;

interface TopLevel {
  file: string;
  node: t.FunctionDeclaration | t.VariableDeclaration;
  exported: boolean;
}

export class Program {
  readonly routines = new Map<string, Routine>();
  readonly declarations: Declaration[] = [];
  /** Names that modules keep to themselves: by file, then by name, how they are called in the one text. */
  private readonly own = new Map<string, Map<string, string>>();

  constructor(modules: readonly SourceModule[]) {
    const all = modules.flatMap(topLevel);
    this.giveNames(all);
    for (const { file, node, exported } of all)
      if (node.type === 'FunctionDeclaration') this.addRoutine(file, node, exported);
      else this.addVariables(file, node);
    for (const routine of this.routines.values())
      routine.calls = routine.calls.filter((name) => this.routines.has(name));
    for (const routine of this.routines.values()) this.refuseRecursion(routine, []);
    this.spreadWrites();
    this.chooseInline();
  }

  /** How a name of a module is called in the one text of all. */
  called(file: string, name: string): string {
    return this.own.get(file)?.get(name) ?? name;
  }

  private giveNames(all: readonly TopLevel[]): void {
    const taken = new Set<string>();
    const sorted = [...all].sort((a, b) => Number(b.exported) - Number(a.exported));
    for (const { file, node, exported } of sorted) {
      const own = this.own.get(file) ?? new Map<string, string>();
      this.own.set(file, own);
      for (const name of namesOf(file, node)) {
        if (exported && taken.has(name))
          throw new SourceError(file, node, `${name} is exported twice`);
        let called = name;
        for (let n = 2; taken.has(called); n++) called = `${name}_${n}`;
        taken.add(called);
        if (!exported) own.set(name, called);
      }
    }
  }

  private addVariables(file: string, declaration: t.VariableDeclaration): void {
    for (const declarator of declaration.declarations) {
      const name = this.called(file, nameOf(file, declarator.id));
      this.declarations.push({ file, name, declarator, fixed: declaration.kind === 'const' });
    }
  }

  private addRoutine(file: string, f: t.FunctionDeclaration, exported: boolean): void {
    const name = this.called(file, f.id!.name);
    const parameters = f.params.map((one) => ({
      name: nameOf(file, one),
      type: typeOf(file, one, (one as t.Identifier).typeAnnotation),
      fixed: false,
    }));
    const result = typeOf(file, f, f.returnType);
    const { calls, ...found } = survey(f.body);
    this.routines.set(name, {
      ...{ name, parameters, result, body: f.body, file, exported, ...found },
      calls: calls.map((one) => this.called(file, one)),
    });
  }

  private spreadWrites(): void {
    const variables = new Set(this.declarations.flatMap((one) => (one.fixed ? [] : [one.name])));
    for (const routine of this.routines.values())
      routine.writes = [...assigned(routine.body)].some(
        (name) => name === '[]' || variables.has(this.called(routine.file, name)),
      );
    for (let again = true; again; ) {
      again = false;
      for (const routine of this.routines.values()) {
        if (routine.writes) continue;
        routine.writes = routine.calls.some((name) => this.routines.get(name)!.writes);
        again ||= routine.writes;
      }
    }
  }

  private chooseInline(): void {
    const done = new Set<Routine>();
    const places = [...this.routines.values()].flatMap(({ calls }) => calls);
    const choose = (routine: Routine) => {
      if (done.has(routine)) return;
      done.add(routine);
      for (const name of routine.calls) {
        const called = this.routines.get(name)!;
        choose(called);
        if (called.inline) routine.size += called.size;
      }
      const once = places.filter((name) => name === routine.name).length === 1;
      routine.inline = !routine.loops && (routine.size <= SMALL || once);
    };
    for (const routine of this.routines.values()) choose(routine);
  }

  private refuseRecursion(routine: Routine, path: string[]): void {
    if (path.includes(routine.name))
      throw new SourceError(routine.file, routine.body, `${routine.name} calls itself`);
    for (const name of routine.calls)
      this.refuseRecursion(this.routines.get(name)!, [...path, routine.name]);
  }
}

/** Constants, variables and functions of a module, in order. */
function topLevel({ file, text }: SourceModule): TopLevel[] {
  const tree = parse(text, {
    sourceType: 'module',
    plugins: ['typescript'],
    sourceFilename: file,
  });
  return tree.program.body.flatMap((statement) => {
    const exported = statement.type === 'ExportNamedDeclaration';
    const node = (exported ? statement.declaration : statement) ?? statement;
    if (node.type === 'FunctionDeclaration' || node.type === 'VariableDeclaration')
      return [{ file, node, exported }];
    if (isTypesOnly(node)) return [];
    throw new SourceError(file, node, 'a step has constants, variables and functions only');
  });
}

const namesOf = (file: string, node: TopLevel['node']) =>
  node.type === 'FunctionDeclaration'
    ? [node.id!.name]
    : node.declarations.map((one) => nameOf(file, one.id));

const isTypesOnly = (node: t.Node) =>
  /^(Import|ExportAll|ExportNamed|TSType|TSInterface)/.test(node.type);

export function nameOf(file: string, node: t.Node): string {
  if (node.type === 'Identifier') return node.name;
  throw new SourceError(file, node, 'a plain name is needed here');
}

const TYPES: Record<string, Type> = { I: 'I', R: 'R', V: 'V', B: 'B' };

/** The type that an annotation names. */
export function typeOf(file: string, node: t.Node, annotation: t.Node | null | undefined): Type {
  const type = annotation?.type === 'TSTypeAnnotation' ? annotation.typeAnnotation : undefined;
  if (type?.type === 'TSBooleanKeyword') return 'b';
  if (type?.type === 'TSVoidKeyword') return 'void';
  const name = type?.type === 'TSTypeReference' && type.typeName.type === 'Identifier';
  const found = name ? TYPES[(type.typeName as t.Identifier).name] : undefined;
  if (!found) throw new SourceError(file, node, 'a type is needed here: I, R, V, B or boolean');
  return found;
}

/** Every node of a tree. */
function* nodes(node: t.Node): Generator<t.Node> {
  yield node;
  for (const value of Object.values(node)) {
    for (const child of Array.isArray(value) ? value : [value])
      if (child && typeof child.type === 'string' && child.loc) yield* nodes(child);
  }
}

function survey(body: t.Node) {
  const all = [...nodes(body)];
  const called = all.flatMap((node) =>
    node.type === 'CallExpression' && node.callee.type === 'Identifier' ? [node.callee.name] : [],
  );
  const loops = all.some(({ type }) => type === 'ForStatement' || type === 'WhileStatement');
  return { calls: called, loops, size: all.length, writes: false, inline: false };
}

/** Names that are assigned to; `[]` for memory. */
function assigned(body: t.Node): Set<string> {
  const found = new Set<string>();
  for (const node of nodes(body)) {
    const target =
      node.type === 'AssignmentExpression'
        ? node.left
        : node.type === 'UpdateExpression'
          ? node.argument
          : undefined;
    if (target) found.add(target.type === 'Identifier' ? target.name : '[]');
    if (
      node.type === 'CallExpression' &&
      node.callee.type === 'Identifier' &&
      node.callee.name === 'scatterLane'
    )
      found.add('[]');
  }
  return found;
}
