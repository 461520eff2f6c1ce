/**
 * Inputs that a measured run can be asked for, each as changes of the scenario file, so that what is
 * fitted is what the file can be made to say.
 *
 * Prior deviations are common practice, no source, but for the end correction: 0.61 radii unflanged
 * and 0.82 flanged bracket what a flared mouth can have, and a third of that is taken either way.
 */
import { isScalar, parseDocument } from 'yaml';
import type { Unknown } from '../decision/priorFit.ts';
import type { EngineSpecification, ValveSpecification } from '../specification.ts';
import { type Change, flowChanges as coefficientChanges } from './change.ts';
import { nodeAt } from './keyPath.ts';
import { readScenario } from './read.ts';
import { yamlSource } from './yamlSource.ts';

/** An unknown of a scenario: changes that a value of it makes to the file. */
export interface ScenarioUnknown extends Unknown {
  /** Unit of the value; empty for a plain number. */
  unit: string;
  meaning: string;
  changes(value: number): Change[];
}

interface Kind {
  unit: string;
  meaning: string;
  deviation: number;
  low: number;
  high: number;
  start(engine: EngineSpecification): number;
  changes(value: number, file: FileView): Change[];
}

/** What a change may need to know of the file. */
interface FileView {
  engine: EngineSpecification;
  /** The text at a path; undefined where nothing stands. */
  text(path: string): string | undefined;
}

type Side = 'intake' | 'exhaust';

const KINDS = {
  'end-correction': {
    unit: '',
    meaning: 'acoustic end correction of the mouth, in radii of the rim',
    deviation: 0.07,
    low: 0,
    high: 1,
    start: ({ intake }) => intake.trumpet.bellmouth.endCorrection,
    changes: (value) => [{ path: 'intake.trumpet.bellmouth.endCorrection', text: figure(value) }],
  },
  'intake-cam-phase': camPhase('intake'),
  'exhaust-cam-phase': camPhase('exhaust'),
  'intake-flow-scale': flowScale('intake'),
  'exhaust-flow-scale': flowScale('exhaust'),
  'air-temperature': {
    unit: 'K',
    meaning: 'temperature of the air at the mouths',
    deviation: 8,
    low: 230,
    high: 340,
    start: ({ ambient }) => ambient.temperature,
    changes: (value) => [{ path: 'ambient.temperature', text: `${figure(value)} K` }],
  },
  'port-wall-temperature': {
    unit: 'K',
    meaning: 'temperature of the wall of the intake port',
    deviation: 20,
    low: 270,
    high: 500,
    start: ({ intake }) => intake.port.wallTemperature,
    changes: (value) => [{ path: 'intake.port.wallTemperature', text: `${figure(value)} K` }],
  },
} satisfies Record<string, Kind>;

export type UnknownName = keyof typeof KINDS;

export const UNKNOWN_NAMES = Object.keys(KINDS) as UnknownName[];

function camPhase(side: Side): Kind {
  return {
    unit: 'deg',
    meaning: `how much later the ${side} cam opens and closes than the file says, crank degrees`,
    deviation: 3,
    low: -20,
    high: 20,
    start: () => 0,
    changes: (value, file) => {
      const lift = `${side}.valves.lift`;
      const single = ['open', 'close', 'centre'].map((key) => `${lift}.${key}`);
      const rows = file.engine[side].valve.lift;
      const table =
        rows.kind === 'table' ? rows.angle.map((_, i) => `${lift}.table.${i}.angle`) : [];
      return [...single, ...table].flatMap((path) => {
        const text = file.text(path);
        return text === undefined ? [] : [{ path, text: laterAngle(text, value) }];
      });
    },
  };
}

/** A crank angle as a file writes it, so many degrees later; its dead centre is kept. */
function laterAngle(text: string, by: number): string {
  const [, number = '', unit = 'deg', tag] =
    /^([+-]?[\d.eE+-]+)\s*(deg|°)?\s*(BTDC|ATDC|BBDC|ABDC)?/.exec(text) ?? [];
  const sign = tag === 'BTDC' || tag === 'BBDC' ? -1 : 1;
  return [figure(Number(number) + sign * by), unit, tag].filter(Boolean).join(' ');
}

