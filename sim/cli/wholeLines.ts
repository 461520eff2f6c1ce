/** Files of lines read piece by piece, so that their size does not matter. A last line without its end is torn. */
import { closeSync, fstatSync, openSync, readSync } from 'node:fs';

/** Bytes that are read at once. */
const PIECE = 1 << 16;
const LINE_END = 0x0a;

/** Every whole line, without its end. */
export function* wholeLinesOf(file: string): Iterable<string> {
  const handle = openSync(file, 'r');
  try {
    const piece = Buffer.alloc(PIECE);
    let begun = Buffer.alloc(0);
    for (;;) {
      const read = readSync(handle, piece, 0, PIECE, null);
      if (read === 0) return;
      const bytes = Buffer.concat([begun, piece.subarray(0, read)]);
      const end = bytes.lastIndexOf(LINE_END) + 1;
      if (end > 0) yield* bytes.toString('utf8', 0, end - 1).split('\n');
      begun = bytes.subarray(end);
    }
  } finally {
    closeSync(handle);
  }
}

/** Bytes of a file up to the end of its last whole line. */
export function wholeBytes(file: string): number {
  const handle = openSync(file, 'r');
  try {
    const piece = Buffer.alloc(PIECE);
    for (let end = fstatSync(handle).size; end > 0; end -= PIECE) {
      const from = Math.max(end - PIECE, 0);
      const read = readSync(handle, piece, 0, end - from, from);
      const found = piece.subarray(0, read).lastIndexOf(LINE_END);
      if (found >= 0) return from + found + 1;
    }
    return 0;
  } finally {
    closeSync(handle);
  }
}
