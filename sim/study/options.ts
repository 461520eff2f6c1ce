/** Options that several studies share, read with the units and limits of the keys they stand for. */

import { InputError } from '../errors.ts';
import { lengthIn } from '../report/figures.ts';
import { readValue, type ScenarioPath, shortestLength } from '../scenario/readValue.ts';
import type { Asked, OptionValues, StudyOption } from './study.ts';

export const LENGTH_OPTION: StudyOption = {
  flags: '--length <length>',
  help: 'trumpet length, for example 180mm (default: as fitted now)',
};

export const SPEED_OPTION: StudyOption = {
  flags: '--speed <speed>',
  help: 'engine speed, for example 6000rpm (default: middle of the band)',
};

/** The text of an option; undefined where it is absent. */
export function textOf(options: OptionValues, name: string): string | undefined {
  const value = options[name];
  return typeof value === 'string' ? value : undefined;
}

/** Length of the trumpets [m]: as asked, or those fitted now. */
export function askedLength(asked: Asked): number {
  return lengthOption(asked, 'length') ?? asked.scenario.engine.intake.trumpet.length;
}

/** A length [m] under an option of that name; undefined where it is absent. */
export function lengthOption(
  { options, scenario: { engine, lengthUnit } }: Asked,
  name: string,
): number | undefined {
  const text = textOf(options, name);
  if (text === undefined) return undefined;
  const length = askedValue(`--${name}`, 'sweep.lengths.from', text);
  const shortest = shortestLength(engine);
  if (length >= shortest) return length;
  throw new InputError(
    `--${name} ${text}: the trumpet is shorter than its bellmouth leaves room for; at least ${lengthIn(shortest, lengthUnit)}`,
  );
}

/** Engine speed [rpm]: as asked, or the middle of the band. */
export function askedSpeed({ options, scenario: { target } }: Asked): number {
  const text = textOf(options, 'speed');
  if (text !== undefined) return askedValue('--speed', 'speeds.from', text);
  return Math.round((target.from + target.to) / 2);
}

/** A value read as the key at `path` would be. */
export function askedValue(option: string, path: ScenarioPath, text: string): number {
  const read = readValue(path, text);
  if ('value' in read) return read.value;
  throw refused(`${option} ${text}`, read);
}

/** What is wrong with an option, the limit and what to do about it. */
export function refused(
  option: string,
  { problem, limit, remedy }: { problem: string; limit?: string; remedy: string },
): InputError {
  const limitText = limit === undefined ? '' : `; limit: ${limit}`;
  return new InputError(`${option}: ${problem}${limitText}; ${remedy}`);
}
