/** Values of a scenario changed from outside, as if the file said so. */
import type { ValveFlowSpecification } from '../specification.ts';
import { DIMENSIONS, type Dimension } from './dimension.ts';
import { type Key, type Leaf, readLeaf } from './key.ts';
import { keyAt } from './keyPath.ts';
import type { Problem } from './view.ts';

/** One key with what it should say. */
export interface Change {
  /** Keys and row numbers from the root, joined by dots. */
  path: string;
  /** What the file would say there. */
  text: string;
}

/** The tree of a scenario file with the changes made; the tree handed in stays as it is. */
export function changedTree(tree: unknown, changes: readonly Change[]): unknown {
  return withNodes(
    tree,
    changes.map(({ path, text }) => ({ path, node: text })),
  );
}

/** The same for a tree whose values are read, each change read by its leaf. */
export function patchedTree(
  tree: unknown,
  changes: readonly Change[],
  root: Key,
): { values: unknown; problems: Problem[] } {
  const problems: Problem[] = [];
  const nodes = changes.map(({ path, text }) => {
    const key = keyAt(root, path);
    if (key?.kind !== 'leaf') return { path, node: text };
    const read = readLeaf(text, key);
    if (!('problem' in read)) return { path, node: read };
    const { problem: message, ...rest } = read;
    problems.push({ path, message, ...rest });
    return { path, node: null };
  });
  return { values: withNodes(tree, nodes), problems };
}

/** A value of the program as a file would say it, to the last digit. */
export function insideText(value: number, { dimension }: Leaf, gauge = false): string {
  const { units, inside } = DIMENSIONS[dimension] as Dimension;
  const name = Object.keys(units).find((one) => units[one] === inside);
  return `${value} ${name}${gauge ? ' gauge' : ''}`.trim();
}

/** Every coefficient of a flow table that many times as large, but never above 1. */
export function flowChanges(
  path: string,
  { liftRatio, coefficient, reference }: Extract<ValveFlowSpecification, { kind: 'coefficient' }>,
  factor: number,
  written: (value: number) => string = String,
): Change[] {
  const points = liftRatio.flatMap((ratio, i) => [
    { path: `${path}.points.${i}.liftRatio`, text: written(ratio) },
    {
      path: `${path}.points.${i}.coefficient`,
      text: written(Math.min(1, factor * coefficient[i]!)),
    },
  ]);
  return [{ path: `${path}.reference`, text: reference }, ...points];
}

type Branch = Record<string, unknown>;

/** What lies beside the nodes is shared with the tree handed in. */
function withNodes(tree: unknown, nodes: readonly { path: string; node: unknown }[]): unknown {
  const fresh = new Set<object>();
  const own = (node: unknown, next: string): Branch => {
    if (node instanceof Object && fresh.has(node)) return node as Branch;
    const empty = /^\d+$/.test(next) ? [] : {};
    const copy = node instanceof Object ? (Array.isArray(node) ? [...node] : { ...node }) : empty;
    fresh.add(copy);
    return copy as Branch;
  };
  let root = tree;
  for (const { path, node } of nodes) {
    const names = path.split('.');
    let branch = own(root, names[0]!);
    root = branch;
    names.forEach((name, i) => {
      const next = names[i + 1];
      const child = Object.hasOwn(branch, name) ? branch[name] : undefined;
      const here = next === undefined ? node : own(child, next);
      branch[name] = here;
      branch = here as Branch;
    });
  }
  return root;
}
