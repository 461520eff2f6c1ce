/**
 * How many slips of the pen pass without a word and give a wrong answer. Slow (minutes):
 *
 *   node --import tsx tests/prove/slips.ts
 *
 * Every slip of tests/slips.ts, in every figure that describes the engine of a demo (of a table five
 * rows), is read. Told is what is refused, what draws a warning, and what ends in a filling that no
 * engine has or in no point at all. What is not told is solved at both ends and in the middle of the band on a coarse mesh;
 * it is wrong where the volumetric efficiencies move by more than 5 % in the mean of their sizes.
 */
import { strangeFillings } from '../../sim/decision/filling.ts';
import { runPoint } from '../../sim/engine/point.ts';
import { NonPhysicalStateError } from '../../sim/errors.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/resolve.ts';
import { meshed } from '../scenario.ts';
import { DEMOS, type Slip, slipsIn } from '../slips.ts';
import { readDemo } from '../toy.ts';

/** Move of the filling that makes an answer wrong [-], and the share of slips that may do so. */
export const WRONG = 0.05;
export const MOST_WRONG = 0.02;

/** Whether the reader says a word against the file. */
export function told(slip: Slip): boolean {
  try {
    return readScenario(slip.text, slip.demo).warnings.length > 0;
  } catch {
    return true;
  }
}

function fillings({ engine, target: { from, to } }: Scenario) {
  const coarse = meshed(engine, 2.4, 5e-3);
  return [from, (from + to) / 2, to].map((speed) => runPoint(coarse, speed));
}

/** The same; undefined where the gas comes to a state that none can have, which the answer tells. */
function fillingsIfAny(scenario: Scenario) {
  try {
    return fillings(scenario);
  } catch (error) {
    if (error instanceof NonPhysicalStateError) return undefined;
    throw error;
  }
}

/** How far the slip moves the filling [-]; undefined where the answer itself tells of it. */
export function moved(slip: Slip, own = fillings(readDemo(slip.demo))): number | undefined {
  const scenario = readScenario(slip.text, slip.demo);
  const points = fillingsIfAny(scenario);
  if (!points || strangeFillings(scenario.engine, points).length > 0) return undefined;
  const moves = points.map(({ volumetricEfficiency }, i) => {
    return Math.abs(volumetricEfficiency / own[i]!.volumetricEfficiency - 1);
  });
  return moves.reduce((sum, move) => sum + move, 0) / moves.length;
}

function measure(): void {
  const all = DEMOS.flatMap((demo) => {
    const own = fillings(readDemo(demo));
    return slipsIn(demo).map((slip) => ({ slip, move: told(slip) ? undefined : moved(slip, own) }));
  });
  const silent = all.filter(({ move }) => move !== undefined);
  const wrong = silent.filter(({ move }) => move! > WRONG);
  for (const { slip, move } of wrong.toSorted((a, b) => b.move! - a.move!)) {
    const { demo, path, was, is } = slip;
    console.log(`${(100 * move!).toFixed(1).padStart(6)} %  ${demo} ${path}: ${was} -> ${is}`);
  }
  const share = wrong.length / all.length;
  console.log(
    `${all.length} slips, ${silent.length} without a word, ${wrong.length} of them wrong: ${(100 * share).toFixed(2)} %`,
  );
  if (share > MOST_WRONG) process.exitCode = 1;
}

if (process.argv[1] === import.meta.filename) measure();
