/** Values of the options of `compare`. */
import { UNKNOWN_NAMES, type UnknownName } from '../index.ts';
import { InputError } from './exit.ts';

/** Unknowns to fit, as a list with commas; none where the option is absent. */
export function askedUnknowns(text: string | undefined): UnknownName[] {
  if (text === undefined) return [];
  const names = text.split(',').map((name) => name.trim());
  const twice = names.find((name, i) => names.indexOf(name) < i);
  if (twice !== undefined) throw new InputError(`--fit: ${twice} is named twice`);
  return names.map((name) => {
    const known = UNKNOWN_NAMES.find((one) => one === name);
    if (known) return known;
    throw new InputError(`--fit: "${name}" is no unknown; use ${UNKNOWN_NAMES.join(', ')}`);
  });
}

/** Standard uncertainty of a measured figure [-], from per cent; undefined for the usual one. */
export function askedNoise(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const [, number] = /^(\d+(?:\.\d+)?)\s*%$/.exec(text.trim()) ?? [];
  const percent = Number(number);
  if (number !== undefined && percent >= 0.05 && percent <= 20) return percent / 100;
  throw new InputError(`--noise ${text}: write 0.05 % to 20 %, for example: --noise 1%`);
}
