/** Readings from files, each at its place: a run off the dyno, flow or vacuum of bodies, probes. */
import { expect, test } from 'vitest';
import {
  askedScrews,
  mixtureTrims,
  readScenario,
  readTrims,
  screwsStudy,
} from '../../sim/index.ts';
import { again } from './opened.ts';
import { scenario, text } from './quick.ts';
import { column, columns, go, openFile, saved } from './reader.ts';

const { speeds } = scenario;

test('a run off the dyno lies over the prediction, and a bad one names its line', async () => {
  const { page, said } = await again();
  await go(page, 'dyno');
  const rows = speeds.map((speed, i) => `${speed},${20 + i * (4 - i)}`);
  const run = async (head: string) =>
    page.locator('#measured-run input[type=file]').setInputFiles({
      name: 'run.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from([head, ...rows].join('\n')),
    });
  await run('speed_rpm,tork_Nm');
  await page.locator('#measured-run').getByText('line 1').waitFor();
  await run('speed_rpm,torque_Nm');
  await page.locator('#measured-run .finding').getByText('correlate').waitFor();
  const table = columns(await saved(page, 'measured-run', 'CSV'));
  expect(Object.values(table)[0]!.map(Number)).toEqual(speeds);
  const figures = column(table, 'predicted_torque_Nm');
  for (const value of figures) expect(value).toBeGreaterThan(0);
  expect(said).toEqual([]);
});

test('readings off the bodies and probes are worked out as by the core, and bad ones name their line', async () => {
  const { page, said } = await again();
  const twin = text.replace('cylinders: 1', 'cylinders: 2');
  await openFile(page, 'twin.yaml', twin);
  const { engine: two } = readScenario(twin, 'twin.yaml');
  await go(page, 'balance');
  const read = (view: string, content: string) =>
    page.locator(`#${view} input[type=file]`).setInputFiles({
      name: 'readings.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(content),
    });
  const vacuum = 'speed_rpm,plate_deg,cylinder,vacuum_kPa\n1500,9,1,50\n1500,9,2,46\n';
  await read('balance', vacuum.replace('_kPa', ''));
  await page.locator('#balance').getByText('line 1').waitFor();
  await read('balance', vacuum);
  await page.locator('#balance .finding').waitFor();
  const { turns } = screwsStudy(askedScrews(two, vacuum, 'readings.csv'));
  const screws = columns(await saved(page, 'balance', 'CSV'));
  expect(column(screws, 'turns')).toEqual(turns.map((one) => Number(one.turns.toPrecision(10))));
  const lambda = 'speed_rpm,plate_deg,cylinder,lambda\n6000,60,1,0.9\n6000,60,2,1.02\n';
  await read('trims', lambda);
  await page.locator('#trims .finding').waitFor();
  const { trims } = mixtureTrims(readTrims(two, lambda, 'readings.csv'));
  const fuel = columns(await saved(page, 'trims', 'CSV'));
  expect(column(fuel, 'fuel_trim')).toEqual(trims.map((one) => Number(one.toPrecision(10))));
  expect(said).toEqual([]);
});
