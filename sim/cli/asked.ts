/** Values of options, read with the units and limits of the scenario keys that they stand for. */
import { availableParallelism } from 'node:os';
import {
  type Axis,
  parseShard,
  readValue,
  readVariedKey,
  type Scenario,
  type ScenarioPath,
  type Shard,
  STATIONS,
  type Station,
  shortestLength,
  type Uncertainty,
  USUAL_UNCERTAINTY,
} from '../index.ts';
import { InputError } from './exit.ts';

/** Length of the trumpets [m]: as asked, or those fitted now. */
export function askedLength(text: string | undefined, { engine }: Scenario): number {
  if (text === undefined) return engine.intake.trumpet.length;
  const length = asked('--length', 'sweep.lengths.from', text);
  const shortest = shortestLength(engine);
  if (length >= shortest) return length;
  const least = `${Number((shortest * 1e3).toPrecision(5))} mm`;
  throw new InputError(
    `--length ${text}: the trumpet is shorter than its bellmouth leaves room for; at least ${least}`,
  );
}

/** Speed [rpm]: as asked, or the middle of the band. */
export function askedSpeed(text: string | undefined, { target }: Scenario): number {
  if (text === undefined) return Math.round((target.from + target.to) / 2);
  return asked('--speed', 'speeds.from', text);
}

/** Most worker threads. */
const MOST_WORKERS = 256;

/** Worker threads: as asked, or one a core. */
export function askedWorkers(text: string | undefined): number {
  if (text === undefined) return availableParallelism();
  const workers = Number(text);
  if (/^\d+$/.test(text) && workers >= 1 && workers <= MOST_WORKERS) return workers;
  throw new InputError(
    `--workers ${text}: write a whole number from 1 to ${MOST_WORKERS}, for example: --workers 2`,
  );
}

const DUCTS = ['trumpet', 'runner', 'primary'] as const;

/** Stations: names of the usual ones, or places such as runner:50%. */
export function askedStations(text: string | undefined): readonly Station[] {
  if (text === undefined) return STATIONS;
  const stations = text.split(',').map((name) => station(name.trim()));
  const twice = stations.find(({ name }, i) => stations.findIndex((s) => s.name === name) < i);
  if (twice) throw new InputError(`--stations: ${twice.name} is named twice`);
  return stations;
}

function station(text: string): Station {
  const usual = STATIONS.find(({ name }) => name === text);
  if (usual) return usual;
  const [, name, number] = /^([a-z]+):(\d+(?:\.\d+)?)\s*%$/.exec(text) ?? [];
  const duct = DUCTS.find((known) => known === name);
  const share = Number(number) / 100;
  if (duct && share <= 1) return { name: `${duct}_${number}`, duct, share };
  const names = STATIONS.map((known) => known.name).join(', ');
  throw new InputError(
    `--stations: "${text}" is no station; use ${names}, or a share of the way along ` +
      `${DUCTS.join(', ')}, for example: runner:50%`,
  );
}

/** Keys to vary with their values; undefined where none are asked for. */
export function askedVary(texts: readonly string[] | undefined): Axis[] | undefined {
  if (texts === undefined || texts.length === 0) return undefined;
  if (texts.length > 2) throw new InputError('--vary: one key or two, not more');
  const axes = texts.map((text) => {
    const axis = readVariedKey(text);
    if ('values' in axis) return axis;
    const limit = axis.limit === undefined ? '' : `; limit: ${axis.limit}`;
    throw new InputError(`--vary ${text}: ${axis.problem}${limit}; ${axis.remedy}`);
  });
  if (axes[0]!.path === axes[1]?.path) {
    throw new InputError(`--vary: ${axes[0]!.path} is varied twice`);
  }
  return axes;
}

/** One share of a job dealt out to several machines. */
export function askedShard(text: string | undefined): Shard | undefined {
  if (text === undefined) return undefined;
  const shard = parseShard(text);
  if (shard) return shard;
  throw new InputError(`--shard ${text}: write which of how many, for example: --shard 2/5`);
}

/** How the doubt is carried through: as asked, or as the file says; undefined where neither does. */
export function askedUncertainty(
  options: { uncertainty?: boolean; samples?: string; seed?: string },
  scenario: Scenario,
): Uncertainty | undefined {
  const { uncertainty = false, samples, seed } = options;
  if (!uncertainty && samples === undefined && seed === undefined) return scenario.uncertainty;
  const own = scenario.uncertainty ?? USUAL_UNCERTAINTY;
  return {
    ...own,
    ...(samples !== undefined && { samples: asked('--samples', 'uncertainty.samples', samples) }),
    ...(seed !== undefined && { seed: asked('--seed', 'uncertainty.seed', seed) }),
  };
}

function asked(option: string, path: ScenarioPath, text: string): number {
  const read = readValue(path, text);
  if ('value' in read) return read.value;
  const { problem, limit, remedy } = read;
  const limitText = limit === undefined ? '' : `; limit: ${limit}`;
  throw new InputError(`${option} ${text}: ${problem}${limitText}; ${remedy}`);
}
