/** The injectors of one cylinder, and how they share the fuel. */
import type { FuelName } from '../../gas/fuel.ts';
import type {
  InjectorSpecification,
  InjectorsSpecification,
  StagingSpecification,
} from '../../injectors.ts';
import type { EngineSpecification } from '../../specification.ts';
import { liquidFuel } from '../../spray/liquidFuel.ts';
import { list, maybe, oneOf, optional, quantity, section, text } from '../key.ts';
import type { ScenarioView } from '../schema.ts';
import { numbers, takeAll } from '../view.ts';

const PLACE = { limits: ['-2 m', '3 m'] } as const;
/** Dead centres of the induction. */
const ANGLE = {
  limits: ['0 deg', '720 deg'],
  deadCentres: { top: 360, bottom: 540 },
  example: '30 deg BTDC',
} as const;

const injectorSection = section(
  'One injector of a cylinder.',
  {
    name: text('What you call it.', 60),
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
    }),
    massFlow: maybe('massFlow', 'Flow held open, by mass; or give flow.', {
      limits: ['0.1 g/s', '150 g/s'],
      usual: ['1 g/s', '35 g/s'],
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
    dropSpread: maybe(
      'ratio',
      'Exponent of the Rosin-Rammler spread of sizes; larger is narrower.',
      {
        limits: ['1.2', '10'],
        usual: ['1.5', '4'],
        absent: { value: '2.2', why: 'common practice, no source' },
      },
    ),
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
  },
  oneOf(
    'the place of the nozzle',
    [['fromValve'], ['fromMouth']],
    'give one of fromValve and fromMouth',
  ),
  oneOf('the flow held open', [['flow'], ['massFlow']], 'give one of flow and massFlow'),
  oneOf('the timing', [['start'], ['end']], 'give one of start and end'),
);

const stagingRow = section(
  'The share of the outermost injector at one speed; straight between rows.',
  {
    speed: quantity('speed', 'Engine speed.', { limits: ['500 rpm', '25000 rpm'] }),
    outer: quantity('ratio', 'Share of the fuel that the outermost injector gives.', {
      limits: ['0', '1'],
    }),
  },
);

export const injectorsSection = optional(
  section(
    'Injectors of one cylinder. Only the study of their placement computes with them; elsewhere fuel joins the air at valve closing.',
    {
      each: list(injectorSection, 'Every injector of one cylinder, in any order.', { most: 6 }),
      staging: optional(
        list(stagingRow, 'Share against speed, rising; without it the outer injector rests.', {
          most: 50,
          rising: 'speed',
        }),
      ),
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
      lean: maybe(
        'angle',
        "Lean of the trumpet's axis from upright; 0 is mouth up, 90 lies flat.",
        {
          limits: ['0 deg', '180 deg'],
          absent: { value: '45 deg', why: 'common practice, no source' },
        },
      ),
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
  ),
);

type InjectorsView = ScenarioView['injectors'];
export type InjectorView = InjectorsView['each']['rows'][number];

/** Injectors from the valve outwards, or undefined where the file has none. */
export function resolveInjectors(
  { injectors }: ScenarioView,
  engine: EngineSpecification,
): InjectorsSpecification | undefined {
  if (!injectors.here.present) return undefined;
  const density = liquidFuel(engine.combustion.fuel as FuelName).density;
  const { trumpet, throttle, runner, port } = engine.intake;
  const length = trumpet.length + throttle.length + runner.length + port.length;
  const rows = injectors.each.rows.map((row) => resolveInjector(row, density, length));
  rows.sort((a, b) => b.position - a.position);
  const { here, each, staging, fromLoad, loadBlend, ...rest } = injectors;
  return {
    list: rows,
    staging: resolveStaging(injectors),
    ...takeAll(rest),
    coupling: { heat: 'field', vapour: 'field' },
  };
}

function resolveInjector(at: InjectorView, density: number, length: number): InjectorSpecification {
  const edge = at.start.present ? 'start' : 'end';
  return {
    name: at.name.given!,
    position: at.fromMouth.given ?? length - at.fromValve.given!,
    offset: at.offset.take(),
    tilt: at.tilt.take(),
    cone: at.cone.take(),
    flow: at.massFlow.given ?? at.flow.given! * density,
    pressure: at.pressure.take(),
    sauterDiameter: at.dropSize.take(),
    spread: at.dropSpread.take(),
    timing: { edge, angle: at[edge].given! % 720 },
    deadTime: at.deadTime.take(),
    smallestPulse: at.smallestPulse.take(),
  };
}

function resolveStaging({ staging, fromLoad, loadBlend }: InjectorsView): StagingSpecification {
  const { rows } = staging;
  if (rows.length === 0) staging.note('none', 'the outer injector rests');
  return {
    speed: rows.length === 0 ? [0] : numbers(rows.map(({ speed }) => speed)),
    share: rows.length === 0 ? [0] : numbers(rows.map(({ outer }) => outer)),
    fromLoad: fromLoad.take(),
    loadBlend: loadBlend.take(),
  };
}
