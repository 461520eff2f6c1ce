/** The injectors of one cylinder, and how they share the fuel. */
import { z } from 'zod';
import type { FuelName } from '../../gas/fuel.ts';
import type {
  EngineSpecification,
  InjectorSpecification,
  InjectorsSpecification,
  StagingSpecification,
} from '../../specification.ts';
import { liquidFuel } from '../../spray/liquidFuel.ts';
import { maybe, quantity, section } from '../leaf.ts';
import type { Reading } from '../reading.ts';
import { EACH, SECTION, STAGING } from './injectorPaths.ts';

const PLACE = { limits: ['-2 m', '3 m'], optional: true } as const;
/** Dead centres of the induction. */
const ANGLE = {
  limits: ['0 deg', '720 deg'],
  deadCentres: { top: 360, bottom: 540 },
  example: '30 deg BTDC',
  optional: true,
} as const;

const injectorSection = section('One injector of a cylinder.', {
  name: z.string().min(1).max(60).meta({ description: 'What you call it.' }),
  fromValve: maybe(
    'length',
    'Nozzle to valve seat along the centre line; or give fromMouth.',
    PLACE,
  ),
  fromMouth: maybe(
    'length',
    'Nozzle behind the plane of the rim of the mouth; negative in front of it, as a shower head.',
    PLACE,
  ),
  offset: maybe('length', 'Nozzle from the centre line.', {
    limits: ['0 mm', '200 mm'],
    absent: { value: '0 mm', why: 'on the centre line' },
  }),
  tilt: maybe('angle', 'Jet against the centre line, leaning to it; 0 sprays at the valve.', {
    limits: ['0 deg', '180 deg'],
    usual: ['0 deg', '70 deg'],
    absent: { value: '0 deg', why: 'along the centre line' },
  }),
  cone: maybe('angle', 'Full angle of the cone.', {
    limits: ['0 deg', '120 deg'],
    usual: ['5 deg', '40 deg'],
    absent: { value: '20 deg', why: 'common practice, no source' },
  }),
  flow: maybe('flow', 'Flow held open, by volume of fuel; or give massFlow.', {
    limits: ['10 cc/min', '10000 cc/min'],
    usual: ['100 cc/min', '2500 cc/min'],
    example: '440 cc/min',
    optional: true,
  }),
  massFlow: maybe('massFlow', 'Flow held open, by mass; or give flow.', {
    limits: ['0.1 g/s', '150 g/s'],
    usual: ['1 g/s', '35 g/s'],
    optional: true,
  }),
  pressure: maybe('pressure', 'Pressure across the injector at which that flow is stated.', {
    limits: ['0.5 bar', '300 bar'],
    usual: ['2 bar', '10 bar'],
    absent: { value: '3 bar', why: 'common practice, no source' },
  }),
  dropSize: maybe('length', 'Sauter mean diameter of the drops.', {
    limits: ['5 um', '600 um'],
    usual: ['40 um', '300 um'],
    example: '80 um',
    absent: {
      value: '100 um',
      why: 'plate with several holes at 3 bar; common practice, no source',
    },
  }),
  dropSpread: maybe('ratio', 'Exponent of the Rosin-Rammler spread of sizes; larger is narrower.', {
    limits: ['1.2', '10'],
    usual: ['1.5', '4'],
    absent: { value: '2.2', why: 'common practice, no source' },
  }),
  start: maybe('angle', 'Crank angle at which the pulse starts; or give end.', ANGLE),
  end: maybe('angle', 'Crank angle at which the pulse ends; or give start.', ANGLE),
  deadTime: maybe('time', 'Time before fuel flows.', {
    limits: ['0 ms', '5 ms'],
    usual: ['0.3 ms', '2 ms'],
    absent: { value: '1 ms', why: 'at 13.5 V; common practice, no source' },
  }),
  smallestPulse: maybe('time', 'Shortest pulse that repeats well, dead time included.', {
    limits: ['0 ms', '20 ms'],
    usual: ['0.8 ms', '4 ms'],
    absent: { value: '1.8 ms', why: 'common practice, no source' },
  }),
});

