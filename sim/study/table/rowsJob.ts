/** `table --rows`: every row of a table of variants at every speed, as a table again. */
import { allSettled, auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { counted, plain } from '../../report/numbers.ts';
import { PackedCells } from '../../report/packedCells.ts';
import { type Column, type LongTable, type Table, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import { inTurn } from '../../sweep/shard.ts';
import { LatePoint, type TablePoint } from '../../sweep/sweep.ts';
import { pointColumns } from '../points.ts';
import { rippleCautions } from '../resolution.ts';
import type { Asked, Findings, Job } from '../study.ts';
import { type KeyColumn, RowEngines, readRows, type VariantRows } from './rows.ts';

export function rowsJob({ text, file, scenario, options, read }: Asked): Job {
  const path = String(options.rows);
  const rows = readRows(read(path), path);
  const engines = new RowEngines(text, file, rows);
  const table = pointsOf(engines, scenario.speeds);
  return {
    width: table.length,
    table,
    closed: true,
    async run(computer, observer) {
      const columns = columnsOf(rows, scenario);
      const cells = new PackedCells(table.length, columns.length);
      const outcomes: PointOutcome[] = new Array(table.length);
      await inTurn(
        table,
        async ({ engine, speed, i }, at) => {
          const outcome = await computer.run({ engine, speed });
          outcomes[at] = outcome;
          // Of engines only the figures are kept.
          cells.setRow(
            at,
            columns.map((column) => column.of({ i, engine, outcome })),
          );
          observer.onPoint?.(i, speed, outcome);
        },
        observer,
        computer.atOnce,
      );
      return findingsOf(rows, engines, scenario, outcomes, cells);
    },
  };
}

/** Row by row, low speeds first, so that each engine is made once. */
function pointsOf(engines: RowEngines, speeds: readonly number[]): TablePoint[] {
  const rising = [...speeds.entries()].sort((a, b) => a[1] - b[1]);
  return Array.from({ length: engines.length }, (_, i) =>
    rising.map(([j, speed]) => new LatePoint(engines, i, j, speed)),
  ).flat();
}

interface RowPoint {
  i: number;
  engine: EngineSpecification;
  outcome: PointOutcome;
}

function columnsOf(
  { keys, rows }: VariantRows,
  { lengthUnit: unit }: Scenario,
): Column<RowPoint>[] {
  const value = ({ unit: of }: KeyColumn, cell: string) => (of === '' ? cell : Number(cell));
  return [
    words<RowPoint>('row', 'row', ({ i }) => i + 1),
    ...keys.map((key, k) =>
      words<RowPoint>(key.name, key.name, ({ i }) => value(key, rows[i]!.cells[k]!)),
    ),
    ...pointColumns<RowPoint>({
      point: ({ outcome }) => outcome,
      engine: ({ engine }) => engine,
      unit,
      unlike: false,
    }),
  ];
}

const BEST = 10;

/** A table holds the points that were asked for and no others, so that it can be dealt out and merged. */
const BETWEEN = 'sweep of a file with the values of a row, or with --vary, computes it';

function findingsOf(
  rows: VariantRows,
  engines: RowEngines,
  scenario: Scenario,
  outcomes: PointOutcome[],
  cells: PackedCells,
): Findings {
  const columns = columnsOf(rows, scenario);
  const all: LongTable = { label: 'Every row at every speed', columns, cells };
  const best = bestOf(rows, outcomes, scenario.speeds.length);
  const failed = outcomes.filter(isFailure).length;
  const settled = outcomes.filter((one) => !isFailure(one) && one.settled).length;
  const figures = { rows: rows.rows.length, points: outcomes.length, failed, settled };
  return {
    stem: 'table',
    compact: true,
    document: {
      ...documentHead('table', scenario),
      rows_file: rows.file.split(/[\\/]/).at(-1)!,
      keys: rows.keys.map(({ path, unit }) => ({ key: path, unit })),
      ...figures,
      best: best.map(({ i, mean }) => ({ row: i + 1, mean_volumetric_efficiency: plain(mean) })),
      audit: auditOf(outcomes),
    },
    report: {
      about: 'Table',
      scenario,
      answer: [countWords(rows, scenario, figures)],
      flags: rippleCautions(
        best.map(({ i }) => engines.at(i)),
        scenario.speeds,
        BETWEEN,
      ),
      sections: [{ tables: [bestTable(rows, best)] }],
      outcomes: [],
    },
    tables: { 'table.csv': all },
    sound: allSettled(outcomes),
  };
}

interface Counts {
  rows: number;
  points: number;
  failed: number;
  settled: number;
}

const countWords = (
  { keys }: VariantRows,
  { speeds }: Scenario,
  { rows, points, failed, settled }: Counts,
) =>
  `${counted(rows, 'row')} of ${counted(keys.length, 'key')} at ${counted(speeds.length, 'speed')}, ` +
  `${points} points: ${failed} failed, ${points - failed - settled} not settled. Nothing is weighed; all of them stand in the files.`;

interface Best {
  i: number;
  mean: number;
}

/** Rows with the greatest mean filling over the speeds, of those without a failed point. */
function bestOf({ rows }: VariantRows, outcomes: PointOutcome[], speeds: number): Best[] {
  const means = rows.map((_, i): Best => {
    const own = outcomes.slice(i * speeds, (i + 1) * speeds);
    const sum = own.reduce(
      (s, one) => s + (isFailure(one) ? Number.NaN : one.volumetricEfficiency),
      0,
    );
    return { i, mean: sum / speeds };
  });
  return means
    .filter(({ mean }) => Number.isFinite(mean))
    .sort((a, b) => b.mean - a.mean || a.i - b.i)
    .slice(0, BEST);
}

function bestTable({ keys, rows }: VariantRows, best: readonly Best[]): Table {
  return tableOf<Best>(
    'Rows with the greatest mean volumetric efficiency over the speeds',
    [
      words('row', 'row', ({ i }) => i + 1),
      ...keys.map((key, k) =>
        words<Best>(
          key.name,
          key.name.split('.').slice(-2).join('.'),
          ({ i }) => rows[i]!.cells[k],
        ),
      ),
      words('mean', 'mean VE', ({ mean }) => mean.toFixed(4)),
    ],
    best,
  );
}
