/** As cells.test.ts: other keys, doubt, traces, injectors, a measured run, the scenario itself. */
import { expect, test } from 'vitest';
import { STATIONS } from '../../sim/engine/trace.ts';
import { variantEngines } from '../../sim/scenario/variants.ts';
import { placementStudy } from '../../sim/study/inject/compute.ts';
import { variantStudy } from '../../sim/study/vary/compute.ts';
import { answerFrom, fileOf } from '../cli/commandLine.ts';
import { chanceWorkers } from './chance.ts';
import { cheapText, DEMOS } from './cheap.ts';
import { isImperial, PLACEMENT, POINT, placementHeads, pointFigures } from './figures.ts';
import {
  axesOf,
  expectColumns,
  expectTradeOff,
  FLAGS,
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
  tenDigits,
  textRows,
} from './tables.ts';

test.each(DEMOS.flatMap((demo) => ['vary', 'vary-two'].map((name) => [demo, name] as const)))(
  '%s %s',
  async (demo, name) => {
    const { scenario, text, csv, html, document } = await printed(demo, name);
    const { engine, speeds, target } = scenario;
    const keys = axesOf(demo, name);
    const engines = variantEngines(cheapText(demo), demo, keys);
    const study = await variantStudy(
      { baseline: engine, keys, engines, speeds, target },
      chanceWorkers,
    );
    const rows = csvRows(csv);
    expect(rows).toHaveLength(engines.length * speeds.length);
    study.weighed.forEach((weighed, i) => {
      const points = weighed.outcomes.map(sound);
      const { values, volumetric_efficiency, indicated_torque_Nm, settled, failures, ...tradeOff } =
        document.variants[i];
      expect(values).toEqual(weighed.texts);
      expectColumns({ volumetric_efficiency, indicated_torque_Nm }, points, POINT, FLAGS);
      expectTradeOff(tradeOff, weighed, []);
      const said = Object.fromEntries(keys.map(({ path }, k) => [path, weighed.texts[k]!]));
      points.forEach((point, j) => {
        const others = { speed_rpm: point.speed, settled: 'true', failure: '' };
        expectRow(rows[i * speeds.length + j]!, {
          ...pointFigures(point, engines[i]!, isImperial(demo)),
          ...others,
          ...said,
        });
      });
    });
    const short = (path: string) => path.split('.').slice(-2).join('.');
    const table = htmlTables(html).find(([first]) => first && 'gain' in first)!;
    for (const rows of [textRows(text, short(keys[0]!.path)), table]) {
      expect(rows).toHaveLength(study.weighed.length);
      rows.forEach((cells, i) => {
        const weighed = study.weighed[i]!;
        const said = keys.flatMap(({ path }, k) =>
          [path, short(path)].map((head) => [head, weighed.texts[k]!]),
        );
        const figures = tradeOffFigures(weighed, 0, false);
        expectRow(cells, { ...figures, ...Object.fromEntries(said) });
      });
    }
  },
);

/** Demos whose table of inputs was there to be read. */
const withInputs: string[] = [];

test.each(['boosted-four', 'endurance-six', 'sprint-single'] as const)('%s doubt', async (demo) => {
  const { text, html, document, others } = await printed(demo, 'doubt');
  const { uncertainty, speeds_rpm: speeds } = document;
  const bands = csvRows(others['uncertainty.csv']!);
  expect(bands).toHaveLength(2 * speeds.length);
  [uncertainty.recommended, uncertainty.baseline].forEach((length, i) => {
    speeds.forEach((speed_rpm: number, j: number) => {
      const { length_mm, mean, p5, p50, p95 } = length;
      const figures = { mean: mean[j], p5: p5[j], p50: p50[j], p95: p95[j] };
      expect(p5[j]).toBeLessThan(p50[j]);
      expect(p50[j]).toBeLessThan(p95[j]);
      expectRow(bands[i * speeds.length + j]!, { length_mm, speed_rpm, ...figures });
    });
  });
  // By chance the best may be what is fitted: no gain to be in doubt about, and no table of inputs.
  const table = htmlTables(html).find(([first]) => first && 'share of variance' in first);
  if (uncertainty.inputs.length === 0) {
    expect(table).toBeUndefined();
    expect(text).not.toMatch(/^input /m);
    return;
  }
  withInputs.push(demo);
  expect(table).toHaveLength(uncertainty.inputs.length);
  for (const rows of [textRows(text, 'input'), table!]) {
    rows.forEach((cells, i) => {
      const input = uncertainty.inputs[i];
      const share = 100 * input.share_of_variance;
      expectRow(cells, {
        input: input.key,
        spread: input.spread,
        'gain over half of it': input.gain_change_percent_points,
        share,
        'share of variance': share,
        origin: input.given ? 'given' : input.why,
        '': input.given ? 'given' : '',
      });
    });
  }
});

