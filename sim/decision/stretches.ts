/** Where one curve wins against another and where it loses, as stretches of speed. */
import { interpolateLinear } from '../interpolation.ts';

export interface Stretch {
  /** Ends [rpm]. */
  from: number;
  to: number;
  /** Greatest change there [%]; negative where it loses. */
  changePercent: number;
  /** Where that is [rpm]. */
  speed: number;
}

/**
 * The stretches, rising; those whose greatest change is less than `least` are left out.
 *
 * @param changes change of the curve [%] at rising speeds [rpm], straight between; NaN ends a stretch
 */
export function stretchesOf(
  speeds: readonly number[],
  changes: readonly number[],
  least: number,
): Stretch[] {
  const found: Stretch[] = [];
  let open: Stretch | undefined;
  changes.forEach((change, i) => {
    const speed = speeds[i]!;
    if (open && !(Math.sign(change) === Math.sign(open.changePercent))) {
      open.to = Number.isNaN(change) ? speeds[i - 1]! : crossing(speeds, changes, i);
      open = undefined;
    }
    if (!(Math.abs(change) > 0)) return;
    if (!open) {
      const from = i > 0 && Number.isFinite(changes[i - 1]) ? crossing(speeds, changes, i) : speed;
      open = { from, to: speed, changePercent: change, speed };
      found.push(open);
    }
    open.to = speed;
    if (Math.abs(change) > Math.abs(open.changePercent))
      Object.assign(open, { changePercent: change, speed });
  });
  return found.filter(({ changePercent }) => Math.abs(changePercent) >= least);
}

/** Where the line from the point before to point i is nothing [rpm]. */
function crossing(speeds: readonly number[], changes: readonly number[], i: number): number {
  const [a, b] = [changes[i - 1]!, changes[i]!];
  return interpolateLinear([0, 1], [speeds[i - 1]!, speeds[i]!], a / (a - b));
}
