/**
 * Who runs this program for npm. Between npm and a program stands the shell that npm runs scripts in, and the
 * script may run npm again: program, shell, npm, shell, npm. Each is known by its parent; when one goes, the one
 * that it ran gets another. Read from /proc; where there is none the program's own parent is all that is known.
 */
import { readFileSync } from 'node:fs';

/** A process and the parent that it had. */
export interface Link {
  id: number;
  parent: number;
}

/** Programs, shells and npm from this one up to the outermost npm. */
export function linksToNpm(): Link[] {
  const links: Link[] = [];
  let named = 1;
  for (let id = process.pid; ; ) {
    const parent = parentOf(id);
    const name = parent === undefined ? '' : nameOf(parent);
    if (parent === undefined || !RUNS_FOR_NPM.test(name)) break;
    links.push({ id, parent });
    if (name.startsWith('npm')) named = links.length;
    id = parent;
  }
  // Beyond the last npm is the shell of whoever called it, which may go.
  return links.length > 0 ? links.slice(0, named) : [{ id: process.pid, parent: process.ppid }];
}

export const isBroken = ({ id, parent }: Link): boolean => parentOf(id) !== parent;

const RUNS_FOR_NPM = /^npm|^[a-z]*sh$/;

const nameOf = (id: number) => read(`/proc/${id}/comm`)?.trim() ?? '';

function parentOf(id: number): number | undefined {
  if (id === process.pid) return process.ppid;
  // The name, in brackets, may hold anything; state and parent follow it.
  const [, , parent] =
    read(`/proc/${id}/stat`)
      ?.split(/.*\) /s)[1]
      ?.match(/^(\S) (\d+)/) ?? [];
  return parent === undefined ? undefined : Number(parent);
}

function read(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
}
