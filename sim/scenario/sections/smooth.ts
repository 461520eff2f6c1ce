/**
 * Tables off a bench or a degree wheel lie on smooth curves: a point off the curve of its neighbours
 * is most often a slip. How far a point may lie off is common practice, no source.
 */
import { square } from '../../elementary/powers.ts';
import type { LeafPlace } from '../view.ts';

/** Off the line through both neighbours, and at the ends off the one neighbour, as a share of it. */
const KINK = { between: 0.15, end: 0.3 };

/** Off the middle of both neighbours, as a share of the greatest lift, for rows this far apart [deg]. */
const LIFT_KINK = { least: 0.025, atStep: 0.06, step: 20 };

/**
 * Warns at the flow that lies farthest off its neighbours.
 *
 * @param fromOrigin whether the flow rises with x from 0, or hardly changes along it
 */
export function warnKink(
  x: readonly number[],
  cells: readonly LeafPlace[],
  what: string,
  fromOrigin: boolean,
): void {
  if (cells.length < 4) return;
  const y = cells.map((cell) => cell.given!);
  const last = y.length - 1;
  const off = y.map((value, i) => {
    if (i === 0) return apart(value, y[1]! * (fromOrigin ? x[0]! / x[1]! : 1)) / KINK.end;
    if (i === last) return apart(value, y[i - 1]!) / KINK.end;
    const share = (x[i]! - x[i - 1]!) / (x[i + 1]! - x[i - 1]!);
    return apart(value, y[i - 1]! + share * (y[i + 1]! - y[i - 1]!)) / KINK.between;
  });
  warnWorst(off, cells, what);
}

/** By which share the greater exceeds the less. */
const apart = (a: number, b: number) => Math.max(a / b, b / a) - 1;

/** Warns at the lift that lies farthest off the middle of its neighbours. */
export function warnRough(angle: readonly number[], cells: readonly LeafPlace[]): void {
  const lift = cells.map((cell) => cell.given!);
  const most = Math.max(...lift);
  const off = lift.map((height, i) => {
    const step = (angle[i + 1]! - angle[i - 1]!) / 2;
    if (!(step <= LIFT_KINK.step)) return 0;
    const share = (angle[i]! - angle[i - 1]!) / (2 * step);
    const line = lift[i - 1]! + share * (lift[i + 1]! - lift[i - 1]!);
    const { least, atStep } = LIFT_KINK;
    return Math.abs(height - line) / most / (least + atStep * square(step / LIFT_KINK.step));
  });
  warnWorst(off, cells, 'the lift');
}

/** @param off how far each lies off, 1 at what is just taken without a word */
function warnWorst(off: readonly number[], cells: readonly LeafPlace[], what: string): void {
  const known = off.map((value) => (Number.isFinite(value) ? value : 0));
  const worst = Math.max(...known);
  if (worst <= 1) return;
  const cell = cells[known.indexOf(worst)]!;
  cell.warn(`${what} of ${cell.quantity?.text} lies off the curve of its neighbours`);
}
