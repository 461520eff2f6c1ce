/** Everything from the exhaust valve to the open air. */
import type { ExhaustSpecification } from '../../specification.ts';
import { maybe, optional, section } from '../key.ts';
import type { ScenarioView } from '../schema.ts';
import { PIPE_DIAMETER, pipeKeys, resolveWalledPipe } from './pipe.ts';
import { checkValves, resolveValves, valvesSection } from './valve.ts';

const STEEL = { value: '0.045 mm', why: 'commercial steel, Moody 1944, from memory' } as const;
const PAINT = { half: '100 K', why: 'temperature paint' } as const;

const portSection = section(
  'Port in the head, from the seats to the flange.',
  pipeKeys('Length along the centre line, seat to flange.', {
    longest: '400 mm',
    usual: { length: ['25 mm', '200 mm'], wall: ['400 K', '900 K'] },
    wallTemperature: { value: '500 K', why: 'common practice, no source' },
    roughness: { value: '0.05 mm', why: 'cast and cleaned up; common practice, no source' },
    doubt: {
      length: { half: '3 mm', why: 'soft wire along a bend' },
      diameter: { half: '0.4 mm', why: 'silicone cast' },
      wallTemperature: { half: '25 K', why: 'nobody measures it' },
    },
  }),
  PIPE_DIAMETER,
);

const primarySection = section(
  'Pipe of one cylinder, from the flange to the joint or to the open air.',
  pipeKeys('Length along the centre line.', {
    longest: '3 m',
    usual: { length: ['200 mm', '1.6 m'], wall: ['450 K', '1100 K'] },
    wallTemperature: { value: '800 K', why: 'common practice, no source' },
    roughness: STEEL,
    doubt: {
      length: { half: '10 mm', why: 'tape along bends' },
      diameter: { half: '0.5 mm', why: 'outside less twice the wall' },
      bendLoss: { half: '50 %', why: 'pipe handbook' },
      wallTemperature: PAINT,
    },
  }),
  PIPE_DIAMETER,
);

const tailSection = section(
  'From the joint to the open air: collector and tail pipe.',
  pipeKeys('Length along the centre line.', {
    longest: '6 m',
    usual: { length: ['300 mm', '4.5 m'], wall: ['350 K', '1000 K'] },
    wallTemperature: { value: '650 K', why: 'common practice, no source' },
    roughness: STEEL,
    doubt: {
      length: { half: '30 mm', why: 'tape along bends' },
      diameter: { half: '1 mm', why: 'outside less twice the wall' },
      wallTemperature: PAINT,
    },
  }),
  PIPE_DIAMETER,
);

export const exhaustSection = section('From the exhaust valve to the open air.', {
  valves: valvesSection('exhaust'),
  port: portSection,
  primary: primarySection,
  joined: maybe('ratio', 'How many primaries meet in one joint.', {
    limits: ['1', '8'],
    whole: true,
    absent: { value: '1', why: 'no joint given: the primary runs on alone' },
  }),
  tail: optional(tailSection),
  silencerLoss: maybe('ratio', 'Loss of the silencer, in dynamic heads of the last pipe.', {
    limits: ['0', '50'],
    usual: ['0', '15'],
    absent: { value: '0', why: 'no silencer given' },
    doubt: { half: '40 %', why: 'back pressure at one speed' },
  }),
});

export function checkExhaust({ engine, exhaust }: ScenarioView): void {
  checkValves(exhaust.valves);
  const { joined, tail } = exhaust;
  const cylinders = engine.cylinders.given;
  if (cylinders !== undefined && cylinders % joined.assumed !== 0) {
    joined.problem(
      `${joined.assumed} primaries meet, but ${cylinders} cylinders cannot be shared out so`,
      'give the number of primaries that meet in one joint, alike for all joints',
      `a divisor of ${cylinders}`,
    );
  }
  if (joined.assumed > 1 && !tail.here.present) {
    const remedy = 'add exhaust.tail, from the joint to the open air';
    joined.problem('primaries meet, but no tail leads on', remedy);
  }
}

export function resolveExhaust({ exhaust }: ScenarioView): ExhaustSpecification {
  const tail = exhaust.tail.here.present && resolveWalledPipe(exhaust.tail);
  return {
    valve: resolveValves(exhaust.valves, 'exhaust'),
    port: resolveWalledPipe(exhaust.port),
    primary: resolveWalledPipe(exhaust.primary),
    joined: exhaust.joined.take(),
    ...(tail && { tail }),
    silencerLoss: exhaust.silencerLoss.take(),
  };
}
