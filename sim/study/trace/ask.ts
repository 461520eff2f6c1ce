/** Where a trace looks, at which speed. */
import { STATIONS, type Station } from '../../engine/trace.ts';
import { InputError } from '../../errors.ts';
import { askedLength, askedSpeed, SPEED_OPTION, textOf } from '../options.ts';
import type { Asked, StudyOption } from '../study.ts';

export const TRACE_OPTIONS: readonly StudyOption[] = [
  SPEED_OPTION,
  {
    flags: '--stations <list>',
    help: 'where to look: mouth, port, exhaust, or a share of the way along a duct such as runner:50%',
  },
];

export function askedTrace(asked: Asked) {
  return {
    length: askedLength(asked),
    speed: askedSpeed(asked),
    stations: askedStations(textOf(asked.options, 'stations')),
  };
}

const DUCTS = ['trumpet', 'runner', 'primary'] as const;

/** Stations: names of the usual ones, or places such as runner:50%. */
function askedStations(text: string | undefined): readonly Station[] {
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
