/** Scenario files in, results out. */
import { mkdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { InputError, readScenario, type Scenario, ScenarioError } from '../index.ts';
import { storageProblem } from './storage.ts';
import { writeFile } from './writing.ts';

/** More bytes than any scenario has; larger files are not even read. */
const LARGEST_FILE = 4 << 20;

/** A scenario with the text that it came from. */
export interface Source {
  file: string;
  text: string;
  scenario: Scenario;
}

/** Throws InputError where there is no such file, ScenarioError where it is no scenario. */
export function openSource(file: string): Source {
  const text = textOf(file);
  return { file, text, scenario: readScenario(text, file) };
}

/** The text of a file; throws InputError where there is none. */
export function textOf(file: string): string {
  try {
    const about = statSync(file);
    if (about.isDirectory())
      throw new InputError(`${file} is a folder; name a scenario file in it`);
    if (!about.isFile()) throw new InputError(`${file} is no ordinary file`);
    if (about.size > LARGEST_FILE) throw new InputError(`${file} is too large for a scenario`);
    return decoded(readFileSync(file), file);
  } catch (error) {
    throw fileError(error, file);
  }
}

function decoded(bytes: Uint8Array, file: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const message = 'the file is not UTF-8 text';
    const remedy = 'save it as plain text in UTF-8, which most editors do by default';
    throw new ScenarioError([
      { file, line: 1, column: 1, path: '', value: undefined, message, remedy },
    ]);
  }
}

/** Where results go. */
export interface Folder {
  path: string;
  /** Writes a file and gives its path. */
  write(name: string, text: string): string;
}

/** Makes the folder, before anything is computed. Throws InputError where it cannot be made. */
export function openFolder(path: string): Folder {
  try {
    mkdirSync(path, { recursive: true });
  } catch (error) {
    throw fileError(error, path);
  }
  return {
    path,
    write(name, text) {
      const file = join(path, name);
      writeFile(file, text);
      return file;
    },
  };
}

function fileError(error: unknown, path: string): unknown {
  const problem = storageProblem(error);
  return problem === undefined ? error : new InputError(`${path}: ${problem}`);
}
