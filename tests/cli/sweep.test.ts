/** A sweep from the file to the decision: the JSON contract, the files, the words. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { smoothAt } from '../../sim/decision/smooth.ts';
import {
  type Answer,
  answer,
  coarseText,
  ended,
  fileOf,
  freshFolder,
  start,
} from './commandLine.ts';

const LENGTHS = 3;
const SPEEDS = 3;

const figure = z.number();
const row = z.array(figure).length(SPEEDS);
const table = z.array(row).length(LENGTHS);
const curve = {
  length_mm: figure,
  volumetric_efficiency: row,
  pressure_at_valve_closing_kPa: row,
  charge_temperature_K: row,
  residual_fraction: row,
  backflow_fraction: row,
  mouth_outflow_fraction: row,
  indicated_torque_Nm: row,
  settled: z.array(z.boolean()).length(SPEEDS),
  cycles: row,
  failures: z.array(z.string().nullable()).length(SPEEDS),
};

/** What scripts rely on. */
const CONTRACT = z.object({
  schema: z.strictObject({ name: z.literal('trumpetry-sweep'), version: z.number().int() }),
  program: z.strictObject({ name: z.literal('trumpetry'), version: z.string() }),
  scenario: z.strictObject({ title: z.string(), hash: z.string().regex(/^[0-9a-f]{64}$/) }),
  lengths_mm: z.array(figure).length(LENGTHS),
  speeds_rpm: row,
  target: z.object({ from_rpm: figure, to_rpm: figure }),
  volumetric_efficiency: table,
  pressure_at_valve_closing_kPa: table,
  indicated_torque_Nm: table,
  settled: z.array(curve.settled).length(LENGTHS),
  failures: z.array(curve.failures).length(LENGTHS),
  recommended: z.object({
    ...curve,
    band_mean_ve: figure,
    gain_in_band_percent: figure,
    worst_loss_outside_band_percent: figure,
    at_rpm: figure.nullable(),
    reason: z.string(),
  }),
  baseline: z.object(curve),
  resolution: z.object({ resolved: z.boolean(), step_rpm: figure, points: figure }),
  refined: z.array(
    z.object({
      length_mm: figure,
      known: z.enum(['bands', 'all']),
      speeds_rpm: z.array(figure),
      volumetric_efficiency: z.array(figure),
    }),
  ),
  trade_offs: z.array(z.object({ length_mm: figure, band_mean: figure }).loose()),
  audit: z.object({ mass_error_max: figure, energy_error_max: figure }),
});

const file = fileOf(coarseText());
const out = freshFolder();
let text: Answer;
let jsonOne: Answer;
let jsonTwo: Answer;
let sweep: z.infer<typeof CONTRACT>;

beforeAll(async () => {
  text = await answer('sweep', file, '--out', out, '--workers', '2');
  jsonOne = await answer('sweep', file, '--json', '--workers', '1');
  jsonTwo = await ended(start('sweep', file, '--json', '--workers', '2'));
  sweep = JSON.parse(jsonOne.stdout);
});

/** Points computed between the speeds of the file. */
const between = (refined: typeof sweep.refined) =>
  refined.reduce((sum, { speeds_rpm }) => sum + speeds_rpm.length - SPEEDS, 0);

