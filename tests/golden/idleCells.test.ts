/** Every cell of the ways computed at idle, in files and in words, shows its figure of the study. */
import { expect, test } from 'vitest';
import { asObjects } from '../../sim/report/table.ts';
import { asText } from '../../sim/report/textTable.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { joinedIdleOf } from '../../sim/study/idle/joined.ts';
import * as tables from '../../sim/study/idle/tables.ts';
import { cheapText } from './cheap.ts';
import { knownWorkers, readPoints } from './points.ts';
import { expectNumbers, textRows } from './tables.ts';

const scenario = readScenario(cheapText('road-four'), 'road-four');
const { engine, idle: spec, pressureBar: bar } = scenario;
const computer = knownWorkers(scenario, readPoints('road-four'));
const study = await joinedIdleOf({ engine, spec: spec!, bar: bar! }, computer);
const rowsOf = (table: Parameters<typeof asText>[0]) =>
  textRows(`${asText(table, 400).join('\n')}\n\n`, 'way');

const stop = engine.intake.throttle.closedAngle;
const duty = (open: number) => (open === 1 ? 1 : open + spec!.deadTime * spec!.frequency);

test('files', () => {
  const rows = asObjects(tables.statesTable(study));
  expect(rows).toHaveLength(study.joined.length);
  rows.forEach((row, i) => {
    const { wanted, air, setting, left, spread, lambda, signal } = study.joined[i]!;
    const figures: Record<string, number | undefined> = {
      air_wanted_g_per_s: 1e3 * wanted,
      air_g_per_s: 1e3 * air,
      above_stop_deg: setting.angle - stop,
      drilling_mm: setting.bore && 1e3 * setting.bore,
      duty: setting.valve && duty(setting.valve.open),
      authority_left: left,
      air_of_one_above_others: spread,
      lambda_of_it: lambda.one,
      lambda_of_others: lambda.others,
      sensor_ripple_kPa: signal!.ripple / 1e3,
      sensor_offset_kPa: signal!.offset / 1e3,
    };
    const { way: _, state: __, ...cells } = row;
    expect(Object.keys(cells).sort()).toEqual(Object.keys(figures).sort());
    for (const [key, figure] of Object.entries(figures)) {
      if (figure === undefined) expect(row[key], key).toBeNull();
      else expect(row[key], key).toBeCloseTo(figure, 8);
    }
  });
});

/** What is said in words leaves out what nobody moves under load. */
const said = study.joined.filter(
  ({ name, state }) => !['ajar', 'bleeds'].includes(name) || ['warm', 'cold'].includes(state),
);

test('how each way is set', () => {
  const rows = rowsOf(tables.settingsTable(study));
  expect(rows).toHaveLength(said.length);
  rows.forEach((row, i) => {
    const { wanted, air, setting, left } = said[i]!;
    expectNumbers(row.wanted!, [1e3 * wanted], 'wanted');
    expectNumbers(row.air!, [1e3 * air], 'air');
    expectNumbers(row['above stop']!, [setting.angle - stop], 'above stop');
    expectNumbers(row.drilling!.replace('-', ''), setting.bore ? [1e3 * setting.bore] : [], 'bore');
    const open = setting.valve?.open;
    expectNumbers(row.duty!.replace('-', ''), open === undefined ? [] : [100 * duty(open)], 'duty');
    expectNumbers(row.left!.replace('-', ''), left === undefined ? [] : [left], 'left');
    expect(row[''] ?? '').toBe(air < 0.97 * wanted ? 'too little' : '');
  });
});

test('how even each way is', () => {
  const rows = rowsOf(tables.evennessTable(study));
  expect(rows).toHaveLength(said.length);
  rows.forEach((row, i) => {
    const { air, spread, lambda, signal } = said[i]!;
    expectNumbers(row.air!, [1e3 * air], 'air');
    expectNumbers(row['one above']!, [100 * spread], 'one above');
    expectNumbers(row['its lambda']!, [lambda.one], 'its lambda');
    expectNumbers(row.others!, [lambda.others], 'others');
    expectNumbers(row['sensor swings']!, [signal!.ripple / 1e3], 'sensor swings');
    expectNumbers(row.offset!, [signal!.offset / 1e3], 'offset');
  });
});

test('a spark that is late', () => {
  const rows = textRows(`${asText(tables.sparkTable(study), 400).join('\n')}\n\n`, 'state');
  rows.forEach((row, i) => {
    const { middle, torque, share, best, late } = study.sparks[i]!;
    expectNumbers(row['best half burned']!, [middle], 'best half burned');
    expectNumbers(row['held back']!, [torque], 'held back');
    expectNumbers(row['of indicated']!, [100 * share], 'of indicated');
    expectNumbers(row.exhaust!, [best], 'exhaust');
    expectNumbers(row.late!, [late], 'late');
  });
});