test('some demo has inputs of its doubt', () => {
  expect(withInputs).not.toEqual([]);
});

test.each(DEMOS)('%s trace', async (demo) => {
  const { scenario, text, csv, document, stations } = await printed(demo, 'trace');
  const { engine, target } = scenario;
  const speed = Math.round((target.from + target.to) / 2);
  const whole = await chanceWorkers.task('trace', {
    engine,
    speed,
    stations: stations ?? STATIONS,
  });
  if ('failure' in whole) throw new Error(whole.failure);
  const perMille = (values: readonly number[]) => values.map((value) => value / 1000);
  const milli = (values: readonly number[]) => values.map((value) => value * 1000);
  const ten = (values: readonly number[]) => values.map(tenDigits);
  expect(document).toMatchObject({
    length_mm: tenDigits(1000 * engine.intake.trumpet.length),
    speed_rpm: speed,
    volumetric_efficiency: tenDigits(whole.point.volumetricEfficiency),
    cycles: whole.point.cycles,
    crank_angle_deg: ten(whole.crankAngle),
    cylinder_pressure_kPa: ten(perMille(whole.cylinderPressure)),
    cylinder_temperature_K: ten(whole.cylinderTemperature),
    intake_lift_mm: ten(milli(whole.intakeLift)),
    exhaust_lift_mm: ten(milli(whole.exhaustLift)),
    stations: whole.stations.map(({ name, pressure, velocity, massFlow, temperature }) => ({
      name,
      pressure_kPa: ten(perMille(pressure)),
      velocity_m_per_s: ten(velocity),
      mass_flow_g_per_s: ten(milli(massFlow)),
      temperature_K: ten(temperature),
    })),
  });
  const columns = Object.entries({
    ...document,
    ...Object.fromEntries(
      document.stations.flatMap(({ name, ...its }: { name: string; [key: string]: unknown }) =>
        Object.entries(its).map(([key, column]) => [`${name}_${key}`, column]),
      ),
    ),
  });
  csvRows(csv).forEach((cells, i) => {
    const known = columns.filter(([, column]) => Array.isArray(column)) as [string, number[]][];
    expectRow(cells, Object.fromEntries(known.map(([key, column]) => [key, column[i]!])));
  });
  const ends = (values: readonly number[]) => [Math.min(...values), Math.max(...values)];
  const rows = textRows(text, 'station');
  expect(rows).toHaveLength(whole.stations.length);
  rows.forEach((cells, k) => {
    const { name, pressure, velocity, massFlow, temperature } = whole.stations[k]!;
    expectRow(cells, {
      station: name,
      pressure: ends(perMille(pressure)),
      velocity: ends(velocity),
      'mass flow': ends(milli(massFlow)),
      temperature: ends(temperature),
    });
  });
});

