/** What to multiply a load table by on another day, as tables. */
import { standardAtmosphere } from '../../gas/atmosphere.ts';
import * as q from '../../report/quantities.ts';
import { column, type Table, tableOf, words } from '../../report/table.ts';
import { ZERO_CELSIUS } from '../../units.ts';
import { angleBySpeed } from './angleBySpeed.ts';
import type { LoadStudy } from './compute.ts';
import { airOnDay, type DensityRule } from './density.ts';

/** Barometer [Pa], air temperatures [degC] and altitudes [m] of the tables. */
const BAROMETERS = [7e4, 7.5e4, 8e4, 8.5e4, 9e4, 9.5e4, 1e5, 1.05e5];
const TEMPERATURES = [-20, -10, 0, 10, 20, 30, 40, 50];
const ALTITUDES = [0, 500, 1000, 1500, 2000, 2500, 3000];

/** By barometer and air temperature, and by altitude; none where no rule is known. */
export function correctionTables({ density, question }: LoadStudy): Table[] {
  const [rule] = density.rules;
  if (!rule) return [];
  const { engine } = question.scenario;
  const factor = (pressure: number, temperature: number) =>
    airOnDay(rule, { pressure, temperature }, engine);
  const byDay = tableOf<number>(
    'Air by barometer and air temperature [degC], over that of the day of the file',
    [
      column(q.BAROMETER, (pressure) => pressure),
      ...TEMPERATURES.map((celsius) =>
        column<number>(
          { ...q.AIR_FACTOR, key: `air_factor_at_${celsius}_degC`, head: `${celsius}` },
          (pressure) => factor(pressure, ZERO_CELSIUS + celsius),
          { tinted: true },
        ),
      ),
    ],
    BAROMETERS,
  );
  const byAltitude = tableOf<number>(
    'Air by altitude, standard atmosphere, over that of the day of the file',
    [
      column(q.ALTITUDE, (altitude) => altitude),
      column(q.BAROMETER, (altitude) => standardAtmosphere(altitude).pressure),
      column(q.TEMPERATURE, (altitude) => standardAtmosphere(altitude).temperature),
      column(q.AIR_FACTOR, (altitude) => {
        const { pressure, temperature } = standardAtmosphere(altitude);
        return factor(pressure, temperature);
      }),
    ],
    ALTITUDES,
  );
  return [byDay, byAltitude];
}

/** Exponents a and b of every cell, and which rows stand between those computed. */
export function exponentTables(study: LoadStudy): Table[] {
  const { cells } = study.density;
  const known = (x: number | undefined) => (Number.isFinite(x) ? x : undefined);
  const between = cells.map((row) => row.some((cell) => cell.between));
  const rows = between.includes(true) ? [words<number>('exponents', 'row', by(between))] : [];
  return [
    angleBySpeed(
      study,
      'a of air as p^a T^-b',
      { ...q.PRESSURE_EXPONENT, unit: 'a' },
      (i, j) => known(cells[i]?.[j]?.pressure),
      rows,
    ),
    angleBySpeed(
      study,
      'b of air as p^a T^-b',
      { ...q.TEMPERATURE_EXPONENT, unit: 'b' },
      (i, j) => known(cells[i]?.[j]?.temperature),
      rows,
    ),
  ];
}

const by = (between: readonly boolean[]) => (i: number) => (between[i] ? 'between' : 'computed');

export function rulesTable({ density }: LoadStudy): Table {
  return tableOf<DensityRule>(
    'One rule for all cells',
    [
      words('rule', 'rule', ({ name }) => name),
      column(q.PRESSURE_EXPONENT, ({ pressure }) => pressure),
      column(q.TEMPERATURE_EXPONENT, ({ temperature }) => temperature),
      column(q.RULE_ERROR, ({ worst }) => worst),
      column(q.PLATE, ({ at }) => at.angle),
      column(q.SPEED, ({ at }) => at.speed),
      words('day', 'day', ({ day }) => day.name),
    ],
    density.rules,
  );
}
