/** Everything from the exhaust valve to the open air. */
import type { ExhaustSpecification } from '../../specification.ts';
import { maybe, section } from '../leaf.ts';
import type { Reading } from '../reading.ts';
import { checkPipe, pipeShape, resolvePipe } from './pipe.ts';
import { checkValves, resolveValves, valvesSection } from './valve.ts';

const STEEL = { value: '0.045 mm', why: 'commercial steel, Moody 1944, from memory' };

const portSection = section(
  'Port in the head, from the seats to the flange.',
  pipeShape('Length along the centre line, seat to flange.', {
    longest: '400 mm',
    wallTemperature: { value: '500 K', why: 'common practice, no source' },
    roughness: { value: '0.05 mm', why: 'cast and cleaned up; common practice, no source' },
  }),
);

const primarySection = section(
  'Pipe of one cylinder, from the flange to the joint or to the open air.',
  pipeShape('Length along the centre line.', {
    longest: '3 m',
    wallTemperature: { value: '800 K', why: 'common practice, no source' },
    roughness: STEEL,
  }),
);

const tailSection = section(
  'From the joint to the open air: collector and tail pipe.',
  pipeShape('Length along the centre line.', {
    longest: '6 m',
    wallTemperature: { value: '650 K', why: 'common practice, no source' },
    roughness: STEEL,
  }),
).optional();

export const exhaustSection = section('From the exhaust valve to the open air.', {
  valves: valvesSection('exhaust'),
  port: portSection,
  primary: primarySection,
  joined: maybe('ratio', 'How many primaries meet in one joint.', {
    limits: ['1', '8'],
    whole: true,
    absent: { value: '1', why: 'no joint given: the primary runs on alone' },
  }),
  tail: tailSection,
  silencerLoss: maybe('ratio', 'Loss of the silencer, in dynamic heads of the last pipe.', {
    limits: ['0', '50'],
    usual: ['0', '15'],
    absent: { value: '0', why: 'no silencer given' },
  }),
});

export function checkExhaust(reading: Reading): void {
  checkValves(reading, 'exhaust.valves');
  for (const pipe of ['port', 'primary', 'tail']) checkPipe(reading, `exhaust.${pipe}`);
  checkJoint(reading);
}

function checkJoint(reading: Reading): void {
  const joined = reading.given('exhaust.joined') ?? 1;
  const cylinders = reading.given('engine.cylinders');
  if (cylinders !== undefined && cylinders % joined !== 0) {
    reading.problem(
      'exhaust.joined',
      `${joined} primaries meet, but ${cylinders} cylinders cannot be shared out so`,
      'give the number of primaries that meet in one joint, alike for all joints',
      `a divisor of ${cylinders}`,
    );
  }
  if (joined > 1 && !reading.has('exhaust.tail')) {
    reading.problem(
      'exhaust.joined',
      'primaries meet, but no tail leads on',
      'add exhaust.tail, from the joint to the open air',
    );
  }
}

export function resolveExhaust(reading: Reading): ExhaustSpecification {
  const tail = reading.has('exhaust.tail') && resolvePipe(reading, 'exhaust.tail');
  return {
    valve: resolveValves(reading, 'exhaust.valves'),
    port: resolvePipe(reading, 'exhaust.port'),
    primary: resolvePipe(reading, 'exhaust.primary'),
    joined: reading.take('exhaust.joined'),
    ...(tail && { tail }),
    silencerLoss: reading.take('exhaust.silencerLoss'),
  };
}
