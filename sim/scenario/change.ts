/** Values of a scenario changed from outside, as if the file said so. */

import { DIMENSIONS } from './dimension.ts';
import type { Leaf } from './leaf.ts';

/** One key with what it should say. */
export interface Change {
  /** Keys and row numbers from the root, joined by dots. */
  path: string;
  /** What the file would say there. */
  text: string;
}

/** The tree of a scenario file with the changes made; the tree handed in stays as it is. */
export function changedTree(tree: unknown, changes: readonly Change[]): unknown {
  if (changes.length === 0) return tree;
  const copy = structuredClone(tree);
  for (const { path, text } of changes) setAt(copy as Branch, path.split('.'), text);
  return copy;
}

/** A value of the program as a file would say it, to the last digit. */
export function insideText(value: number, { dimension }: Leaf, gauge = false): string {
  return `${value} ${DIMENSIONS[dimension].inside}${gauge ? ' gauge' : ''}`.trim();
}

type Branch = Record<string, unknown>;

function setAt(branch: Branch, [key, ...rest]: string[], text: string): void {
  if (key === undefined) return;
  if (rest.length === 0) {
    branch[key] = text;
    return;
  }
  const child = Object.hasOwn(branch, key) ? branch[key] : undefined;
  const below = child instanceof Object ? child : /^\d+$/.test(rest[0]!) ? [] : {};
  branch[key] = below;
  setAt(below as Branch, rest, text);
}
