/** What one value of the injectors says of another: nozzles within the pipes, pulses within the cycle. */
import { FUEL_NAMES, type FuelName, fuelNamed } from '../../gas/fuel.ts';
import { liquidFuel } from '../../spray/liquidFuel.ts';
import { quantityToText } from '../quantity.ts';
import type { Reading } from '../reading.ts';
import { gridValues } from './grid.ts';
import { EACH, SECTION, STAGING } from './injectorPaths.ts';
import { diameterAt } from './pipe.ts';
import { checkRising } from './rows.ts';

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
