/** As cells.test.ts: every cell of tables that rest on readings shows its figure of the document. */
import { expect, test } from 'vitest';
import { printed } from './printed.ts';
import { csvRows, expectNumbers, textRows } from './tables.ts';

type Rows = Record<string, number | string | null>[];

/** Cells of a CSV are the document's own rows. */
function expectFiled(csv: string, rows: Rows): void {
  const text = (value: Rows[number][string]) => (value === null ? '' : String(value));
  expect(csvRows(csv)).toEqual(
    rows.map((row) => Object.fromEntries(Object.entries(row).map(([k, x]) => [k, text(x)]))),
  );
}

test('trims', async () => {
  const { text, others, document } = await printed('hill-climb', 'trims');
  expectFiled(others['trims.csv']!, document.readings);
  expectFiled(others['trims-cylinders.csv']!, document.cylinders);
  expectFiled(others['trims-loads.csv']!, document.loads);
  // The table of loads begins with the same head: of the two, the one with lambda as read.
  const cells = textRows(text.slice(text.indexOf('reads too lean by')), 'speed');
  expect(cells).toHaveLength(document.readings.length);
  cells.forEach((row, i) => {
    const { lambda_read, lambda, fuel_trim, air_above_mean } = document.readings[i];
    expectNumbers(row.read!, [lambda_read], 'read');
    expectNumbers(row.found!, [lambda], 'found');
    expectNumbers(row.air!, [100 * air_above_mean], 'air');
    expectNumbers(row['fuel trim']!, [100 * fuel_trim], 'fuel trim');
  });
});

test('balance', async () => {
  const { text, others, document } = await printed('hill-climb', 'balance');
  expectFiled(others['balance.csv']!, document.turns);
  expectFiled(others['balance-bodies.csv']!, document.bodies);
  expectFiled(others['balance-loads.csv']!, document.loads);
  expectFiled(others['balance-readings.csv']!, document.readings);
  textRows(text, 'cylinder').forEach((row, i) => {
    const { cylinder, turns, turns_deviation, way } = document.turns[i];
    expectNumbers(row.cylinder!, [cylinder], 'cylinder');
    expectNumbers(row.turns!, [turns], 'turns');
    expectNumbers(row['+-']!, [turns_deviation], 'its doubt');
    expect(row.way).toBe(way);
  });
  textRows(text.slice(text.indexOf('reads high by')), 'speed').forEach((row, i) => {
    const { vacuum_kPa, air_above_mean } = document.readings[i];
    expectNumbers(row.vacuum!, [vacuum_kPa], 'vacuum');
    expectNumbers(row.air!, [100 * air_above_mean], 'air');
  });
});
