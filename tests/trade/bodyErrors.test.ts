/** From readings of bodies to plates and bleeds: what is put in is found again, the solver's readings too. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  type BodyFigure,
  type BodyQuestion,
  bodyAnswers,
  bodyErrors,
} from '../../sim/decision/bodyErrors.ts';
import { UNTOLD } from '../../sim/decision/family.ts';
import { ANSWER_DOUBT } from '../../sim/decision/plateAnswer.ts';
import { STATIONS, tracePoint } from '../../sim/engine/trace.ts';
import { normalNumbers } from '../normal.ts';
import { SLOW, slow } from '../slow.ts';
import { DEMO, demoBodies, type KnownBodies, madeBodies, withBleed } from './bodyReadings.ts';

const engine = withBleed(DEMO.bore, DEMO.open);
const DOUBTS = { plate: 0.1, bleed: 0.4e-6, gauge: 0.01, repeatability: DEMO.repeatability };
const FOUR = [1, 2, 3, 4];

const question = (
  figure: BodyFigure,
  readings: BodyQuestion['readings'],
  states = DEMO.loads,
): BodyQuestion => ({
  ...{ engine, figure, states, readings, doubts: DOUBTS },
  steps: { plate: 0, bleed: 0 },
});

/** Share of misses that are no more than `k` deviations. */
const within = (misses: readonly number[], k: number) =>
  misses.filter((miss) => Math.abs(miss) <= k).length / misses.length;

const ANSWERS = bodyAnswers(question('vacuum', []));

const aboveMean = (values: readonly number[]) => {
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
  return values.map((value) => value - mean);
};

test('the demo readings are what their seed gives', () => {
  expect(readFileSync('scenarios/hill-climb-bodies.csv', 'utf8')).toBe(demoBodies());
});

describe.each<BodyFigure>(SLOW ? ['vacuum', 'flow'] : ['vacuum'])('by %s', (figure) => {
  /** Distances of eight estimates from what was put in, in their own deviations, of each of 100 seeds. */
  const missesWith = (answerDoubt: number) =>
    Array.from({ length: 100 }, (_, seed) => {
      const normal = normalNumbers(1000 + seed);
      const four = (deviation: number) => FOUR.map(() => deviation * normal());
      const put: KnownBodies = { plates: four(0.1), bleeds: four(0.4e-6), gauges: [0] };
      const loads = DEMO.loads.map((load) => ({ ...load, answer: answerDoubt * normal() }));
      const readings = madeBodies(engine, figure, put, loads, DEMO.repeatability, seed);
      const { plates, bleeds } = bodyErrors(question(figure, readings), ANSWERS);
      const [a, b] = [aboveMean(put.plates), aboveMean(put.bleeds)];
      return [
        ...plates.map(({ value, deviation }, i) => (value - a[i]!) / deviation),
        ...bleeds.map(({ value, deviation }, i) => (value - b[i]!) / deviation),
      ];
    });
  test('in 95 of 100 seeds each error lies within two standard deviations, all eight within 2.73', {
    timeout: 120_000,
  }, () => {
    const seeds = missesWith(0);
    for (let i = 0; i < 8; i++) {
      const own = seeds.map((misses) => misses[i]!);
      expect(within(own, 2), `error ${i}`).toBeGreaterThanOrEqual(0.95);
    }
    // Of eight at once a normal distribution has 95 % within 2.73.
    const farthest = seeds.map((misses) => Math.max(...misses.map(Math.abs)));
    expect(within(farthest, 2.73)).toBeGreaterThanOrEqual(0.95);
    // Doubts that are twice too large would hold them all within one.
    expect(within(seeds.flat(), 1)).toBeLessThan(0.9);
  });
  // A normal distribution has 95.4 % within two and 68.3 % within one; 800 figures, four to a reading, scatter.
  slow(
    'so they do where bodies answer otherwise by their doubt, and no wider',
    {
      timeout: 120_000,
    },
    () => {
      const misses = missesWith(figure === 'flow' ? ANSWER_DOUBT.air : ANSWER_DOUBT.vacuum).flat();
      expect(within(misses, 2)).toBeGreaterThan(0.92);
      expect(within(misses, 1)).toBeLessThan(0.8);
    },
  );
});

describe('what readings do not tell', () => {
  const readAt = (loads: typeof DEMO.loads) => {
    const made = madeBodies(engine, 'vacuum', DEMO.errors, loads, DEMO.repeatability, 1);
    return bodyErrors(question('vacuum', made, loads));
  };
  test('bleed from plate, unless bleeds were screwed shut once', () => {
    const open = readAt(DEMO.loads.filter(({ bleedShut }) => !bleedShut));
    const shut = readAt(DEMO.loads);
    expect(open.left.plates).toBeGreaterThan(UNTOLD);
    expect(shut.left.plates).toBeLessThan(UNTOLD);
    expect(shut.left.bleeds).toBeLessThan(UNTOLD);
  });
  test('air of a body well enough all the same', () => {
    const [, first] = readAt(DEMO.loads).readings;
    expect(first!.deviation).toBeLessThan(0.03);
  });
});

test('readings that the solver makes, with plates off by a fifth of a degree', {
  timeout: 120_000,
}, () => {
  const put = [0, -0.15, 0.2, 0.05];
  const loads = [
    { speed: 2500, angle: 16, bleedShut: true, gauges: [1, 1, 1, 1] },
    { speed: 3000, angle: 22, bleedShut: true, gauges: [1, 1, 1, 1] },
  ];
  const readings = loads.flatMap(({ speed, angle }, state) =>
    put.map((plate, body) => {
      const { bleed: _, ...throttle } = engine.intake.throttle;
      const set = { ...throttle, angle: angle + plate };
      const trace = tracePoint(
        { ...engine, intake: { ...engine.intake, throttle: set } },
        speed,
        STATIONS,
      );
      expect(trace.point.settled).toBe(true);
      const port = trace.stations.find(({ name }) => name === 'port')!;
      const mean = port.pressure.reduce((sum, p) => sum + p, 0) / port.pressure.length;
      return { state, body, gauge: 0, value: engine.intake.feed.pressure - mean };
    }),
  );
  // Points settle to a few thousandths.
  const doubts = { ...DOUBTS, plate: 0.2, repeatability: 0.003 };
  const { plates } = bodyErrors({ ...question('vacuum', readings, loads), doubts });
  const truth = aboveMean(put);
  for (const [i, { value, deviation }] of plates.entries()) {
    expect(Math.abs(value - truth[i]!)).toBeLessThan(2 * deviation);
  }
  expect(plates[2]!.value).toBeGreaterThan(2 * plates[2]!.deviation);
});