describe('JSON', () => {
  test('keeps the contract', () => {
    expect(() => CONTRACT.parse(sweep)).not.toThrow();
  });

  test('answers the file', () => {
    expect(sweep.lengths_mm).toEqual([60, 160, 260]);
    expect(sweep.speeds_rpm).toEqual([6000, 7000, 8000]);
    expect(sweep.baseline.length_mm).toBe(90);
    expect(sweep.target).toMatchObject({ from_rpm: 6000, to_rpm: 7000 });
    for (const efficiency of sweep.volumetric_efficiency.flat()) {
      expect(efficiency).toBeGreaterThan(0.5);
      expect(efficiency).toBeLessThan(1.5);
    }
    expect(sweep.audit.mass_error_max).toBeLessThan(1e-10);
    expect(sweep.audit.energy_error_max).toBeLessThan(1e-6);
  });

  test('the decision follows from the curves as they were refined', () => {
    const { recommended, baseline, refined, trade_offs, resolution } = sweep;
    const of = (length: number) => refined.find((curve) => curve.length_mm === length)!;
    /** The curve between its points at least every 10 rpm of the band, by trapezia. */
    const mean = (length: number) => {
      const { speeds_rpm, volumetric_efficiency } = of(length);
      const every = Array.from({ length: 101 }, (_, i) => 6000 + 10 * i);
      const computed = [of(recommended.length_mm), of(baseline.length_mm)].flatMap(
        (curve) => curve.speeds_rpm,
      );
      const band = [...new Set([...every, ...computed])]
        .filter((n) => n >= 6000 && n <= 7000)
        .sort((x, y) => x - y);
      const ys = smoothAt(speeds_rpm, volumetric_efficiency, band);
      const steps = ys.slice(1).map((y, i) => 0.5 * (band[i + 1]! - band[i]!) * (y + ys[i]!));
      return steps.reduce((x, y) => x + y) / 1000;
    };
    const best = mean(recommended.length_mm);
    expect(Math.abs(recommended.band_mean_ve / best - 1)).toBeLessThan(1e-6);
    for (const { band_mean } of trade_offs) {
      expect(recommended.band_mean_ve).toBeGreaterThanOrEqual(band_mean);
    }
    const gain = 100 * (best / mean(baseline.length_mm) - 1);
    expect(Math.abs(recommended.gain_in_band_percent - gain)).toBeLessThan(1e-4);
    // A length tried between those asked for is refined too, and left out where it was no better.
    expect(between(refined)).toBeGreaterThan(0);
    expect(between(refined)).toBeLessThanOrEqual(resolution.points);
  });

  test('is the same bytes in another process with another number of workers', () => {
    expect(jsonTwo.stdout).toBe(jsonOne.stdout);
    expect(readFileSync(join(out, 'sweep.json'), 'utf8')).toBe(jsonOne.stdout);
  });

  test('is all that goes to stdout, and nothing to stderr where that is no terminal', () => {
    expect(jsonTwo.stdout.trimEnd().split('\n')).toHaveLength(1);
    expect(jsonTwo.stderr).toBe('');
  });

  test('0 where all settled, else 1', () => {
    const settled = [...sweep.settled, sweep.baseline.settled, sweep.recommended.settled].flat();
    const code = settled.every((point) => point) ? 0 : 1;
    expect([text.code, jsonOne.code, jsonTwo.code]).toEqual([code, code, code]);
  });
});

test('CSV: one row a point, every cell in its column', () => {
  const lines = readFileSync(join(out, 'sweep.csv'), 'utf8').trimEnd().split('\r\n');
  const [heads, ...rows] = lines.map((line) => line.split(','));
  expect(heads!.slice(0, 3)).toEqual(['length_mm', 'speed_rpm', 'volumetric_efficiency']);
  const lengths = new Set([60, 90, 160, 260, sweep.recommended.length_mm]);
  expect(rows).toHaveLength(lengths.size * SPEEDS + between(sweep.refined));
  for (const cells of rows) {
    expect(cells).toHaveLength(heads!.length);
    expect(lengths).toContain(Number(cells[0]));
    expect(Number(cells[2])).toBeGreaterThan(0.5);
  }
  const asked = rows.filter((cells) => sweep.speeds_rpm.includes(Number(cells[1])));
  const tried = asked.filter((cells) => cells[0] === '160').map((cells) => Number(cells[2]));
  expect(tried).toEqual(sweep.volumetric_efficiency[1]);
});

describe('the report', () => {
  const report = () => readFileSync(join(out, 'report.html'), 'utf8').replaceAll('\u00a0', ' ');

  test('refers to nothing outside itself', () => {
    expect(report()).not.toMatch(/https?:|\bsrc=|\bhref=|url\(|@import|<script|<link|<iframe/i);
    expect(report()).toContain("default-src 'none'");
  });

  test('holds answer, pictures, cautions, defaults and audit', () => {
    const answerLine = text.stdout.split('\n')[2]!;
    expect(report()).toContain(answerLine);
    expect(report().match(/<svg/g)).toHaveLength(3);
    for (const heading of [
      'What the length means',
      'Before you cut and run',
      'Defaults used',
      'Audit',
    ]) {
      expect(report()).toContain(heading);
    }
  });
});

test('the words: decision first, then a row a length, then the files', () => {
  const form = text.stdout
    .replaceAll(out, 'OUT')
    .replace(/\d+(?:\.\d+)?/g, '#')
    .replace(/[+-](?=#)/g, '')
    .replace(/ +/g, ' ');
  expect(form).toMatch(/^Hill-climb four, # litres, individual throttle bodies\n\n/);
  expect(form).toMatch(
    /\n(Make the trumpets (?:longer|shorter): # mm, in place of the # mm fitted now|Keep the trumpets fitted now, # mm long)\.\n/,
  );
  expect(form).toMatch(/\nIn the band from # to # rpm the trumpets give /);
  expect(form).toMatch(/\nlength mean VE in band gain worst loss at loss in band there at least\n/);
  expect(form).toMatch(/\n ?# # .*take this\n|keep, fitted now/);
  expect(form).toMatch(/\n ?# # - # - # - # fitted now\n|keep, fitted now/);
  expect(form).toContain('\nWritten: OUT/sweep.csv, OUT/sweep.json, OUT/report.html\n');
  expect(text.stderr).toBe('');
});
