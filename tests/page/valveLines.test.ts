/** Lifts and cylinder pressure over the wave, around overlap and closing, point by point against the trace. */
import { expect, test } from 'vitest';
import { tracePoint } from '../../sim/index.ts';
import { valveLines } from '../../web/drawing/valveLines.ts';
import { scenario } from './quick.ts';

const { engine } = scenario;
const still = engine.intake.feed.pressure;
const trace = tracePoint(engine, 9000);
const { open, close } = trace.intakeEvents;
const window = { from: open - 40, to: close + 70 };
const lines = valveLines(trace, window, still);

/** Points of a path: place across [%] and crank angle [deg]. */
function pointsOf(path: string): { x: number; angle: number }[] {
  return [...path.matchAll(/[ML]?([\d.-]+) ([\d.-]+)/g)].map(([, x, y]) => ({
    x: Number(x),
    angle: window.from + ((100 - Number(y)) / 100) * (window.to - window.from),
  }));
}

/** What the trace has at a crank angle. */
function at(values: readonly number[], angle: number): number {
  const near = trace.crankAngle.map((one) => Math.abs(one - angle));
  return values[near.indexOf(Math.min(...near))]!;
}

const full = Math.max(...trace.intakeLift, ...trace.exhaustLift);

test.each(['intake', 'exhaust'] as const)('%s lift grows from the side of the valve', (kind) => {
  const lift = trace[`${kind}Lift`];
  const points = pointsOf(lines[kind]);
  expect(points.length).toBeGreaterThan(20);
  for (const { x, angle } of points) expect(x).toBeCloseTo((24 * at(lift, angle)) / full, 1);
  const shown = trace.crankAngle.filter((one, i) => {
    return one >= window.from && one <= window.to && lift[i]! > 0;
  });
  expect(points).toHaveLength(shown.length);
});

test('in the overlap both valves are drawn open, and only there', () => {
  const shut = trace.exhaustEvents.close;
  expect(shut).toBeGreaterThan(open);
  const both = pointsOf(lines.intake).filter(({ angle }) => angle < shut - 1);
  expect(both.length).toBeGreaterThan(5);
  expect(Math.max(...pointsOf(lines.exhaust).map(({ angle }) => angle))).toBeLessThanOrEqual(
    shut + 1,
  );
});

test('cylinder pressure stands in the middle at that of the still air, and ends where compression leaves it', () => {
  const shown = trace.crankAngle.flatMap((one, i) =>
    one >= window.from && one <= window.to ? [i] : [],
  );
  const port = trace.stations.find(({ name }) => name === 'port')!.pressure;
  const reach = Math.max(...shown.map((i) => Math.abs(port[i]! - still)));
  const points = pointsOf(lines.cylinder);
  for (const { x, angle } of points) {
    const share = (at(trace.cylinderPressure, angle) - still) / reach;
    expect(x).toBeCloseTo(12 * (1 + share), 1);
  }
  const last = points.at(-1)!.angle;
  expect(at(trace.cylinderPressure, last + 4)).toBeGreaterThan(still + reach);
  expect(lines.closed).toBeCloseTo((100 * (last - window.from)) / (window.to - window.from), 1);
  expect(last).toBeGreaterThan(540);
});
