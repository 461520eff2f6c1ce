/** Which run is compared, at which length, and what is fitted. */
import { InputError } from '../../errors.ts';
import { readMeasuredRun } from '../../scenario/measuredRun.ts';
import { UNKNOWN_NAMES, type UnknownName } from '../../scenario/unknowns.ts';
import { askedLength, textOf } from '../options.ts';
import type { Asked, OptionValues, StudyOption } from '../study.ts';
import type { MeasuredQuestion } from './compute.ts';

export const COMPARE_OPTIONS: readonly StudyOption[] = [
  {
    flags: '--measured <run>',
    help: 'CSV of the run: speed and torque, power or volumetric efficiency',
  },
  { flags: '--fit <list>', help: `fit one to three of: ${UNKNOWN_NAMES.join(', ')}` },
  {
    flags: '--noise <percent>',
    help: 'standard uncertainty of a measured figure (default: 1%)',
  },
  { flags: '--write <file>', help: 'write a copy of the scenario with the values found' },
];

export function askedRun(asked: Asked): MeasuredQuestion {
  const { text, file, options } = asked;
  const fit = askedUnknowns(textOf(options, 'fit'));
  const measured = textOf(options, 'measured');
  if (measured === undefined) {
    throw new InputError('--measured is missing: name the CSV of the run');
  }
  checkWrite(options, fit, file);
  const run = readMeasuredRun(asked.read(measured), measured);
  const noise = askedNoise(textOf(options, 'noise'));
  const question = { text, name: file, run, length: askedLength(asked), fit };
  return { ...question, ...(noise !== undefined && { noise }) };
}

function checkWrite({ write }: OptionValues, fit: readonly UnknownName[], file: string): void {
  if (write === undefined) return;
  if (fit.length === 0) throw new InputError(`--write needs --fit: ${UNKNOWN_NAMES.join(', ')}`);
  if (write === file) {
    throw new InputError('--write: name another file, so that the scenario itself stays as it is');
  }
}

/** Unknowns to fit, as a list with commas; none where the option is absent. */
function askedUnknowns(text: string | undefined): UnknownName[] {
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
function askedNoise(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const [, number] = /^(\d+(?:\.\d+)?)\s*%$/.exec(text.trim()) ?? [];
  const percent = Number(number);
  if (number !== undefined && percent >= 0.05 && percent <= 20) return percent / 100;
  throw new InputError(`--noise ${text}: write 0.05 % to 20 %, for example: --noise 1%`);
}
