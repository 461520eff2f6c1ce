/**
 * Every cell that is printed is its result times its unit: figures by chance go in, every table that
 * comes out is parsed again. A new column is known by a line in `POINT`, `SPRAY` or the test's own
 * figures; one that is not known fails.
 */
import { describe, expect, test } from 'vitest';
import type { PointResult } from '../../sim/engine/point.ts';
import { lengthStudy } from '../../sim/study/length/compute.ts';
import { withLength } from '../../sim/sweep/sweep.ts';
import { chanceWorkers } from './chance.ts';
import { DEMOS } from './cheap.ts';
import { isImperial, POINT, pointFigures, TRADE_OFF } from './figures.ts';
import {
  expectColumns,
  expectTradeOff,
  FLAGS,
  HEAD,
  printed,
  sound,
  tradeOffFigures,
} from './printed.ts';
import {
  ANYTHING,
  csvRows,
  expectNumbers,
  expectRow,
  htmlTables,
  type Shown,
  tenDigits,
  textRows,
} from './tables.ts';

describe.each(DEMOS)('%s', (demo) => {
  const imperial = isImperial(demo);
  test('curve', async () => {
    const { scenario, text, csv, html, document } = await printed(demo, 'curve');
    const { engine, speeds } = scenario;
    const length = 1e3 * engine.intake.trumpet.length;
    const points = await Promise.all(
      speeds.map(async (speed) => sound(await chanceWorkers.run({ engine, speed }))),
    );
    expect(document.length_mm).toBe(tenDigits(length));
    expect(document.speeds_rpm).toEqual(speeds);
    expectColumns(document, points, POINT, [...HEAD, ...FLAGS], engine);
    const worst = (figure: (point: PointResult) => number) =>
      tenDigits(Math.max(...points.map(figure)));
    expect(document.audit).toEqual({
      mass_error_max: worst((point) => point.audit.massError),
      energy_error_max: worst((point) => point.audit.energyError),
    });
    const row = (point: PointResult): Record<string, Shown> => ({
      ...pointFigures(point, engine, imperial),
      length_mm: tenDigits(length),
      speed_rpm: point.speed,
      settled: 'true',
      failure: '',
    });
    const csvTable = csvRows(csv);
    expect(csvTable).toHaveLength(points.length);
    csvTable.forEach((cells, i) => {
      expectRow(cells, row(points[i]!));
    });
    const written = [textRows(text, 'speed'), htmlTables(html)[0]!];
    for (const rows of written) {
      expect(rows).toHaveLength(points.length);
      rows.forEach((cells, i) => {
        expectRow(cells, {
          ...pointFigures(points[i]!, engine, imperial),
          '': ANYTHING,
          remark: ANYTHING,
        });
      });
    }
  });

  test.each(['sweep', 'sweep-torque'])('%s', async (name) => {
    const { scenario, text, csv, html, document } = await printed(demo, name);
    const { engine, sweep, speeds, target, fit, lengthUnit: unit } = scenario;
    const question = { engine, lengths: sweep.lengths, speeds, target, unit, ...(fit && { fit }) };
    /** Millimetres, or inches where the file has them. */
    const inUnit = unit === 'in' ? 1 / 0.0254 : 1e3;
    const study = await lengthStudy(question, chanceWorkers);
    const pointsAt = (length: number) =>
      Promise.all(
        speeds.map(async (speed) =>
          sound(await chanceWorkers.run({ engine: withLength(engine, length), speed })),
        ),
      );
    const of = async (length: number, key: string) =>
      (await pointsAt(length)).map((point) => tenDigits(POINT[key]!(point)));

    expect(document.lengths_mm).toEqual(study.tried.map(({ length }) => tenDigits(1e3 * length)));
    for (const key of [
      'volumetric_efficiency',
      'pressure_at_valve_closing_kPa',
      'indicated_torque_Nm',
    ]) {
      const table = await Promise.all(study.tried.map(({ length }) => of(length, key)));
      expect(document[key], key).toEqual(table);
    }
    const { recommended, baseline } = document;
    const decided = [
      'gain_in_band_percent',
      'worst_loss_outside_band_percent',
      'at_rpm',
      'worst_loss_in_band_percent',
      'in_band_at_rpm',
    ];
    const others = [...HEAD, ...FLAGS, 'reason', 'band_mean_ve', ...decided];
    expectColumns(recommended, await pointsAt(study.recommended.length), POINT, others, engine);
    expectColumns(baseline, await pointsAt(study.baseline.length), POINT, others, engine);
    for (const key of decided) expect(recommended[key]).toEqual(TRADE_OFF[key]!(study.decision));
    expect(document.trade_offs).toHaveLength(study.weighed.length);
    study.weighed.forEach((weighed, i) => {
      expectTradeOff(document.trade_offs[i], weighed, ['length_mm']);
      expect(document.trade_offs[i].length_mm).toBe(tenDigits(1e3 * weighed.length));
    });

    for (const cells of csvRows(csv)) {
      const length = Number(cells.length_mm) / 1e3;
      const near = study.weighed.find((one) => Math.abs(one.length - length) < 1e-9)!;
      const points = await pointsAt(near.length);
      const point = points.find(({ speed }) => speed === Number(cells.speed_rpm))!;
      const figures = {
        ...pointFigures(point, engine, imperial),
        length_mm: length * 1e3,
        speed_rpm: point.speed,
      };
      expectRow(cells, { ...figures, settled: 'true', failure: '', role: ANYTHING });
    }
    const tables = htmlTables(html);
    const byLength = tables.find(([first]) => first && 'gain' in first)!;
    for (const rows of [textRows(text, 'length'), byLength]) {
      expect(rows).toHaveLength(study.weighed.length);
      rows.forEach((cells, i) => {
        const weighed = study.weighed[i]!;
        const own = weighed.length === study.baseline.length;
        expectRow(cells, tradeOffFigures(weighed, inUnit * weighed.length, own));
      });
    }
    const mapHead = `${unit} \\ rpm`;
    const map = tables.find(([first]) => first && mapHead in first)!;
    for (const cells of map) {
      const long = Number.parseFloat(cells[mapHead]!);
      const near = study.weighed.find(({ length }) => Math.abs(inUnit * length - long) < 0.01)!;
      for (const { speed, volumetricEfficiency } of await pointsAt(near.length)) {
        expectNumbers(cells[speed]!, [volumetricEfficiency], `${long} ${unit} at ${speed} rpm`);
      }
    }
  });
});
