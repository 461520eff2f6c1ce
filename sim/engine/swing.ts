/**
 * Cycles that never repeat but swing about a mean that stays: small charges of mostly burned gas do, for
 * what one leaves behind comes back with the exhaust's next waves. Three stretches of equal length in a
 * row whose means lie together are taken for that mean; one or two would also lie together about a crest.
 */
import { type LineCycle, weightedCycle } from './cycle.ts';

/** Shortest stretch in cycles: what comes back does so after several. */
const SHORTEST = 8;
const STRETCHES = 3;

/**
 * Mean of each line over the last three stretches that agree; undefined where none do.
 *
 * @param history cycles, the last one last; of each its lines
 * @param limit how far their trapped air and pressure may lie apart [-]
 */
export function swingMean(
  history: readonly (readonly LineCycle[])[],
  limit: number,
): LineCycle[] | undefined {
  for (let length = SHORTEST; STRETCHES * length <= history.length; length++) {
    const last = history.slice(history.length - STRETCHES * length);
    if (
      last[0]!.every((_, line) =>
        agree(
          last.map((lines) => lines[line]!),
          length,
          limit,
        ),
      )
    )
      return last[0]!.map((_, line) => meanOf(last.map((lines) => lines[line]!)));
  }
  return undefined;
}

function agree(cycles: readonly LineCycle[], length: number, limit: number): boolean {
  return [
    ({ trapped }: LineCycle) => trapped.air,
    ({ trapped }: LineCycle) => trapped.pressure,
  ].every((of) => {
    const means = Array.from({ length: STRETCHES }, (_, k) =>
      mean(cycles.slice(k * length, (k + 1) * length), of),
    );
    return Math.max(...means) / Math.min(...means) - 1 < limit;
  });
}

const meanOf = (cycles: readonly LineCycle[]) => weightedCycle(cycles, () => 1 / cycles.length);

const mean = (cycles: readonly LineCycle[], of: (cycle: LineCycle) => number) =>
  cycles.reduce((sum, one) => sum + of(one), 0) / cycles.length;
