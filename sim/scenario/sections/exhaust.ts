/** Everything from the exhaust valve to the open air. */
import type { ExhaustSpecification } from '../../specification.ts';
import { maybe, optional, section } from '../key.ts';
import type { ScenarioView } from '../schema.ts';
import { checkJoints, jointKeys, ONE_JOINT, resolveJoint } from './joints.ts';
import { PIPE_DIAMETER, pipeKeys, resolveWalledPipe } from './pipe.ts';
import { resolveValves, valvesSection } from './valve.ts';
import { checkValves } from './valveChecks.ts';

const STEEL = { value: '0.045 mm', why: 'commercial steel, Moody 1944, from memory' } as const;
const PAINT = { half: '100 K', why: 'temperature paint' } as const;

const portSection = section(
  'Port in the head, from the seats to the flange.',
  pipeKeys('Length along the centre line, seat to flange.', {
    form: { group: 'Exhaust', length: 'Exhaust port length', bore: 'Exhaust port bore' },
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

const PRIMARY = {
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
} as const;

const primarySection = section(
  'Pipe of one cylinder, from the flange to its step, the joint or the open air.',
  pipeKeys('Length along the centre line.', {
    ...PRIMARY,
    form: { group: 'Exhaust', length: 'Primary length', bore: 'Primary bore' },
  }),
  PIPE_DIAMETER,
);

const stepSection = section(
  'What a stepped primary is behind the step of its bore, up to the joint.',
  pipeKeys('Length along the centre line, step to joint.', {
    ...PRIMARY,
    usual: { ...PRIMARY.usual, length: ['50 mm', '1 m'] },
    form: { group: 'Exhaust', length: 'Length behind the step', bore: 'Bore behind the step' },
  }),
  PIPE_DIAMETER,
);

const secondarySection = section(
  'Pipe behind the first joint of a four-two-one, up to the last joint.',
  {
    ...jointKeys(
      {
        label: 'Primaries to a secondary',
        joined: 'How many primaries meet in one secondary: those that fire furthest apart.',
        groups: 'Numbers of the cylinders of one secondary, as 1-4.',
      },
      { value: '2', why: 'four into two into one' },
    ),
    ...pipeKeys('Length along the centre line, joint to joint.', {
      ...PRIMARY,
      usual: { ...PRIMARY.usual, length: ['100 mm', '1 m'] },
      form: { group: 'Exhaust', length: 'Secondary length', bore: 'Secondary bore' },
    }),
  },
  PIPE_DIAMETER,
  ONE_JOINT,
);

const collectorSection = section(
  "Collector's cone, from the last joint to the tail.",
  pipeKeys('Length along the centre line.', {
    form: { group: 'Exhaust', length: 'Collector length', bore: 'Collector bore' },
    longest: '1 m',
    usual: { length: ['50 mm', '500 mm'], wall: ['350 K', '1100 K'] },
    wallTemperature: { value: '650 K', why: 'common practice, no source' },
    roughness: STEEL,
    doubt: {
      length: { half: '10 mm', why: 'tape' },
      diameter: { half: '1 mm', why: 'outside less twice the wall' },
      wallTemperature: PAINT,
    },
  }),
  PIPE_DIAMETER,
);

const tailSection = section(
  'From the joint, or the collector behind it, to the open air.',
  pipeKeys('Length along the centre line.', {
    form: { group: 'Exhaust', length: 'Tail length', bore: 'Tail bore' },
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

export const exhaustSection = section(
  'From the exhaust valve to the open air.',
  {
    valves: valvesSection('exhaust'),
    port: portSection,
    primary: primarySection,
    step: optional(stepSection),
    ...jointKeys(
      {
        label: 'Primaries to a joint',
        joined: 'How many primaries meet in one joint: those that fire every so many of the order.',
        groups:
          'Numbers of the cylinders that blow into one tail, as 1-3-5-7; one alone in quotes.',
      },
      { value: '1', why: 'no joint given: the primary runs on alone' },
    ),
    secondary: optional(secondarySection),
    collector: optional(collectorSection),
    tail: optional(tailSection),
    silencerLoss: maybe('ratio', 'Loss of the silencer, in dynamic heads of the last pipe.', {
      limits: ['0', '50'],
      usual: ['0', '15'],
      absent: { value: '0', why: 'no silencer given' },
      doubt: { half: '40 %', why: 'back pressure at one speed' },
    }),
  },
  ONE_JOINT,
);

export function checkExhaust(view: ScenarioView): void {
  checkValves(view.exhaust.valves);
  checkJoints(view);
}

/** Whether the file names cylinders, so that their order must be known. */
export function namesCylinders({ engine, exhaust }: ScenarioView): boolean {
  const { groups, secondary } = exhaust;
  return groups.present || secondary.groups.present || engine.banks.present;
}

export function resolveExhaust({ exhaust }: ScenarioView): ExhaustSpecification {
  const { step, secondary, collector, tail } = exhaust;
  const pipe = (view: typeof step | typeof tail) =>
    view.here.present ? resolveWalledPipe(view) : undefined;
  const ends = { step: pipe(step), collector: pipe(collector), tail: pipe(tail) };
  const given = Object.entries(ends).filter(([, one]) => one !== undefined);
  return {
    valve: resolveValves(exhaust.valves, 'exhaust'),
    port: resolveWalledPipe(exhaust.port),
    primary: resolveWalledPipe(exhaust.primary),
    ...resolveJoint(exhaust),
    ...(secondary.here.present && {
      secondary: { ...resolveWalledPipe(secondary), ...resolveJoint(secondary) },
    }),
    ...Object.fromEntries(given),
    silencerLoss: exhaust.silencerLoss.take(),
  };
}
