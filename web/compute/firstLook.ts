/**
 * A first look: the same question at the same accuracy, asked of a few of its lengths and speeds.
 * Nothing is wasted, for every point of it is also a point of the full answer.
 */
import { inTarget, type LengthQuestion, type Scenario } from '../../sim/index.ts';
import { questionOf } from './question.ts';

/** How many lengths, besides the one fitted now. */
export const FIRST_LENGTHS = 4;
/** How many speeds within the target, besides the lowest and the highest of all. */
const FIRST_SPEEDS = 3;

export function firstLook(scenario: Scenario): LengthQuestion {
  const whole = questionOf(scenario);
  return {
    ...whole,
    lengths: spread(whole.lengths, FIRST_LENGTHS),
    speeds: firstSpeeds(whole),
    refine: false,
  };
}

function firstSpeeds({ speeds, target }: LengthQuestion): number[] {
  const inside = speeds.filter((speed) => inTarget(target, speed));
  const picked = new Set([speeds[0]!, ...spread(inside, FIRST_SPEEDS), speeds[speeds.length - 1]!]);
  return [...picked].sort((a, b) => a - b);
}

/** At most `count` of the values, evenly picked, first and last among them. */
export function spread(values: readonly number[], count: number): number[] {
  if (values.length <= count) return [...values];
  const step = (values.length - 1) / (count - 1);
  return Array.from({ length: count }, (_, i) => values[Math.round(i * step)]!);
}
