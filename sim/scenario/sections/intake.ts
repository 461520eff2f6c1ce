/** Everything from the air in front of the mouth to the intake valve. */
import type {
  AmbientSpecification,
  IntakeSpecification,
  PipeSpecification,
} from '../../specification.ts';
import { limitsOf, maybe, optional, section } from '../key.ts';
import { quantityToText } from '../quantity.ts';
import type { ScenarioView } from '../schema.ts';
import type { Place, ViewOf } from '../view.ts';
import { ambientPressure } from './ambient.ts';
import { diameterAt, PIPE_DIAMETER, pipeKeys, resolveWalledPipe } from './pipe.ts';
import { checkThrottle, resolveThrottle, throttleSection } from './throttle.ts';
import { checkTrumpet, resolveTrumpet, trumpetSection } from './trumpet.ts';
import { checkValves, resolveValves, valvesSection } from './valve.ts';

/** Neighbouring bores may differ by this much before a warning [-]; common practice, no source. */
const STEP = 0.1;

const feedSection = section('A box that feeds the trumpets; without it they breathe ambient air.', {
  pressure: maybe('pressure', 'Pressure in the box, absolute; or above ambient with "gauge".', {
    limits: ['300 mbar', '6 bar'],
    usual: ['800 mbar', '3.5 bar'],
    gauge: true,
    absent: { rule: 'ambient pressure', why: 'no pressure of a box given' },
    doubt: { half: '20 mbar', why: 'boost gauge' },
  }),
  temperature: maybe('temperature', 'Temperature of the air in the box.', {
    limits: ['-50 degC', '200 degC'],
    usual: ['-20 degC', '90 degC'],
    absent: { rule: 'ambient temperature', why: 'no temperature of a box given' },
    doubt: { half: '8 K', why: 'thermometer behind a cooler' },
  }),
});

const runnerSection = section(
  'Pipe between throttle body and cylinder head; leave it out where the body bolts to the head.',
  pipeKeys('Length along the centre line.', {
    longest: '2 m',
    wallTemperature: { value: '315 K', why: 'common practice, no source' },
    roughness: { value: '0.0015 mm', why: 'drawn tube, Moody 1944, from memory' },
    doubt: {
      length: { half: '1 mm', why: 'drawing against the part' },
      wallTemperature: { half: '15 K', why: 'contact thermometer' },
    },
  }),
  PIPE_DIAMETER,
);

const portSection = section(
  'Port in the head, from its face to the valve seats; one pipe of the area that all branches share.',
  pipeKeys('Length along the centre line, face to seat.', {
    longest: '500 mm',
    wallTemperature: { value: '350 K', why: 'common practice, no source' },
    roughness: { value: '0.05 mm', why: 'cast and cleaned up; common practice, no source' },
    doubt: {
      length: { half: '3 mm', why: 'soft wire along a bend' },
      diameter: { half: '0.4 mm', why: 'silicone cast' },
      wallTemperature: { half: '25 K', why: 'nobody measures it' },
    },
  }),
  PIPE_DIAMETER,
);

export const intakeSection = section('From the air in front of the mouth to the intake valve.', {
  feed: optional(feedSection),
  trumpet: trumpetSection,
  throttle: throttleSection,
  runner: optional(runnerSection),
  port: portSection,
  valves: valvesSection('intake'),
});

export type IntakeView = ViewOf<typeof intakeSection>;

export function checkIntake(view: ScenarioView): void {
  const { intake } = view;
  checkFeed(view);
  checkTrumpet(intake.trumpet);
  checkThrottle(intake.throttle);
  checkValves(intake.valves);
  checkSteps(intake);
}

/** A gauge pressure is known once ambient is. */
function checkFeed({ ambient, intake: { feed } }: ScenarioView): void {
  const { quantity, key } = feed.pressure;
  if (!quantity?.gauge) return;
  const pressure = quantity.value + ambientPressure(ambient);
  const [low, high] = limitsOf(key);
  if (pressure >= low && pressure <= high) return;
  feed.pressure.problem(
    `${(pressure / 1e5).toFixed(3)} bar absolute is out of range`,
    'gauge counts from ambient, absolute from vacuum',
    `${key.limits[0]} to ${key.limits[1]}`,
  );
}

/** Bores that meet should match; a step is computed as it stands, but is seldom meant. */
function checkSteps({ trumpet, throttle, runner, port }: IntakeView): void {
  const bore = throttle.bore.given;
  const head = runner.here.present ? runner : port;
  warnStep(trumpet.here, diameterAt(trumpet, 'ValveEnd'), bore);
  warnStep(head.here, diameterAt(head, 'AirEnd'), bore);
}

function warnStep(at: Place, diameter?: number, bore?: number): void {
  if (diameter === undefined || bore === undefined) return;
  if (Math.abs(diameter - bore) <= STEP * bore) return;
  const shown = [diameter, bore].map((size) => quantityToText(size, 'length')).join(' against ');
  at.warn(`steps at the throttle body: ${shown}; check that this is so`);
}

type Air = Pick<AmbientSpecification, 'pressure' | 'temperature'>;

export function resolveIntake({ intake, fit }: ScenarioView, ambient: Air): IntakeSpecification {
  const { feed, trumpet, throttle, runner, port, valves } = intake;
  const wall = fit.room.given;
  const body = resolveThrottle(throttle);
  return {
    feed: resolveFeed(feed, ambient),
    trumpet: resolveTrumpet(trumpet, ambient.temperature),
    throttle: body,
    runner: resolveRunner(runner, body.bore, ambient.temperature),
    port: resolveWalledPipe(port),
    valve: resolveValves(valves),
    ...(wall !== undefined && { facingWall: wall }),
  };
}

function resolveFeed(feed: IntakeView['feed'], ambient: Air): Air {
  if (!feed.here.present) {
    feed.here.note('ambient air', 'no box given');
    return { pressure: ambient.pressure, temperature: ambient.temperature };
  }
  const pressure = feed.pressure.take(() => ambient.pressure);
  return {
    pressure: feed.pressure.quantity?.gauge ? pressure + ambient.pressure : pressure,
    temperature: feed.temperature.take(() => ambient.temperature),
  };
}

function resolveRunner(
  runner: IntakeView['runner'],
  bore: number,
  wallTemperature: number,
): PipeSpecification {
  if (runner.here.present) return resolveWalledPipe(runner);
  runner.here.note('none', 'no runner given: the body bolts to the head');
  return {
    length: 0,
    outerDiameter: bore,
    innerDiameter: bore,
    wallTemperature,
    roughness: 0,
    bendLoss: 0,
  };
}
