/** Everything from the air in front of the mouth to the intake valve. */
import { power } from '../../elementary/powers.ts';
import type {
  AmbientSpecification,
  IntakeSpecification,
  PipeSpecification,
} from '../../specification.ts';
import { limitsOf, maybe, optional, section, usualOf } from '../key.ts';
import type { ScenarioView } from '../schema.ts';
import type { ViewOf } from '../view.ts';
import { ambientPressure } from './ambient.ts';
import { PIPE_DIAMETER, pipeKeys, resolveWalledPipe } from './pipe.ts';
import { checkThrottle, resolveThrottle, throttleSection } from './throttle.ts';
import { checkTrumpet, resolveTrumpet, trumpetSection } from './trumpet.ts';
import { resolveValves, valvesSection } from './valve.ts';
import { checkValves } from './valveChecks.ts';

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
    form: { group: 'Intake', length: 'Runner length', bore: 'Runner bore' },
    longest: '2 m',
    usual: { length: ['10 mm', '350 mm'], wall: ['0 degC', '120 degC'] },
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
    form: { group: 'Intake', length: 'Intake port length', bore: 'Intake port bore' },
    longest: '500 mm',
    usual: { length: ['40 mm', '250 mm'], wall: ['20 degC', '150 degC'] },
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
}

/** Warmth of a box that sun and engine explain [K], and rise of a blower over isentropic; common practice. */
const SOAK = { rise: 12, overIsentropic: 2 };

/** A gauge pressure is known once ambient is; air in a box is as warm as its pressure explains. */
function checkFeed({ ambient, intake: { feed } }: ScenarioView): void {
  const { quantity, key } = feed.pressure;
  const outside = ambientPressure(ambient);
  const pressure = (quantity?.value ?? outside) + (quantity?.gauge ? outside : 0);
  const shown = `${(pressure / 1e5).toFixed(3)} bar absolute`;
  if (quantity?.gauge && !inside(pressure, limitsOf(key))) {
    feed.pressure.problem(
      `${shown} is out of range`,
      'gauge counts from ambient, absolute from vacuum',
      `${key.limits[0]} to ${key.limits[1]}`,
    );
  } else if (quantity?.gauge && !inside(pressure, usualOf(key)!)) {
    feed.pressure.warn(
      `${shown} is unusual; most engines lie within ${key.usual![0]} to ${key.usual![1]}`,
    );
  }
  const air = ambient.temperature.assumed;
  const rise = feed.temperature.given! - air;
  const isentropic = air * (power(pressure / outside, 0.4 / 1.4) - 1);
  const explained = SOAK.rise + SOAK.overIsentropic * Math.max(isentropic, 0);
  if (rise < -1 || rise > explained) {
    feed.temperature.warn(
      `the box is ${Math.abs(rise).toFixed(0)} K ${rise < 0 ? 'colder' : 'warmer'} than the air outside, at ${shown}: check both`,
    );
  }
}

const inside = (x: number, [low, high]: readonly [number, number]) => x >= low && x <= high;

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
    valve: resolveValves(valves, 'intake'),
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
