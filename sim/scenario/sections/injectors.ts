/** The injectors of one cylinder, and how they share the fuel. */
import { z } from 'zod';
import { FUEL_NAMES, type FuelName, fuelNamed } from '../../gas/fuel.ts';
import type {
  EngineSpecification,
  InjectorSpecification,
  InjectorsSpecification,
  StagingSpecification,
} from '../../specification.ts';
import { liquidFuel } from '../../spray/liquidFuel.ts';
import { maybe, quantity, section } from '../leaf.ts';
import { quantityToText } from '../quantity.ts';
import type { Reading } from '../reading.ts';
import { gridValues } from './grid.ts';
import { diameterAt } from './pipe.ts';
import { checkRising } from './rows.ts';

const SECTION = 'injectors';
const EACH = `${SECTION}.each`;
const STAGING = `${SECTION}.staging`;

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

export function checkInjectors(reading: Reading): void {
  if (!reading.has(SECTION)) return;
  for (let row = 0; row < reading.rows(EACH); row++) {
    const path = `${EACH}.${row}`;
    checkOneOf(reading, path, 'fromValve', 'fromMouth');
    checkOneOf(reading, path, 'flow', 'massFlow');
    checkOneOf(reading, path, 'start', 'end');
    checkPlace(reading, path);
    checkPulse(reading, path);
  }
  checkRising(reading, STAGING, 'speed', reading.column(STAGING, 'speed'));
  if (reading.has(STAGING) && reading.rows(EACH) === 1) {
    reading.problem(STAGING, 'one injector has nothing to share', 'leave staging away');
  }
}

function checkOneOf(reading: Reading, path: string, one: string, other: string): void {
  const given = [one, other].filter((key) => reading.has(`${path}.${key}`)).length;
  if (given === 1) return;
  const what = given === 0 ? `${one} or ${other} is missing` : `${one} and ${other} are both given`;
  reading.problem(path, what, `give one of ${one} and ${other}`);
}

function checkPlace(reading: Reading, path: string): void {
  const place = placeOf(reading, path);
  const length = lineLength(reading);
  if (place === undefined || length === undefined) return;
  const key = `${path}.${reading.has(`${path}.fromValve`) ? 'fromValve' : 'fromMouth'}`;
  if (place >= length) {
    const far = quantityToText(length, 'length');
    reading.problem(
      key,
      'the nozzle lies past the valve',
      'measure along the centre line from the rim of the mouth to the valve seat',
      `less than ${far} behind the rim`,
    );
    return;
  }
  const offset = reading.given(`${path}.offset`) ?? 0;
  const wall = wallAt(reading, place);
  if (place < 0 || wall === undefined || offset <= wall.diameter / 2) return;
  reading.problem(
    `${path}.offset`,
    `the nozzle lies inside the wall of the ${wall.name}`,
    'offset counts from the centre line to the tip; a tip flush with the wall has half the diameter',
    `at most ${quantityToText(wall.diameter / 2, 'length')}`,
  );
}

/** A pulse that a full cylinder at the highest speed asks for must fit into the cycle. */
function checkPulse(reading: Reading, path: string): void {
  const flow = massFlow(reading, path);
  const need = fullFuel(reading);
  const top = Math.max(...gridValues(reading, 'speeds').filter(Number.isFinite));
  if (flow === undefined || need === undefined || !(top > 0) || reading.rows(EACH) > 1) return;
  const share = 120 / top;
  const pulse = need / flow + (reading.given(`${path}.deadTime`) ?? 0);
  if (pulse <= share) return;
  const key = reading.has(`${path}.flow`) ? 'flow' : 'massFlow';
  reading.problem(
    `${path}.${key}`,
    `a full cylinder at ${top} rpm asks for ${(pulse * 1e3).toFixed(1)} ms, longer than the cycle`,
    'take a larger injector, or add one',
    `at most ${(share * 1e3).toFixed(1)} ms`,
  );
}

