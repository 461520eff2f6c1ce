/** Bytes as text. A file that is no UTF-8 is told by its line, and by what it seems to be. */
import { ScenarioError } from '../index.ts';

/** Throws ScenarioError where the bytes are no UTF-8 text. */
export function utf8Text(bytes: Uint8Array, file: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new ScenarioError([{ file, path: '', value: undefined, ...problemOf(bytes) }]);
  }
}

interface Problem {
  line: number;
  column: number;
  message: string;
  remedy: string;
}

const REMEDY = 'save it as plain text in UTF-8, which most editors offer beside "save as"';

function problemOf(bytes: Uint8Array): Problem {
  const whole = { line: 1, column: 1, remedy: REMEDY };
  const wide = wideName(bytes);
  if (wide) return { ...whole, message: `the file is ${wide} text, not UTF-8` };
  if (bytes.includes(0)) {
    return { ...whole, message: 'the file is no text', remedy: 'name a scenario file' };
  }
  const { line, column, byte } = firstOdd(bytes);
  const meant = new TextDecoder('windows-1252').decode(Uint8Array.of(byte));
  const message =
    `byte 0x${byte.toString(16)} is not UTF-8; ` +
    `in the older encoding of western Windows it is "${meant}"`;
  return { line, column, message, remedy: REMEDY };
}

/** Two bytes a letter: told by the mark that editors put in front. */
function wideName([first, second]: Uint8Array): string | undefined {
  if (first === 0xff && second === 0xfe) return 'UTF-16 (little-endian)';
  return first === 0xfe && second === 0xff ? 'UTF-16 (big-endian)' : undefined;
}

const LINE_END = 0x0a;

/** The first byte that is no part of a letter, with line and column counted from 1. */
function firstOdd(bytes: Uint8Array): { line: number; column: number; byte: number } {
  let start = 0;
  for (let line = 1; ; line++) {
    const found = bytes.indexOf(LINE_END, start);
    const end = found < 0 ? bytes.length : found;
    const sound = soundBytes(bytes.subarray(start, end));
    if (start + sound < end || found < 0) {
      const before = new TextDecoder().decode(bytes.subarray(start, start + sound));
      return { line, column: [...before].length + 1, byte: bytes[start + sound]! };
    }
    start = end + 1;
  }
}

/** How many bytes from the beginning read as UTF-8. */
function soundBytes(bytes: Uint8Array): number {
  const replaced = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
  const encoder = new TextEncoder();
  let at = 0;
  for (const letter of replaced) {
    const own = encoder.encode(letter);
    if (own.some((byte, i) => bytes[at + i] !== byte)) break;
    at += own.length;
  }
  return at;
}
