/** Speeds as an axis, the same for all plots that stand above each other. */
import type { Picture } from '../state/picture.ts';

/** From half a step below the lowest speed to half a step above the highest, as wide as tiles are. */
export function speedRange({ scenario: { speeds } }: Picture): [number, number] {
  const [first, second = first] = speeds as [number, number?];
  const last = speeds[speeds.length - 1]!;
  const before = speeds[speeds.length - 2] ?? last;
  return [first - (second - first) / 2, last + (last - before) / 2];
}
