/** What is known of idle air: common practice, no source, unless named. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readScenario } from '../../sim/scenario/read.ts';
import { idleStudyOf } from '../../sim/study/idle/compute.ts';
import { waysTable } from '../../sim/study/idle/tables.ts';
import type { WayName } from '../../sim/study/idle/ways.ts';

const text = readFileSync('scenarios/road-four.yaml', 'utf8');

function study(change: (text: string) => string = (same) => same) {
  const { engine, idle, pressureBar } = readScenario(change(text), 'road-four.yaml');
  return idleStudyOf({ engine, spec: idle!, bar: pressureBar! });
}

const usual = study();
const way = (name: WayName, of = usual) => of.ways.find((one) => one.name === name)!;

describe('air into one cylinder', () => {
  it('leans that cylinder alone: the others, all alike, run rich', () => {
    const { lambda } = way('one');
    expect(lambda.one).toBeGreaterThan(1.5);
    expect(lambda.others).toBeLessThan(0.8);
    // Equal fuel with the common mixture at 1.
    expect((lambda.one + 3 * lambda.others) / 4).toBeCloseTo(1, 12);
  });

  it('is never recommended', () => {
    expect(usual.best!.name).not.toBe('one');
  });

  it('is no way of its own where there is but one, and nothing is said of others', () => {
    const single = study((file) =>
      file.replace('cylinders: 4', 'cylinders: 1').replace(/\n {2}joined: 4[^\n]*/, ''),
    );
    expect(single.ways.map(({ name }) => name)).not.toContain('one');
    expect(waysTable(single).columns.map(({ key }) => key)).not.toContain('lambda_of_others');
    expect(waysTable(usual).columns.map(({ key }) => key)).toContain('lambda_of_others');
  });
});

describe('a valve into the pressure bar', () => {
  it('adds ripple and lifts the mean of the signal; a bar of its own adds none', () => {
    expect(way('shared').ripple).toBeGreaterThan(1e3);
    expect(way('shared').offset).toBeGreaterThan(1e3);
    expect(way('own').ripple + way('own').offset).toBe(0);
  });

  it('adds less the faster it is driven and the bigger the bar', () => {
    const faster = study((file) => file.replace('frequency: 100 Hz', 'frequency: 200 Hz'));
    const bigger = study((file) => file.replace('volume: 20 cm3', 'volume: 200 cm3'));
    expect(way('shared', faster).ripple).toBeCloseTo(way('shared').ripple / 2, 6);
    expect(way('shared', bigger).ripple).toBeLessThan(way('shared').ripple / 4);
  });

  it('starves behind jets that steady the signal', () => {
    const wide = study((file) => file.replace('jetBore: 1.3 mm', 'jetBore: 3 mm'));
    expect(way('shared').enough).toBe(false);
    expect(way('shared', wide).enough).toBe(true);
  });
});

describe('plates', () => {
  it('near the stop answer to a twentieth of a degree by some per cent of air', () => {
    expect(way('ajar').opening).toBeLessThan(2);
    expect(way('ajar').spread).toBeGreaterThan(0.02);
    expect(way('ajar').spread).toBeLessThan(0.2);
  });

  it('that nobody moves follow nothing', () => {
    expect([way('ajar').enough, way('bleeds').enough]).toEqual([false, false]);
    expect(way('driven').enough).toBe(true);
  });
});

describe('a valve', () => {
  it('driven slower loses less of its period and swings more', () => {
    const [slow, quick] = [usual.frequencies[0]!, usual.frequencies.at(-1)!];
    expect(slow.lost).toBeLessThan(quick.lost);
    expect(slow.own).toBeGreaterThan(quick.own);
    expect(slow.shared!).toBeGreaterThan(quick.shared!);
  });

  it('too small for the cold engine is not recommended', () => {
    const small = study((file) => file.replace('valveBore: 6 mm', 'valveBore: 3 mm'));
    expect(way('own', small).enough).toBe(false);
    expect(small.best!.name).toBe('driven');
  });
});

it('air comes to what the engine wants: warm, cold, and for the load by its heat', () => {
  const { need, spec } = usual;
  expect(need.cold).toBeCloseTo(1.6 * need.warm, 12);
  // Petrol of some 42.5 MJ/kg and 14.5 parts of air at lambda 0.9: 3.2 to 3.4 MJ a kilogram of air.
  const work = (spec.load * spec.speed * Math.PI) / 30 / need.load / spec.efficiency;
  expect(work).toBeGreaterThan(3.1e6);
  expect(work).toBeLessThan(3.5e6);
});

it('late ignition holds some of the torque in reserve, more the later', () => {
  const later = study((file) =>
    file.replace('deadTime: 1.5 ms', 'deadTime: 1.5 ms\n  retard: 20 deg'),
  );
  expect(usual.spark.share).toBeCloseTo(0.085, 2);
  expect(later.spark.share).toBeGreaterThan(usual.spark.share);
});