export const injectorsSection = section(
  'Injectors of one cylinder. Only the study of their placement computes with them; elsewhere fuel joins the air at valve closing.',
  {
    each: injectorSection
      .array()
      .min(1)
      .max(6)
      .meta({ description: 'Every injector of one cylinder, in any order.' }),
    staging: section('The share of the outermost injector at one speed; straight between rows.', {
      speed: quantity('speed', 'Engine speed.', { limits: ['500 rpm', '25000 rpm'] }),
      outer: quantity('ratio', 'Share of the fuel that the outermost injector gives.', {
        limits: ['0', '1'],
      }),
    })
      .array()
      .min(1)
      .max(50)
      .meta({ description: 'Share against speed, rising; without it the outer injector rests.' })
      .optional(),
    fromLoad: maybe(
      'ratio',
      'Load, as air trapped over a full cylinder, where the outer one starts.',
      {
        limits: ['0', '2'],
        absent: {
          value: '0.6',
          why: 'an outer injector wets too much at low load; common practice',
        },
      },
    ),
    loadBlend: maybe('ratio', 'Over how much more load it reaches its share.', {
      limits: ['0', '1'],
      absent: { value: '0.1', why: 'common practice, no source' },
    }),
    fuelTemperature: maybe('temperature', 'Fuel at the nozzle.', {
      limits: ['-40 degC', '90 degC'],
      usual: ['0 degC', '60 degC'],
      absent: { value: '30 degC', why: 'common practice, no source' },
    }),
    valveTemperature: maybe('temperature', "Head of the intake valve, on the port's side.", {
      limits: ['0 degC', '400 degC'],
      usual: ['60 degC', '250 degC'],
      absent: { value: '130 degC', why: 'common practice, no source' },
    }),
    lean: maybe('angle', "Lean of the trumpet's axis from upright; 0 is mouth up, 90 lies flat.", {
      limits: ['0 deg', '180 deg'],
      absent: { value: '45 deg', why: 'common practice, no source' },
    }),
    filmThickness: maybe('length', 'Thickness below which wall film breaks into patches.', {
      limits: ['2 um', '200 um'],
      usual: ['5 um', '50 um'],
      example: '20 um',
      absent: { value: '20 um', why: 'common practice, no source; sets how slow the film is' },
    }),
    idleSpeed: maybe('speed', 'Idle speed, for the smallest pulse.', {
      limits: ['300 rpm', '4000 rpm'],
      absent: { value: '1100 rpm', why: 'common practice, no source' },
    }),
    parcels: maybe('ratio', 'Parcels a pulse.', {
      limits: ['10', '2000'],
      whole: true,
      absent: { value: '80', why: 'doubling it changes volumetric efficiency little' },
    }),
  },
).optional();

/** Injectors from the valve outwards, or undefined where the file has none. */
export function resolveInjectors(
  reading: Reading,
  engine: EngineSpecification,
): InjectorsSpecification | undefined {
  if (!reading.has(SECTION)) return undefined;
  const density = liquidFuel(engine.combustion.fuel as FuelName).density;
  const { trumpet, throttle, runner, port } = engine.intake;
  const length = trumpet.length + throttle.length + runner.length + port.length;
  const list = Array.from({ length: reading.rows(EACH) }, (_, row) =>
    resolveInjector(reading, `${EACH}.${row}`, density, length),
  );
  list.sort((a, b) => b.position - a.position);
  const take = (key: string) => reading.take(`${SECTION}.${key}`);
  return {
    list,
    staging: resolveStaging(reading),
    fuelTemperature: take('fuelTemperature'),
    valveTemperature: take('valveTemperature'),
    lean: take('lean'),
    filmThickness: take('filmThickness'),
    idleSpeed: take('idleSpeed'),
    parcels: take('parcels'),
    coupling: { heat: 'field', vapour: 'field' },
  };
}

function resolveInjector(
  reading: Reading,
  path: string,
  density: number,
  length: number,
): InjectorSpecification {
  const take = (key: string) => reading.take(`${path}.${key}`);
  const fromMouth = reading.given(`${path}.fromMouth`);
  const byMass = reading.given(`${path}.massFlow`);
  const edge = reading.has(`${path}.start`) ? 'start' : 'end';
  return {
    name: reading.text(`${path}.name`)!,
    position: fromMouth ?? length - reading.given(`${path}.fromValve`)!,
    offset: take('offset'),
    tilt: take('tilt'),
    cone: take('cone'),
    flow: byMass ?? reading.given(`${path}.flow`)! * density,
    pressure: take('pressure'),
    sauterDiameter: take('dropSize'),
    spread: take('dropSpread'),
    timing: { edge, angle: reading.given(`${path}.${edge}`)! % 720 },
    deadTime: take('deadTime'),
    smallestPulse: take('smallestPulse'),
  };
}

function resolveStaging(reading: Reading): StagingSpecification {
  const rows = reading.rows(STAGING);
  if (rows === 0) reading.note(STAGING, 'none', 'the outer injector rests');
  return {
    speed: rows === 0 ? [0] : reading.column(STAGING, 'speed'),
    share: rows === 0 ? [0] : reading.column(STAGING, 'outer'),
    fromLoad: reading.take(`${SECTION}.fromLoad`),
    loadBlend: reading.take(`${SECTION}.loadBlend`),
  };
}
