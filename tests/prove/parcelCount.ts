/**
 * How far the gain of an injector above the trumpet hangs on numbers of parcels and on cells: the endurance six at
 * full load, all fuel above less all near. Slow (minutes); prints the rows of docs/injection.md:
 *
 *   node --import tsx tests/prove/parcelCount.ts
 */
import { availableParallelism } from 'node:os';
import { withWorkers } from '../../sim/cli/workers.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { withShare } from '../../sim/study/inject/compute.ts';
import { isFailure } from '../../sim/sweep/runner.ts';
import { readDemo } from '../toy.ts';

const { engine, injectors } = readDemo('endurance-six');
const SPEEDS = [5500, 7000];
const usual = injectors!.parcels;
const cell = engine.numerics.intakeCell;
const ROWS = [
  ...[20, 40, 80, 160, 320].map((parcels) => ({ parcels, intakeCell: cell })),
  { parcels: usual, intakeCell: cell / 2 },
];

interface Row {
  parcels: number;
  intakeCell: number;
}

function placed({ parcels, intakeCell }: Row, share: number): EngineSpecification {
  const spec = withShare(engine, { ...injectors!, parcels }, share);
  return { ...spec, numerics: { ...spec.numerics, intakeCell } };
}

await withWorkers(availableParallelism(), async (runner) => {
  const filling = async (row: Row, share: number, speed: number) => {
    const outcome = await runner.run({ engine: placed(row, share), speed });
    if (isFailure(outcome)) throw new Error(outcome.failure);
    return outcome.volumetricEfficiency;
  };
  const gain = async (row: Row, speed: number) =>
    (await filling(row, 1, speed)) - (await filling(row, 0, speed));
  for (const row of ROWS) {
    const gains = await Promise.all(SPEEDS.map((speed) => gain(row, speed)));
    const cells = gains.map(
      (value) => `${value < 0 ? '-' : '+'}${Math.abs(100 * value).toFixed(2)} %`,
    );
    console.log(
      `| ${row.parcels} parcels, cell ${1e3 * row.intakeCell} mm | ${cells.join(' | ')} |`,
    );
  }
});
