/**
 * Results on the disk: whole or not at all. A file is written beside its place and then renamed, so
 * that whoever reads meets the old one or the new one, and a full disk leaves the old one.
 */
import {
  closeSync,
  fsyncSync,
  lstatSync,
  openSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { ComputationError } from '../index.ts';
import { storageProblem } from './storage.ts';

/** A file whole, or piece by piece as the pieces are made. */
export type Content = string | Uint8Array | { pieces: Iterable<string | Uint8Array> };

/** Writes one file. Throws ComputationError where it cannot be written. */
export function writeFile(file: string, content: Content): void {
  const place = lstatSync(file, { throwIfNoEntry: false });
  try {
    // A link, or a device such as a pipe, is written where it stands.
    if (place && !place.isFile()) writeThrough(file, content);
    else writeBeside(file, content);
  } catch (error) {
    throw storageError(error, file);
  }
}

/** An error of the file system after something was computed. */
export function storageError(error: unknown, file: string): unknown {
  const problem = storageProblem(error);
  if (problem === undefined) return error;
  return new ComputationError(
    `${file} could not be written: ${problem}. What was there is as it was; points that a sweep has ` +
      'finished are kept, and --resume goes on from them',
  );
}

function writeBeside(file: string, content: Content): void {
  const beside = `${file}.part`;
  try {
    writeThrough(beside, content);
    renameSync(beside, file);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error;
  }
}

function writeThrough(file: string, content: Content): void {
  const handle = openSync(file, 'w');
  try {
    for (const piece of piecesOf(content)) writeFileSync(handle, piece);
    if (lstatSync(file).isFile()) fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

const piecesOf = (content: Content) =>
  typeof content === 'object' && 'pieces' in content ? content.pieces : [content];
