/** Ways of idle air computed with the engine: what is known of them. Common practice, no source. */
import { expect, it } from 'vitest';
import { joinedIdleOf } from '../../sim/study/idle/joined.ts';
import type { WayName } from '../../sim/study/idle/ways.ts';
import { type Computer, TASKS } from '../../sim/sweep/tasks.ts';
import { roadFour } from '../scenario.ts';

const { engine, pressureBar: bar, idle: spec } = roadFour();
const task = async (name: 'joined', job: never) => TASKS[name](job);
const computer = { task } as unknown as Computer;
const study = await joinedIdleOf({ engine, spec, bar }, computer);
const way = (name: WayName) => study.joined.find((one) => one.name === name)!;

it('air into one cylinder leans that cylinder alone', () => {
  const { lambda } = way('one');
  expect(lambda.one).toBeGreaterThan(1.5);
  expect(lambda.others).toBeLessThan(0.85);
  expect((lambda.one + 3 * lambda.others) / 4).toBeCloseTo(1, 12);
});

it('a valve that pulses into the pressure bar adds ripple to the signal, a separate bar none', () => {
  const quiet = way('ajar').signal!.ripple;
  expect(way('shared').signal!.ripple).toBeGreaterThan(quiet + bar.resolution);
  expect(way('own').signal!.ripple).toBeLessThan(quiet + 100);
});

it('a bar that joins the runners by wide nipples levels them', () => {
  expect(way('own').spread).toBeLessThan(0.6 * way('ajar').spread);
});

it('a nipple that is off sets its cylinder apart, more so behind small jets', () => {
  expect(way('shared').spread).toBeGreaterThan(way('own').spread);
});

it('every run settles, its mass and energy balance, and what is recommended is the evenest that serves', () => {
  for (const outcome of study.outcomes) {
    if ('failure' in outcome) throw new Error(outcome.failure);
    expect(outcome.settled).toBe(true);
    expect(outcome.audit.massError).toBeLessThan(1e-10);
    expect(outcome.audit.energyError).toBeLessThan(1e-6);
  }
  expect(study.best!.name).toBe('own');
});

it('pulses come a whole number of times a cycle, as near to what the file says as that goes', () => {
  const times = (study.pulsed * 120) / spec.speed;
  expect(times).toBe(Math.round(times));
  expect(Math.abs(study.pulsed - spec.frequency)).toBeLessThanOrEqual(spec.speed / 240);
});
