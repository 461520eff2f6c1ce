/** Scenario files in, results out. */
import { accessSync, constants, mkdirSync, readFileSync, readSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { InputError, readScenario, type Scenario } from '../index.ts';
import { utf8Text } from './encoding.ts';
import { storageProblem } from './storage.ts';
import { type Content, writeFile } from './writing.ts';

/** More bytes than any scenario has; larger files are not even read. */
const LARGEST_FILE = 4 << 20;

/** More bytes than any table of variants has. */
export const LARGEST_TABLE = 256 << 20;

/** A scenario with the text that it came from. */
export interface Source {
  file: string;
  text: string;
  scenario: Scenario;
}

/** What stands for standard input in place of a file, and what it is called. */
const STDIN = '-';

/** The name of a file, for messages and for what is named after it. */
export const nameOf = (file: string) => (file === STDIN ? 'stdin' : file);

/** Throws InputError where there is no such file, ScenarioError where it is no scenario. */
export function openSource(file: string): Source {
  const text = textOf(file);
  return { file: nameOf(file), text, scenario: readScenario(text, nameOf(file)) };
}

/** The text of a file; throws InputError where there is none. */
export function textOf(file: string, most = LARGEST_FILE): string {
  try {
    return utf8Text(file === STDIN ? standardInput() : bytesOf(file, most), nameOf(file));
  } catch (error) {
    throw fileError(error, nameOf(file));
  }
}

function bytesOf(file: string, most: number): Uint8Array {
  const about = statSync(file);
  if (about.isDirectory()) throw new InputError(`${file} is a folder; name a scenario file in it`);
  if (!about.isFile()) throw new InputError(`${file} is no ordinary file`);
  if (about.size > most) {
    const what = most > LARGEST_FILE ? 'here' : 'for a scenario';
    throw new InputError(`${file} is too large ${what}`);
  }
  return readFileSync(file);
}

/** Read in pieces, for it may have no end. */
function standardInput(): Uint8Array {
  const bytes = Buffer.alloc(LARGEST_FILE + 1);
  let length = 0;
  while (length < bytes.length) {
    const more = readSync(0, bytes, length, bytes.length - length, null);
    if (more === 0) return bytes.subarray(0, length);
    length += more;
  }
  throw new InputError('stdin is too large for a scenario');
}

/** Where results go. */
export interface Folder {
  path: string;
  /** Writes a file and gives its path. */
  write(name: string, content: Content): string;
}

/**
 * Makes the folder, before anything is computed. Throws InputError where it cannot be made or nothing may
 * be written into it.
 */
export function openFolder(path: string): Folder {
  if (path === '') throw new InputError('--out names no folder; write for example: --out results');
  try {
    makeFolder(resolve(path));
    accessSync(path, constants.W_OK | constants.X_OK);
  } catch (error) {
    throw fileError(error, path);
  }
  return {
    path,
    write(name, content) {
      const file = join(path, name);
      writeFile(file, content);
      return file;
    },
  };
}

/** One by one: a folder of the system that takes none would keep Node's own way of it busy for ever. */
function makeFolder(path: string): void {
  if (isFolder(path)) return;
  if (dirname(path) !== path) makeFolder(dirname(path));
  try {
    mkdirSync(path);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') throw new InputError(`${path}: no folder can be made there`);
    if (code !== 'EEXIST' || !isFolder(path)) throw error; // another run may have made it
  }
}

const isFolder = (path: string) =>
  statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;

function fileError(error: unknown, path: string): unknown {
  const problem = storageProblem(error);
  return problem === undefined ? error : new InputError(`${path}: ${problem}`);
}
