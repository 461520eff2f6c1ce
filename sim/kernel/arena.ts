/**
 * Memory for the arrays of ducts, where the WebAssembly kernel can reach them, and the kernel itself.
 *
 * Memory is handed out from one arena until that is full, then from a new one; the garbage collector
 * takes an arena with the last of its ducts. Where WebAssembly or its lanes are missing, and for a
 * duct too large for an arena, blocks are plain arrays and the TypeScript scheme does the work: to
 * the last bit the same (tests/consistency/kernel.test.ts).
 */
import { BYTES } from './bytes.ts';
import { FIRST, INTERVALS, ROW, ROWS } from './fields.ts';

/** What the module exports; addresses in bytes, lengths in numbers of eight. */
interface Exports {
  useGas(table: number, air: number, burned: number, fuel: number): void;
  predict(
    block: number,
    rowLength: number,
    cells: number,
    dx: number,
    dt: number,
    colburn: number,
  ): void;
  advance(block: number, rowLength: number, cells: number, dt: number): number;
  wallHeat(block: number, rowLength: number, cells: number): number;
}

const PAGE = 65536;
/** Pages of an arena: 16 MiB, of which the system gives only what is touched. */
const PAGES = 256;
const BYTES_PER_NUMBER = 8;
/** Room kept behind every block for a gas table, so that a network finds one beside each of its ducts. */
const TABLE = ROW * INTERVALS;

/** The arrays of one duct. */
export class Block {
  readonly cells: number;
  /** Length of a row. */
  readonly rowLength: number;
  /** All rows, one after the other. */
  readonly values: Float64Array;
  /** Where the kernel finds them; undefined for a plain array. */
  readonly arena: Arena | undefined;
  readonly address: number;

  constructor(cells: number) {
    this.cells = cells;
    this.rowLength = cells + 1 + 2 * FIRST;
    const length = ROWS * this.rowLength;
    this.arena = arenaFor(length);
    this.values = this.arena?.take(length) ?? new Float64Array(length);
    this.address = this.values.byteOffset;
  }

  /** A field of the cells, n. */
  ofCells(row: number): Float64Array {
    const start = row * this.rowLength + FIRST;
    return this.values.subarray(start, start + this.cells);
  }

  /** A field of the faces, n + 1. */
  ofFaces(row: number): Float64Array {
    const start = row * this.rowLength + FIRST;
    return this.values.subarray(start, start + this.cells + 1);
  }

  /** Sets the value beyond the end of low or high x. */
  beyond(row: number, side: 'low' | 'high', value: number): void {
    const place = side === 'low' ? FIRST - 1 : FIRST + this.cells;
    this.values[row * this.rowLength + place] = value;
  }
}

export class Arena {
  readonly kernel: Exports;
  private readonly memory: WebAssembly.Memory;
  private readonly tables = new WeakMap<Float64Array, number>();
  private used = BYTES_PER_NUMBER;

  constructor(module: WebAssembly.Module) {
    this.memory = new WebAssembly.Memory({ initial: PAGES, maximum: PAGES });
    const { exports } = new WebAssembly.Instance(module, { env: { memory: this.memory } });
    this.kernel = exports as unknown as Exports;
  }

  /** Whether there is room for so many numbers. */
  hasRoom(length: number): boolean {
    return this.used + BYTES_PER_NUMBER * length <= PAGES * PAGE;
  }

  take(length: number): Float64Array {
    const values = new Float64Array(this.memory.buffer, this.used, length);
    this.used += BYTES_PER_NUMBER * length;
    return values;
  }

  /** Address of a copy of a table; undefined where no room is left. */
  addressOf(table: Float64Array): number | undefined {
    const known = this.tables.get(table);
    if (known !== undefined) return known;
    if (!this.hasRoom(table.length)) return undefined;
    const copy = this.take(table.length);
    copy.set(table);
    this.tables.set(table, copy.byteOffset);
    return copy.byteOffset;
  }
}

let compiled: WebAssembly.Module | undefined;
let missing = false;
let current: Arena | undefined;

function arenaFor(length: number): Arena | undefined {
  if (missing || BYTES_PER_NUMBER * (1 + length + TABLE) > PAGES * PAGE) return undefined;
  if (current?.hasRoom(length + TABLE)) return current;
  try {
    compiled ??= new WebAssembly.Module(
      Uint8Array.from(atob(BYTES), (letter) => letter.charCodeAt(0)),
    );
    current = new Arena(compiled);
  } catch {
    missing = true;
    current = undefined;
  }
  return current;
}
