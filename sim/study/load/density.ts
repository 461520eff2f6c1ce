/**
 * What the day's air does to the air of a cycle, cell by cell:
 *
 *   air ~ p^a T^-b,   a = ln(air'/air) / ln(p'/p),   b = -ln(air'/air) / ln(T'/T)
 *
 * from the settled state of cells on with a tenth less pressure, and with air 20 K warmer, outside and where
 * the mouths breathe alike (engine/otherDays.ts). Rows between have a and b of their neighbours, by straight
 * lines. A choked plate has a = 1, b = 0.5 (p / sqrt(T)); wide open b lies between 0.5 and 1.
 * Altitude by the standard atmosphere (gas/atmosphere.ts).
 */
import { log, power } from '../../elementary/powers.ts';
import type { OtherDay } from '../../engine/otherDays.ts';
import { standardAtmosphere } from '../../gas/atmosphere.ts';
import { interpolateLinear } from '../../interpolation.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import { ZERO_CELSIUS } from '../../units.ts';
import type { Grid } from './cell.ts';

export interface DensityCell {
  angle: number;
  speed: number;
  /** Exponents a and b [-]; NaN where a point failed. */
  pressure: number;
  temperature: number;
  /** What mesh and settling leave of the air [-]: over a tenth of pressure it is ten times as much of a. */
  doubt: number;
  /** Whether its exponents are those of the rows on either side. */
  between: boolean;
}

/** A law that a controller can hold for all cells. */
export interface DensityRule {
  name: string;
  pressure: number;
  temperature: number;
  /** What it errs at worst over the days tried, of the air [-], and where. */
  worst: number;
  at: Pick<DensityCell, 'angle' | 'speed'>;
  day: Day;
}

export interface Day {
  name: string;
  /** [Pa], [K]. */
  pressure: number;
  temperature: number;
}

export interface DensityCorrection {
  /** [angle][speed] */
  cells: DensityCell[][];
  /** The best first. */
  rules: DensityRule[];
}

/** Points of some rows are computed on these besides. */
export const THIN_AND_WARM: readonly OtherDay[] = [
  { pressure: 0.9, warmer: 0 },
  { pressure: 1, warmer: 20 },
];

export function densityCorrection(
  engine: EngineSpecification,
  { angles, speeds, outcomes }: Pick<Grid, 'angles' | 'speeds' | 'outcomes'>,
): DensityCorrection {
  const columns = speeds.map((speed, j) =>
    filledBetween(
      angles.map((angle, i) => ({ angle, speed, ...exponents(outcomes[i]![j]!, engine) })),
    ),
  );
  const cells = angles.map((_, i) => columns.map((column) => column[i]!));
  return { cells, rules: rulesOf(cells.flat(), engine) };
}

/** A column of the table, straight between the rows that were computed on other days. */
function filledBetween(column: readonly DensityCell[]): DensityCell[] {
  const rows = column.filter((cell) => !cell.between && Number.isFinite(exponentSum(cell)));
  if (rows.length === 0) return [...column];
  const at = (angle: number, of: (cell: DensityCell) => number) =>
    interpolateLinear(
      rows.map((row) => row.angle),
      rows.map(of),
      angle,
    );
  return column.map((cell) =>
    cell.between
      ? {
          ...cell,
          pressure: at(cell.angle, ({ pressure }) => pressure),
          temperature: at(cell.angle, ({ temperature }) => temperature),
        }
      : cell,
  );
}

const exponentSum = ({ pressure, temperature }: DensityCell) => pressure + temperature;

/** From what less pressure and warmer air leave of the air. */
function exponents(
  outcome: PointOutcome,
  { ambient: { temperature } }: EngineSpecification,
): Omit<DensityCell, 'angle' | 'speed'> {
  const failed = isFailure(outcome);
  const { onDays, meshError: doubt } = failed
    ? { onDays: undefined, meshError: Number.NaN }
    : outcome;
  const [thin = Number.NaN, warm = Number.NaN] = onDays ?? [];
  const [{ pressure }, { warmer }] = THIN_AND_WARM as [OtherDay, OtherDay];
  return {
    doubt,
    between: !failed && !onDays,
    pressure: log(thin) / log(pressure),
    temperature: -log(warm) / log((temperature + warmer) / temperature),
  };
}

/** Days that rules are tried on: a pass, a hot and a cold day at the pressure of the file. */
function daysTried({ ambient }: EngineSpecification): Day[] {
  const { pressure } = ambient;
  return [
    { name: 'a pass of 2000 m', ...standardAtmosphere(2000) },
    { name: '35 degC', pressure, temperature: ZERO_CELSIUS + 35 },
    { name: '-10 degC', pressure, temperature: ZERO_CELSIUS - 10 },
  ];
}

/** Cells that mesh and settling leave no surer than this are told [-]. */
export const SURE = 0.01;

/** Those by which rules go: of those computed the sure ones, but the surer half at least. */
function surest(cells: readonly DensityCell[]): DensityCell[] {
  const known = cells.filter((cell) => !cell.between && Number.isFinite(exponentSum(cell)));
  const middle = known.map(({ doubt }) => doubt).sort((a, b) => a - b)[known.length >> 1] ?? 0;
  return known.filter(({ doubt }) => doubt <= Math.max(SURE, middle));
}

function rulesOf(cells: readonly DensityCell[], engine: EngineSpecification): DensityRule[] {
  const known = surest(cells);
  if (known.length === 0) return [];
  const mean = (of: (cell: DensityCell) => number) =>
    known.reduce((sum, cell) => sum + of(cell), 0) / known.length;
  const laws = [
    {
      name: 'mean exponents',
      pressure: mean((c) => c.pressure),
      temperature: mean((c) => c.temperature),
    },
    { name: 'p / sqrt(T)', pressure: 1, temperature: 0.5 },
    { name: 'p / T', pressure: 1, temperature: 1 },
    { name: 'p alone', pressure: 1, temperature: 0 },
  ];
  const days = daysTried(engine);
  const rules = laws.map((law): DensityRule => {
    const tried = known.flatMap((cell) =>
      days.map((day) => ({
        at: cell,
        day,
        worst: airOnDay(law, day, engine) / airOnDay(cell, day, engine) - 1,
      })),
    );
    const far = tried.reduce((most, one) =>
      Math.abs(one.worst) > Math.abs(most.worst) ? one : most,
    );
    return { ...law, ...far };
  });
  return rules.sort((a, b) => Math.abs(a.worst) - Math.abs(b.worst));
}

/** Air on another day over that of the file's day, by exponents [-]. */
export function airOnDay(
  { pressure: a, temperature: b }: Pick<DensityCell, 'pressure' | 'temperature'>,
  day: Pick<Day, 'pressure' | 'temperature'>,
  { ambient }: Pick<EngineSpecification, 'ambient'>,
): number {
  return (
    power(day.pressure / ambient.pressure, a) * power(ambient.temperature / day.temperature, b)
  );
}
