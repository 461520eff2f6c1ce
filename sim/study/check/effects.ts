/**
 * What the defaults move: the volumetric efficiency at both ends and in the middle of the band, with
 * each default at either end of its doubt and all else as it is, on a coarse mesh. The half of the
 * difference, in the mean of the three speeds; a default without a doubt of its own is not asked.
 */
import { doubtfulEngines, doubtfulInputs } from '../../scenario/doubt.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointOutcome, type PointRunner } from '../../sweep/runner.ts';
import { type SweepObserver, sweep } from '../../sweep/sweep.ts';
import type { Asked } from '../study.ts';

/** A default, and what it moves. */
export interface Effect {
  path: string;
  /** Value and half-width in words. */
  text: string;
  why: string;
  /** Half of the relative change of volumetric efficiency over its doubt [-]. */
  moves: number;
}

/** How much coarser than asked, and how loosely settled, so that it takes seconds [-]. */
const COARSE = { cells: 2.5, settle: 5e-3 };

/** The engines to compute: for each default the lower and the upper end. */
export function effectQuestion({
  text,
  file,
  scenario,
}: Pick<Asked, 'text' | 'file' | 'scenario'>) {
  const all = doubtfulInputs(text, file);
  const taken = new Set(scenario.defaultsUsed.map(({ path }) => path));
  const asked = all.flatMap((input, k) => (taken.has(input.path) ? [{ input, k }] : []));
  const places = asked.flatMap(({ k }) =>
    [0, 1].map((at) => all.map((_, i) => (i === k ? at : 0.5))),
  );
  const engines = doubtfulEngines(text, file, places).map(({ engine }) => coarse(engine));
  const { from, to } = scenario.target;
  return { inputs: asked.map(({ input }) => input), engines, speeds: [from, (from + to) / 2, to] };
}

/** Every default by what it moves, most first. */
export async function effectsOf(
  { inputs, engines, speeds }: ReturnType<typeof effectQuestion>,
  runner: PointRunner,
  observer: SweepObserver,
): Promise<Effect[]> {
  const table = await sweep(engines, speeds, runner, observer);
  const effects = inputs.map(({ path, text, why }, k) => {
    return { path, text, why, moves: apart(table[2 * k]!, table[2 * k + 1]!) };
  });
  return effects.sort((a, b) => b.moves - a.moves);
}

function coarse(engine: EngineSpecification): EngineSpecification {
  const { intakeCell, exhaustCell, settle, ...rest } = engine.numerics;
  const numerics = {
    ...rest,
    intakeCell: COARSE.cells * intakeCell,
    exhaustCell: COARSE.cells * exhaustCell,
    settle: Math.max(settle, COARSE.settle),
  };
  return { ...engine, numerics };
}

/** Half of the relative difference, in the mean of the speeds; NaN where a point failed. */
function apart(low: readonly PointOutcome[], high: readonly PointOutcome[]): number {
  const filling = (one: PointOutcome) => (isFailure(one) ? Number.NaN : one.volumetricEfficiency);
  const halves = low.map((one, j) => {
    const [a, b] = [filling(one), filling(high[j]!)];
    return Math.abs(a - b) / (a + b);
  });
  return halves.reduce((sum, half) => sum + half, 0) / halves.length;
}
