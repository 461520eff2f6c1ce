/** One quantity along a duct: the same place of slot after slot (step/layout.ts). Bookkeeping, no source. */
import { ROWS } from '../step/layout.ts';

export class Field implements Iterable<number> {
  readonly length: number;
  private readonly slots: Float64Array;
  private readonly first: number;

  /** `first`: its place in the slot of cell 0. */
  constructor(slots: Float64Array, first: number, length: number) {
    this.slots = slots;
    this.first = first;
    this.length = length;
  }

  at(cell: number): number {
    return this.slots[this.first + cell * ROWS]!;
  }

  set(cell: number, value: number): void {
    this.slots[this.first + cell * ROWS] = value;
  }

  add(cell: number, value: number): void {
    this.slots[this.first + cell * ROWS]! += value;
  }

  /** A copy. */
  values(): number[] {
    return Array.from({ length: this.length }, (_, i) => this.at(i));
  }

  map<T>(f: (value: number, cell: number) => T): T[] {
    return this.values().map(f);
  }

  [Symbol.iterator](): Iterator<number> {
    return this.values()[Symbol.iterator]();
  }
}
