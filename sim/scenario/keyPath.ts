/** Paths of keys, `intake.trumpet.length`, derived from the tree. */
import type { Key, Leaf } from './key.ts';

/** Every path to a leaf below a key, as a type: a slip of the pen is a type error. */
export type LeafPath<K> = Key extends K
  ? string
  : K extends { kind: 'section'; keys: infer S }
    ? { [N in keyof S & string]: Step<N, S[N]> }[keyof S & string]
    : K extends { kind: 'list'; row: infer R }
      ? Step<`${number}`, R>
      : never;

type Step<N extends string, K> = K extends Leaf ? N : `${N}.${LeafPath<K>}`;

/** The key at a path of names and row numbers, or undefined where there is none. */
export function keyAt(root: Key, path: string): Key | undefined {
  if (path === '') return root;
  return path.split('.').reduce<Key | undefined>((key, name) => {
    if (key?.kind === 'list') return key.row;
    return key?.kind === 'section' && Object.hasOwn(key.keys, name) ? key.keys[name] : undefined;
  }, root);
}

/** Every leaf of the tree with its path; `*` stands for the number of a row. */
export function leavesBelow(key: Key, path = ''): [path: string, leaf: Leaf][] {
  if (key.kind === 'leaf') return [[path, key]];
  if (key.kind === 'list') return leavesBelow(key.row, join(path, '*'));
  if (key.kind !== 'section') return [];
  return Object.entries(key.keys).flatMap(([name, child]) => leavesBelow(child, join(path, name)));
}

export const join = (path: string, name: string | number) =>
  path === '' ? String(name) : `${path}.${name}`;

/** What stands at the path of a plain tree, or undefined. */
export function nodeAt(tree: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((node, name) => below(node, name), tree);
}

export function below(node: unknown, name: string): unknown {
  return node instanceof Object && Object.hasOwn(node, name)
    ? (node as Record<string, unknown>)[name]
    : undefined;
}
