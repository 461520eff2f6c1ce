/** Slips of the pen are told; the full count with the solver is tests/prove/slips.ts. */
import { describe, expect, it } from 'vitest';
import { readScenario } from '../../sim/scenario/read.ts';
import { MOST_WRONG, moved, told, WRONG } from '../prove/slips.ts';
import { type Slip, slipsIn } from '../slips.ts';
import { demoText } from '../toy.ts';

describe('every slip in the hill-climb four', () => {
  const slips = slipsIn('hill-climb');
  const silent = slips.filter((slip) => !told(slip));

  it('is told, but for one in fifteen', () => {
    expect(slips.length).toBeGreaterThan(200);
    expect(silent.length).toBeLessThan(slips.length / 15);
  });

  it('of those that pass, few are wrong', () => {
    const wrong = silent.filter((slip) => (moved(slip) ?? 0) > WRONG);
    expect(wrong.length).toBeLessThan(MOST_WRONG * slips.length);
  }, 120_000);
});

/** The warning at a key after an edit of a demo. */
function warning(demo: Slip['demo'], from: string, to: string, path: string): string {
  const text = demoText(demo);
  expect(text).toContain(from);
  const { warnings } = readScenario(text.replace(from, to), demo);
  return warnings
    .filter((one) => one.path === path)
    .map(({ message }) => message)
    .join('; ');
}

describe('warnings in the terms of the trade', () => {
  it.each<[Slip['demo'], string, string, string, string]>([
    [
      'hill-climb',
      'open: 28 deg BTDC',
      'open: 28 deg ATDC',
      'intake.valves.lift',
      "open and close put the lobe's centre at 134 deg ATDC",
    ],
    [
      'hill-climb',
      'close: 60 deg ABDC',
      'close: 60 deg BBDC',
      'intake.valves.lift.close',
      '10 deg ABDC',
    ],
    [
      'hill-climb',
      'checkLift: 1 mm # cam card: the lift',
      'checkLift: 0.1 mm # cam card: the lift',
      'intake.valves.lift.checkLift',
      'open for 268 deg at a lift of 0.1 mm is short',
    ],
    [
      'sprint-single',
      'checkLift: 0.04 in',
      'checkLift: 0.004 in',
      'intake.valves.lift.checkLift',
      'open for 264 deg at a lift of 0.004 in is short',
    ],
    [
      'sprint-single',
      'centre: 104 deg ATDC',
      'centre: 104 deg BTDC',
      'intake.valves.lift.centre',
      '95 deg ATDC',
    ],
    [
      'hill-climb',
      'flow: 149 cfm',
      'flow: 149 m3/h',
      'intake.valves.flowBench.points.4.flow',
      'off the curve',
    ],
    [
      'hill-climb',
      'flow: 29 cfm',
      'flow: 2.9 cfm',
      'intake.valves.flowBench.points.0.flow',
      'off the curve',
    ],
    [
      'boosted-four',
      'coefficient: 0.46',
      'coefficient: 0.046',
      'intake.valves.flowCoefficient.points.3.coefficient',
      'off the curve',
    ],
    [
      'endurance-six',
      'lift: 5.81 mm',
      'lift: 0.581 mm',
      'intake.valves.lift.table.8.lift',
      'off the curve',
    ],
    ['sprint-single', 'diameter: 1.5 in', 'diameter: 1.5 cm', 'exhaust.primary', 'of the port'],
    ['hill-climb', 'diameter: 60 mm', 'diameter: 6 mm', 'exhaust.tail', 'of the primary'],
    [
      'cross-plane-eight',
      'diameterAirEnd: 66 mm',
      'diameterAirEnd: 6.6 mm',
      'exhaust.collector',
      'tapers from 6.6 mm to',
    ],
    [
      'cross-plane-eight',
      'diameterAirEnd: 66 mm',
      'diameterAirEnd: 56 mm',
      'exhaust.tail',
      'the collector',
    ],
    [
      'endurance-six',
      'diameterAirEnd: 52 mm',
      'diameterAirEnd: 5.2 mm',
      'intake.trumpet',
      'tapers from 5.2 mm to',
    ],
    ['hill-climb', 'bore: 45 mm', 'bore: 25 mm', 'intake.throttle.bore', "of the cylinder's bore"],
    [
      'boosted-four',
      '0.7 bar gauge',
      '-0.7 bar gauge',
      'intake.feed.pressure',
      '0.310 bar absolute is unusual',
    ],
    [
      'boosted-four',
      '0.7 bar gauge',
      '0.7 psi gauge',
      'intake.feed.temperature',
      'warmer than the air outside',
    ],
    [
      'boosted-four',
      '0.7 bar gauge',
      '0.7 mbar gauge',
      'intake.feed.temperature',
      'warmer than the air outside',
    ],
    [
      'boosted-four',
      'temperature: 48 degC',
      'temperature: 4.8 degC',
      'intake.feed.temperature',
      'colder',
    ],
    [
      'hill-climb',
      'length: 90 mm',
      'length: 900 mm',
      'intake.trumpet.length',
      'far from the 60 mm to 300 mm',
    ],
    ['hill-climb', 'length: 1.4 m', 'length: 1.4 mm', 'exhaust.tail.length', 'unusual'],
  ])('%s: %s -> %s', (demo, from, to, path, says) => {
    expect(warning(demo, from, to, path)).toContain(says);
  });
});
