/** One table in every format: JSON, CSV that a spreadsheet reads, text that fits, HTML that is escaped. */
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { sizeIn } from '../../sim/report/figures.ts';
import { PackedCells } from '../../sim/report/packedCells.ts';
import * as q from '../../sim/report/quantities.ts';
import {
  asColumns,
  asCsv,
  asHtml,
  asObjects,
  column,
  csvPieces,
  tableOf,
  words,
} from '../../sim/report/table.ts';
import { asText, wrapped } from '../../sim/report/textTable.ts';

interface Row {
  length: number;
  filling?: number;
  remark: string;
}

const rows: Row[] = [
  { length: 0.0865, filling: 0.98765, remark: '' },
  { length: 0.15, remark: 'breaks a floor, and <b>says</b> "so", at some length, until it wraps' },
  { length: 0.2, filling: -0.00001, remark: '=1+1' },
];
const table = tableOf<Row>(
  'Some lengths',
  [
    column(q.LENGTH, ({ length }) => length),
    column(q.EFFICIENCY, ({ filling }) => filling),
    column(q.RESIDUAL, ({ filling }) => filling && filling / 10, { only: 'people' }),
    words('remark', 'intake.valves.flowCoefficient.points.0.liftRatio', ({ remark }) => remark),
  ],
  rows,
);

test('JSON: units in the keys, ten digits, null where there is nothing', () => {
  expect(asColumns(table)).toEqual({
    lengths_mm: [86.5, 150, 200],
    volumetric_efficiency: [0.98765, null, -0.00001],
    remark: rows.map(({ remark }) => remark),
  });
  expect(asObjects(table)[1]).toMatchObject({ length_mm: 150, volumetric_efficiency: null });
});

test('CSV: read back as it was, and no text is a formula', () => {
  const { data, errors } = Papa.parse<Record<string, string>>(asCsv(table), {
    header: true,
    skipEmptyLines: true,
  });
  expect(errors).toEqual([]);
  expect(data.map((row) => row.length_mm)).toEqual(['86.5', '150', '200']);
  expect(data[1]).toMatchObject({ volumetric_efficiency: '', remark: rows[1]!.remark });
  expect(data[2]!.remark).toBe("'=1+1");
  expect(asCsv(table).endsWith('\r\n')).toBe(true);
});

test('HTML: words stay words', () => {
  const { text } = asHtml(table);
  expect(text).toContain('&lt;b&gt;says&lt;/b&gt; &quot;so&quot;');
  expect(text).toContain('<th scope="col">trumpet length [mm]</th>');
});

test('inches in, inches out, for people; nothing else changes, and keys of files keep their unit', () => {
  const [, units, first] = asText(table, 200, 'in');
  expect(units).toMatch(/^ +\[in\] +\[-\] +\[%\]$/);
  expect(first).toBe(' 3.406  0.988       9.9');
  expect(asHtml(table, 'in').text).toContain('<th scope="col">trumpet length [in]</th>');
  expect(q.told(q.inUnit(q.LIFT, 'in'), 0.00937)).toBe('0.369 in');
  expect(q.told(q.inUnit(q.FOOT_TRAVEL, 'in'), 0.0635)).toBe('2.50 in');
  expect(sizeIn(0.0635, 'in')).toBe('2.5 in');
  expect(sizeIn(0.0635)).toBe('63.5 mm');
});

describe('text', () => {
  test('figures to the right under head and unit, no minus before a zero', () => {
    const [heads, units, first, ...rest] = asText(table, 200);
    expect(heads).toMatch(/^length +VE +residual +intake\.valves/);
    expect(units).toMatch(/^ +\[mm\] +\[-\] +\[%\]$/);
    expect(first).toBe('  86.5  0.988       9.9');
    expect(rest.at(-1)).toMatch(/^ +200 +0\.000 +0\.0 +=1\+1$/);
  });

  test.each([30, 40, 60, 80, 100, 140])('fits %i columns, and loses nothing', (width) => {
    const lines = asText(table, width);
    for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(width);
    // Cells of one column alone stand below one another, so that broken words join again.
    const all = lines.join('').replace(/\s+/g, '');
    for (const word of ['0.988', '86.5', '"so"', 'length', '=1+1']) expect(all).toContain(word);
  });

  test('no column is over 60 characters wide', () => {
    const long = tableOf('x', [words<string>('a', 'a', (text) => text)], ['x'.repeat(150)]);
    expect(Math.max(...asText(long, 400).map(({ length }) => length))).toBe(60);
  });

  test('a paragraph breaks long words, and never before a per cent', () => {
    expect(wrapped('x'.repeat(25), 10, '  ').every(({ length }) => length <= 10)).toBe(true);
    const text = wrapped('it gives one 12.5 % more than that', 17);
    expect(text.join('|')).not.toContain('|%');
    expect(text.join(' ')).toBe('it gives one 12.5 % more than that');
  });
});

describe('a table of many rows', () => {
  const counts = Array.from({ length: 12_345 }, (_, i) => i);
  const long = tableOf<number>(
    'Many',
    [words('n', 'n', (i) => i), words('odd', 'odd', (i) => (i % 2 === 1 ? 'odd' : undefined))],
    counts,
    (i) => (i === 9876 ? 'cut' : ''),
  );

  test('as text is its beginning and what stands out, and says how many rows there are more', () => {
    const text = asText(long);
    expect(text).toHaveLength(1 + 200 + 1 + 1);
    expect(text.at(-2)).toMatch(/^ ?9876/);
    expect(text.at(-1)).toBe('... and 12144 rows more in the files');
  });

  test('has every row once in its CSV, written in pieces', () => {
    const pieces = [...csvPieces(long)];
    expect(pieces.length).toBeGreaterThan(2);
    const { data, errors } = Papa.parse<Record<string, string>>(pieces.join('').trim(), {
      header: true,
    });
    expect(errors).toEqual([]);
    expect(data.map(({ n }) => Number(n))).toEqual(counts);
    expect(data[1]!.odd).toBe('odd');
  });

  test('packed into little room gives back the cells that went in', () => {
    const values = [
      [1.5, 'a', undefined],
      [Number.NaN, true, 'a'],
      [-0, '', false],
    ];
    const cells = new PackedCells(values.length, 3);
    for (const i of [2, 0, 1]) cells.setRow(i, values[i]!);
    expect(cells.slice(0, 9)).toEqual(values);
    expect(cells.slice(1, 2)).toEqual([values[1]]);
  });
});
