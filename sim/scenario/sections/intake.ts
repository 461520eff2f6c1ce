/** Everything from the air in front of the mouth to the intake valve. */
import type { IntakeSpecification, PipeSpecification } from '../../specification.ts';
import { leafValue, maybe, section } from '../leaf.ts';
import { quantityToText } from '../quantity.ts';
import type { Reading } from '../reading.ts';
import { ambientPressure } from './ambient.ts';
import { checkPipe, diameterAt, pipeShape, resolvePipe } from './pipe.ts';
import { checkThrottle, resolveThrottle, throttleSection } from './throttle.ts';
import { checkTrumpet, resolveTrumpet, trumpetSection } from './trumpet.ts';
import { checkValves, resolveValves, valvesSection } from './valve.ts';

/** Neighbouring bores may differ by this much before a warning [-]; common practice, no source. */
const STEP = 0.1;

const FEED_LIMITS = ['300 mbar', '6 bar'] as const;

const feedSection = section('A box that feeds the trumpets; without it they breathe ambient air.', {
  pressure: maybe('pressure', 'Pressure in the box, absolute; or above ambient with "gauge".', {
    limits: FEED_LIMITS,
    usual: ['800 mbar', '3.5 bar'],
    gauge: true,
    absent: { rule: 'ambient pressure', why: 'no pressure of a box given' },
  }),
  temperature: maybe('temperature', 'Temperature of the air in the box.', {
    limits: ['-50 degC', '200 degC'],
    usual: ['-20 degC', '90 degC'],
    absent: { rule: 'ambient temperature', why: 'no temperature of a box given' },
  }),
}).optional();

const runnerSection = section(
  'Pipe between throttle body and cylinder head; leave it out where the body bolts to the head.',
  pipeShape('Length along the centre line.', {
    longest: '2 m',
    wallTemperature: { value: '315 K', why: 'common practice, no source' },
    roughness: { value: '0.0015 mm', why: 'drawn tube, Moody 1944, from memory' },
  }),
).optional();

const portSection = section(
  'Port in the head, from its face to the valve seats; one pipe of the area that all branches share.',
  pipeShape('Length along the centre line, face to seat.', {
    longest: '500 mm',
    wallTemperature: { value: '350 K', why: 'common practice, no source' },
    roughness: { value: '0.05 mm', why: 'cast and cleaned up; common practice, no source' },
  }),
);

export const intakeSection = section('From the air in front of the mouth to the intake valve.', {
  feed: feedSection,
  trumpet: trumpetSection,
  throttle: throttleSection,
  runner: runnerSection,
  port: portSection,
  valves: valvesSection('intake'),
});

export function checkIntake(reading: Reading): void {
  checkFeed(reading);
  checkTrumpet(reading);
  checkThrottle(reading);
  checkPipe(reading, 'intake.runner');
  checkPipe(reading, 'intake.port');
  checkValves(reading, 'intake.valves');
  checkSteps(reading);
}

/** Pressure of the box [Pa], absolute; undefined where none is given. */
function feedPressure(reading: Reading): number | undefined {
  const given = reading.quantity('intake.feed.pressure');
  if (given === undefined) return undefined;
  return given.gauge ? given.value + ambientPressure(reading) : given.value;
}

function checkFeed(reading: Reading): void {
  const pressure = feedPressure(reading);
  const [low, high] = FEED_LIMITS.map((text) =>
    leafValue(text, { dimension: 'pressure', description: '', limits: FEED_LIMITS }),
  );
  if (pressure === undefined || (pressure >= low! && pressure <= high!)) return;
  reading.problem(
    'intake.feed.pressure',
    `${(pressure / 1e5).toFixed(3)} bar absolute is out of range`,
    'gauge counts from ambient, absolute from vacuum',
    `${FEED_LIMITS[0]} to ${FEED_LIMITS[1]}`,
  );
}

/** Bores that meet should match; a step is computed as it stands, but is seldom meant. */
function checkSteps(reading: Reading): void {
  const bore = reading.given('intake.throttle.bore');
  const head = reading.has('intake.runner') ? 'intake.runner' : 'intake.port';
  warnStep(reading, 'intake.trumpet', diameterAt(reading, 'intake.trumpet', 'ValveEnd'), bore);
  warnStep(reading, head, diameterAt(reading, head, 'AirEnd'), bore);
}

function warnStep(reading: Reading, path: string, diameter?: number, bore?: number): void {
  if (diameter === undefined || bore === undefined) return;
  if (Math.abs(diameter - bore) <= STEP * bore) return;
  const shown = [diameter, bore].map((size) => quantityToText(size, 'length')).join(' against ');
  reading.warn(path, `steps at the throttle body: ${shown}; check that this is so`);
}

export function resolveIntake(
  reading: Reading,
  ambient: { pressure: number; temperature: number },
): IntakeSpecification {
  const throttle = resolveThrottle(reading);
  return {
    feed: resolveFeed(reading, ambient),
    trumpet: resolveTrumpet(reading, ambient.temperature),
    throttle,
    runner: resolveRunner(reading, throttle.bore, ambient.temperature),
    port: resolvePipe(reading, 'intake.port'),
    valve: resolveValves(reading, 'intake.valves'),
  };
}

function resolveFeed(reading: Reading, ambient: { pressure: number; temperature: number }) {
  if (!reading.has('intake.feed')) {
    reading.note('intake.feed', 'ambient air', 'no box given');
    return { pressure: ambient.pressure, temperature: ambient.temperature };
  }
  const gauge = reading.quantity('intake.feed.pressure')?.gauge ?? false;
  const pressure = reading.take('intake.feed.pressure', () => ambient.pressure);
  return {
    pressure: gauge ? pressure + ambient.pressure : pressure,
    temperature: reading.take('intake.feed.temperature', () => ambient.temperature),
  };
}

function resolveRunner(reading: Reading, bore: number, wallTemperature: number): PipeSpecification {
  if (reading.has('intake.runner')) return resolvePipe(reading, 'intake.runner');
  reading.note('intake.runner', 'none', 'no runner given: the body bolts to the head');
  return {
    length: 0,
    outerDiameter: bore,
    innerDiameter: bore,
    wallTemperature,
    roughness: 0,
    bendLoss: 0,
  };
}