test('injectors', async () => {
  const { scenario, text, csv, document } = await printed('endurance-six', 'inject');
  const { engine, speeds } = scenario;
  const injectors = scenario.injectors!;
  const study = await placementStudy({ engine, injectors, speeds }, chanceWorkers);
  const rows = csvRows(csv);
  const names = Object.keys(study.outcomes) as (keyof typeof study.outcomes)[];
  expect(rows).toHaveLength(names.length * speeds.length);
  names.forEach((name, i) => {
    const points = study.outcomes[name].map(sound);
    for (const [key, column] of Object.entries<unknown[]>(document.placements[name])) {
      if (FLAGS.includes(key)) continue;
      expect(Object.keys(PLACEMENT), 'a column without a figure').toContain(key);
      const figures = points.map((point) => PLACEMENT[key]!(point));
      expect(column, key).toEqual(figures.map((x) => (x === undefined ? null : tenDigits(x))));
    }
    points.forEach((point, j) => {
      const figures = Object.entries(PLACEMENT).map(([key, of]) => [key, of(point) ?? '']);
      const others = { placement: name, speed_rpm: point.speed, settled: 'true', failure: '' };
      const cells = rows[i * speeds.length + j]!;
      for (const [key, figure] of figures) if (figure === '') expect(cells[key!]).toBe('');
      const ten = figures.map(([key, figure]) => [
        key,
        typeof figure === 'number' ? tenDigits(figure) : figure,
      ]);
      expectRow(cells, { ...Object.fromEntries(ten), ...others });
    });
  });
  const [near, above, both] = [study.outcomes.near, study.outcomes.above, study.outcomes.both].map(
    (outcomes) => outcomes.map(sound),
  );
  textRows(text, 'speed').forEach((cells, i) => {
    const share = study.choice.share[i]!;
    expectRow(cells, { ...placementHeads(near![i]!, above![i]!, both![i]!, share), '': ANYTHING });
  });
  // Each injector's own sentence: its pulses, in the order of the list.
  const flat = text.replace(/\s+/g, ' ');
  for (const pulse of study.pulses) {
    const [said] = new RegExp(`Alone, "${pulse.name}" would be open for (.*?) is the least`).exec(
      flat,
    )!;
    const { fullPulse, fullDuty, idlePulse, smallestPulse } = pulse;
    const figures = [1e3 * fullPulse, 100 * fullDuty, 1e3 * idlePulse, 1e3 * smallestPulse];
    expectNumbers(said!, figures, pulse.name);
  }
});

test.each(DEMOS)('%s compare', async (demo) => {
  for (const name of ['compare', 'compare-fit']) {
    const { text, csv, html, document } = await printed(demo, name);
    const { speeds_rpm, measured, predicted, calibration } = document;
    const fitted = calibration?.predicted;
    const figures = speeds_rpm.map((speed: number, j: number) => ({
      speed,
      'engine speed': speed,
      measured: measured[j],
      predicted: predicted[j],
      difference: 100 * (predicted[j] / measured[j] - 1),
      fitted: fitted?.[j],
      speed_rpm: speed,
      measured_torque_Nm: measured[j],
      predicted_torque_Nm: predicted[j],
      fitted_torque_Nm: fitted?.[j],
    }));
    const table = htmlTables(html)[0]!;
    for (const rows of [csvRows(csv), textRows(text, 'speed'), table]) {
      expect(rows).toHaveLength(speeds_rpm.length);
      rows.forEach((cells, j) => {
        expectRow(cells, figures[j]!);
      });
    }
  }
});

test('the engine as it was understood', async () => {
  const said = {
    'engine.bore': '83.1 mm',
    'engine.stroke': '87.4 mm',
    'engine.rod': '141.7 mm',
    'engine.cylinders': 8,
    'exhaust.joined': 4,
    'exhaust.primary.length': '811 mm',
    'exhaust.tail.length': '1411 mm',
  };
  const file = fileOf(cheapText('hill-climb', said));
  const { stdout } = await answerFrom(chanceWorkers, 'check', file, '--json');
  const sections: { heading: string; facts: { label: string; text: string }[] }[] =
    JSON.parse(stdout).facts;
  const textOf = (heading: string, label: string) =>
    sections
      .find((section) => section.heading === heading)!
      .facts.find((fact) => fact.label === label)!.text;
  expect(textOf('Engine', 'cylinders')).toBe('8');
  expect(textOf('Engine', 'bore')).toBe('83.1 mm');
  expect(textOf('Engine', 'stroke')).toBe('87.4 mm');
  expect(textOf('Engine', 'rod')).toBe('141.7 mm');
  const swept = 8 * (Math.PI / 4) * 8.31 ** 2 * 8.74;
  expectNumbers(textOf('Engine', 'swept volume'), [swept], 'swept volume');
  expect(textOf('Exhaust', 'joined')).toBe('4');
  expect(textOf('Exhaust', 'primary')).toMatch(/^length 811 mm, diameter 41 mm/);
  expect(textOf('Exhaust', 'tail')).toMatch(/^length 1411 mm, diameter 60 mm/);
});
