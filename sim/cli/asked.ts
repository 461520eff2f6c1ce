/** Values of options, read with the units and limits of the scenario keys that they stand for. */
import { availableParallelism } from 'node:os';
import { readValue, type Scenario, STATIONS, type Station, shortestLength } from '../index.ts';
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

function asked(option: string, path: string, text: string): number {
  const read = readValue(path, text);
  if ('value' in read) return read.value;
  const { problem, limit, remedy } = read;
  const limitText = limit === undefined ? '' : `; limit: ${limit}`;
  throw new InputError(`${option} ${text}: ${problem}${limitText}; ${remedy}`);
}
