/**
 * What the day's air does to the air of a cycle, cell by cell:
 *
 *   air ~ p^a T^-b,   a = ln(air'/air) / ln(p'/p),   b = -ln(air'/air) / ln(T'/T)
 *
 * by points computed anew with another pressure and another temperature, outside and where the mouths
 * breathe alike. A choked plate has a = 1, b = 0.5 (p / sqrt(T)); wide open b lies between 0.5 and 1.
 * Altitude by the standard atmosphere (gas/atmosphere.ts).
 */
import { log, power } from '../../elementary/powers.ts';
import { standardAtmosphere } from '../../gas/atmosphere.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { PointRunner } from '../../sweep/runner.ts';
import { ZERO_CELSIUS } from '../../units.ts';
import { airMass, type Grid, withAngle } from './cell.ts';

export interface DensityCell {
  angle: number;
  speed: number;
  /** Exponents a and b [-]; NaN where a point failed. */
  pressure: number;
  temperature: number;
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
  cells: DensityCell[];
  /** The best first. */
  rules: DensityRule[];
}

const LESS_PRESSURE = 0.9;
const WARMER = 20;

export async function densityCorrection(
  engine: EngineSpecification,
  { angles, speeds, outcomes }: Grid,
  runner: PointRunner,
): Promise<DensityCorrection> {
  const moved = [onDay(engine, LESS_PRESSURE, 0), onDay(engine, 1, WARMER)] as const;
  const warm = (engine.ambient.temperature + WARMER) / engine.ambient.temperature;
  const rows = few(angles).map(async (i) => {
    const variants = moved.map((one) => withAngle(one, angles[i]!));
    return Promise.all(
      few(speeds).map(async (j): Promise<DensityCell> => {
        const speed = speeds[j]!;
        const here = airMass(engine, outcomes[i]![j]!) ?? Number.NaN;
        const growths = variants.map(async (one) => {
          const air = airMass(one, await runner.run({ engine: one, speed })) ?? Number.NaN;
          return log(air / here);
        });
        const [pressure, temperature] = (await Promise.all(growths)) as [number, number];
        return {
          ...{ angle: angles[i]!, speed },
          pressure: pressure / log(LESS_PRESSURE),
          temperature: -temperature / log(warm),
        };
      }),
    );
  });
  const cells = (await Promise.all(rows)).flat();
  return { cells, rules: rulesOf(cells, engine) };
}

/** The engine with another pressure, times a share, and so much warmer air, outside and in its box. */
function onDay(engine: EngineSpecification, share: number, warmer: number): EngineSpecification {
  const moved = <Air extends { pressure: number; temperature: number }>(air: Air): Air => ({
    ...air,
    pressure: share * air.pressure,
    temperature: air.temperature + warmer,
  });
  const intake = { ...engine.intake, feed: moved(engine.intake.feed) };
  return { ...engine, ambient: moved(engine.ambient), intake };
}

/** First, middle and last of an axis. */
const few = (xs: readonly number[]) => [0, (xs.length - 1) >> 1, xs.length - 1];

/** Days that rules are tried on: a pass, a hot and a cold day at the pressure of the file. */
function daysTried({ ambient }: EngineSpecification): Day[] {
  const { pressure } = ambient;
  return [
    { name: 'a pass of 2000 m', ...standardAtmosphere(2000) },
    { name: '35 degC', pressure, temperature: ZERO_CELSIUS + 35 },
    { name: '-10 degC', pressure, temperature: ZERO_CELSIUS - 10 },
  ];
}

function rulesOf(cells: readonly DensityCell[], engine: EngineSpecification): DensityRule[] {
  const known = cells.filter(({ pressure, temperature }) =>
    Number.isFinite(pressure + temperature),
  );
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
