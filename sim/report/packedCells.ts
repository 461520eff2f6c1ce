/** Cells of a big table in little room: numbers as they are, anything else by its place in a list of what occurs. */
import type { Cells, Value } from './table.ts';

export class PackedCells implements Cells {
  readonly length: number;
  private readonly width: number;
  private readonly numbers: Float64Array;
  /** Whether a cell holds a place in `others`. */
  private readonly placed: Uint8Array;
  private readonly others: Value[] = [];
  private readonly places = new Map<Value, number>();

  constructor(length: number, width: number) {
    this.length = length;
    this.width = width;
    this.numbers = new Float64Array(length * width);
    this.placed = new Uint8Array(length * width);
  }

  setRow(row: number, values: readonly Value[]): void {
    values.forEach((value, i) => {
      const at = row * this.width + i;
      const other = typeof value !== 'number';
      this.placed[at] = Number(other);
      this.numbers[at] = other ? this.placeOf(value) : value;
    });
  }

  /** Rows from one to before another. */
  slice(from: number, to: number): Value[][] {
    const last = Math.min(to, this.length);
    return Array.from({ length: Math.max(last - from, 0) }, (_, k) => this.row(from + k));
  }

  private row(row: number): Value[] {
    return Array.from({ length: this.width }, (_, i) => {
      const at = row * this.width + i;
      const number = this.numbers[at]!;
      return this.placed[at] ? this.others[number] : number;
    });
  }

  private placeOf(value: Value): number {
    const known = this.places.get(value);
    if (known !== undefined) return known;
    this.places.set(value, this.others.length);
    return this.others.push(value) - 1;
  }
}
