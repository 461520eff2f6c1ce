/** What the translator says of a source that is not in the language of a step. */
import { describe, expect, it } from 'vitest';
import { assemblyScript } from './assemblyScript.ts';
import { translate } from './translate.ts';

const inBody = (body: string) => `export function f(v: V, r: R, i: I, m: B, c: boolean): void {
${body}
}`;

const said = (text: string) => {
  try {
    translate([{ file: 'sim/step/some.ts', text }], assemblyScript('f64x2'));
  } catch (error) {
    return (error as Error).message;
  }
  return undefined;
};

describe('the translator refuses', () => {
  it.each([
    [
      'if (v > 0) X[0] = v;',
      'lane mask used as a condition; use any() or all(), or choose with ? :',
    ],
    ['while (m) i++;', 'lane mask used as a condition; use any() or all(), or choose with ? :'],
    ['const a = 3;', 'the type of a is not known; give it an annotation'],
    ['const a: V = v * i;', 'an integer among reals; use real()'],
    ['const a: R = v;', 'a real of all lanes is needed here, this is a real of a lane'],
    ['const a: I = 0.5;', 'an integer is needed here, this is a number'],
    ['const a: I = i / 2;', '/ between integers is not part of the language of a step'],
    ['const a: B = m && c;', '&& between a mask of lanes and a boolean of all lanes'],
    ['const a: B = m === m;', 'masks of lanes are joined by &&, || and ! only'],
    ['const a: V = [v];', 'ArrayExpression is not part of the language of a step'],
    ['const a: V = Math.sin(v);', 'only plain functions are called'],
    ['const a: V = sine(v);', 'sine is not a function of the step'],
    ['const a: V = sqrt(v, v);', 'sqrt takes 1 arguments'],
    ['const a: V = min(v, m);', 'a real of a lane is needed here, this is a mask of lanes'],
    ['const a: V = w;', 'w is not known here'],
    ['const a: V = Y[0];', 'only N, K and X have entries'],
    ['X[r] = v;', 'an integer is needed here, this is a real of all lanes'],
    ['K[i] = v;', 'a real of all lanes is needed here, this is a real of a lane'],
    ['const a: V = 1; a = v;', 'a is constant'],
    ['for (i = 0; i < 3; i++) X[i] = v;', 'a loop begins with let and one name'],
    ['r++;', 'only integers are counted'],
    ['v > 0;', 'this does nothing'],
    ['const a: string = 0;', 'a type is needed here: I, R, V, B or boolean'],
    ['return v;', 'nothing is needed here, this is a real of a lane'],
    ['switch (i) {}', 'SwitchStatement is not part of the language of a step'],
  ])('%s', (body, sentence) => {
    expect(said(inBody(body))).toBe(`sim/step/some.ts:2: ${sentence}`);
  });

  it('a choice of lanes between what writes', () => {
    const text = `function store(v: V): V {\n  X[0] = v;\n  return v;\n}
function through(v: V): V {\n  return store(v);\n}
export function f(v: V): void {\n  X[1] = v > 0 ? through(v) : 0;\n}`;
    const sentence = 'a function that writes, where lanes choose: both sides are always worked out';
    expect(said(text)).toBe(`sim/step/some.ts:9: ${sentence}`);
  });

  it.each([
    [
      'function f(v: V): V {\n  return g(v);\n}\nfunction g(v: V): V {\n  return f(v);\n}',
      '1: f calls itself',
    ],
    ['class A {}', '1: a step has constants, variables and functions only'],
    ['const A: R = N[0];', '1: a module has constants of numbers and earlier constants only'],
  ])('%s', (text, sentence) => {
    expect(said(text)).toBe(`sim/step/some.ts:${sentence}`);
  });

  it('one name exported by two modules', () => {
    const text = 'export const A: R = 1;';
    const modules = ['sim/step/a.ts', 'sim/step/b.ts'].map((file) => ({ file, text }));
    expect(() => translate(modules, assemblyScript('f64x2'))).toThrow(
      'sim/step/b.ts:1: A is exported twice',
    );
  });

  it('nothing that is in it', () => {
    expect(said(inBody('X[i] = m ? v : r;\n  if (c && any(m)) N[0] = i;'))).toBeUndefined();
  });
});
