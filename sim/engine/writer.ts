/** Places of parts in a lane's column, and the records and reals that a layout grows by (layOut.ts). */
import type { Slots } from '../boundary/node.ts';
import * as AT from '../step/layout.ts';

/** Grows the three arrays. */
export class Writer {
  readonly N: number[] = [];
  readonly K: number[] = [];
  readonly place = new Map<Slots, number>();
  length: number = AT.X_HEAD;

  /** Gives a part its place in the column. */
  give(part: Slots): void {
    if (this.place.has(part)) return;
    this.place.set(part, this.length);
    this.length += part.slots.length;
  }

  /** The place of a part in the column. */
  of(part: Slots): number {
    return this.place.get(part)!;
  }

  /** Appends a record; returns where it starts. */
  record(numbers: readonly number[]): number {
    this.N.push(...numbers);
    return this.N.length - numbers.length;
  }

  /** Records of one size, one after the other; what they refer to goes before them. */
  records<T>(parts: readonly T[], record: (part: T) => number[]): number {
    return this.record(parts.flatMap(record));
  }

  /** Appends reals; returns where they start. */
  reals(numbers: ArrayLike<number>): number {
    const at = this.K.length;
    for (let i = 0; i < numbers.length; i++) this.K.push(numbers[i]!);
    return at;
  }

  column(): Float64Array<ArrayBuffer> {
    const column = new Float64Array(this.length);
    for (const [part, at] of this.place) column.set(part.slots, at);
    return column;
  }
}