function flowScale(side: Side): Kind {
  return {
    unit: '',
    meaning: `flow of the ${side} valves over what the file says`,
    deviation: 0.06,
    low: 0.5,
    high: 1.4,
    start: () => 1,
    changes: (value, file) => flowChanges(`${side}.valves`, file.engine[side].valve, value, file),
  };
}

function flowChanges(
  path: string,
  { flow }: ValveSpecification,
  factor: number,
  file: FileView,
): Change[] {
  if (flow.kind === 'bench') {
    return flow.flow.map((_, i) => {
      const at = `${path}.flowBench.points.${i}.flow`;
      const [, number = '', unit = ''] = /^(\S+?)\s*([^\d\s+±-]\S*)/.exec(file.text(at)!) ?? [];
      return { path: at, text: `${figure(factor * Number(number))} ${unit}` };
    });
  }
  return coefficientChanges(`${path}.flowCoefficient`, flow, factor, figure);
}

/** A number as a file would have it. */
function figure(value: number): string {
  return String(Number(value.toPrecision(5)));
}

/** The unknowns of those names for a scenario. */
export function scenarioUnknowns(
  text: string,
  name: string,
  names: readonly UnknownName[],
): ScenarioUnknown[] {
  const { engine } = readScenario(text, name);
  const { tree } = yamlSource(text, name);
  const file: FileView = { engine, text: (path) => textAt(tree, path) };
  return names.map((known) => {
    const kind: Kind = KINDS[known];
    const { unit, meaning, deviation, low, high } = kind;
    const start = kind.start(engine);
    const changes = (value: number) => kind.changes(value, file);
    return { name: known, unit, meaning, start, deviation, low, high, changes };
  });
}

function textAt(tree: unknown, path: string): string | undefined {
  const value = nodeAt(tree, path);
  return value === undefined || value instanceof Object ? undefined : String(value);
}

/** The engine with those values of the unknowns, as if the file said so. */
export function engineWith(
  text: string,
  name: string,
  unknowns: readonly ScenarioUnknown[],
  values: readonly number[],
): EngineSpecification {
  const changes = unknowns.flatMap((unknown, k) => unknown.changes(values[k]!));
  return readScenario(text, name, changes).engine;
}

/**
 * The file with the changes written in. Values that stand there are replaced where they stand, so that
 * the rest stays byte for byte; keys that are missing are added, which may rewrap the file.
 *
 * @throws ScenarioError where the changed file is no scenario
 */
export function changedText(text: string, name: string, changes: readonly Change[]): string {
  const document = parseDocument(text);
  const keysOf = (path: string) =>
    path.split('.').map((key) => (/^\d+$/.test(key) ? Number(key) : key));
  const places = changes.flatMap(({ path, text: value }) => {
    const node = document.getIn(keysOf(path), true);
    return isScalar(node) && node.range ? [{ range: node.range, value }] : [];
  });
  const replaced = places
    .toSorted((a, b) => b.range[0] - a.range[0])
    .reduce((whole, { range: [from, to], value }) => {
      return whole.slice(0, from) + value + whole.slice(to);
    }, text);
  const missing = changes.filter(({ path }) => !document.hasIn(keysOf(path)));
  const written = missing.length === 0 ? replaced : withAdded(replaced, missing, keysOf);
  readScenario(written, name);
  return written;
}

function withAdded(
  text: string,
  missing: readonly Change[],
  keysOf: (path: string) => (string | number)[],
): string {
  const document = parseDocument(text);
  for (const { path, text: value } of missing) addIn(document, keysOf(path), scalar(value));
  return document.toString({ lineWidth: 0 });
}

/** Plain numbers stay numbers. */
const scalar = (text: string) => (/^[+-]?[\d.]+(e[+-]?\d+)?$/i.test(text) ? Number(text) : text);

function addIn(
  document: ReturnType<typeof parseDocument>,
  keys: readonly (string | number)[],
  value: unknown,
): void {
  for (let depth = 1; depth < keys.length; depth++) {
    const above = keys.slice(0, depth);
    if (document.hasIn(above)) continue;
    document.setIn(above, document.createNode(typeof keys[depth] === 'number' ? [] : {}));
  }
  document.setIn(keys, value);
}