/** The same where several injectors share: told of the whole, once. */
export function checkAllPulses(reading: Reading): void {
  const rows = reading.rows(EACH);
  const need = fullFuel(reading);
  const top = Math.max(...gridValues(reading, 'speeds').filter(Number.isFinite));
  if (rows < 2 || need === undefined || !(top > 0)) return;
  const flows = Array.from({ length: rows }, (_, row) => massFlow(reading, `${EACH}.${row}`));
  if (flows.includes(undefined)) return;
  const most = flows.reduce<number>((sum, flow) => sum + flow!, 0) * (120 / top);
  if (most >= need) return;
  reading.problem(
    EACH,
    `all injectors held open give ${(most * 1e6).toFixed(1)} mg a cycle at ${top} rpm; a full cylinder asks for ${(need * 1e6).toFixed(1)} mg: the injection is longer than the cycle`,
    'take larger injectors',
  );
}

/** Nozzle behind the rim plane [m], or undefined where it is not known. */
function placeOf(reading: Reading, path: string): number | undefined {
  const fromMouth = reading.given(`${path}.fromMouth`);
  if (fromMouth !== undefined) return fromMouth;
  const fromValve = reading.given(`${path}.fromValve`);
  const length = lineLength(reading);
  return fromValve === undefined || length === undefined ? undefined : length - fromValve;
}

const PIPES = [
  { name: 'trumpet', path: 'intake.trumpet' },
  { name: 'throttle body', path: 'intake.throttle' },
  { name: 'runner', path: 'intake.runner' },
  { name: 'port', path: 'intake.port' },
] as const;

/** Rim plane to valve seat [m]. */
function lineLength(reading: Reading): number | undefined {
  const lengths = pipes(reading).map(({ path }) => reading.given(`${path}.length`));
  return lengths.includes(undefined)
    ? undefined
    : lengths.reduce<number>((sum, length) => sum + length!, 0);
}

function pipes(reading: Reading) {
  return PIPES.filter(({ name, path }) => name !== 'runner' || reading.has(path));
}

/** The pipe around a place behind the rim, and its diameter there [m]; the flare is left out. */
function wallAt(reading: Reading, place: number): { name: string; diameter: number } | undefined {
  let from = 0;
  for (const { name, path } of pipes(reading)) {
    const length = reading.given(`${path}.length`);
    if (length === undefined) return undefined;
    if (place < from + length) {
      const bore = reading.given(`${path}.bore`);
      const outer = bore ?? diameterAt(reading, path, 'AirEnd');
      const inner = bore ?? diameterAt(reading, path, 'ValveEnd');
      if (outer === undefined || inner === undefined) return undefined;
      return { name, diameter: outer + ((place - from) / length) * (inner - outer) };
    }
    from += length;
  }
  return undefined;
}

function fuelName(reading: Reading): FuelName {
  // A name that the schema has refused is told there; what stands on it is checked as for petrol.
  const name = reading.text('fuel.name');
  return FUEL_NAMES.find((known) => known === name) ?? 'petrol';
}

function massFlow(reading: Reading, path: string): number | undefined {
  const byMass = reading.given(`${path}.massFlow`);
  if (byMass !== undefined) return byMass;
  const byVolume = reading.given(`${path}.flow`);
  return byVolume === undefined ? undefined : byVolume * liquidFuel(fuelName(reading)).density;
}

/** Fuel of a cylinder full of air of 1.2 kg/m^3 [kg]. */
function fullFuel(reading: Reading): number | undefined {
  const bore = reading.given('engine.bore');
  const stroke = reading.given('engine.stroke');
  if (bore === undefined || stroke === undefined) return undefined;
  const lambda = reading.given('fuel.lambda') ?? 0.88;
  const air = 1.2 * (Math.PI / 4) * bore * bore * stroke;
  return air / (lambda * fuelNamed(fuelName(reading)).stoichiometricAirFuelRatio);
}

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
