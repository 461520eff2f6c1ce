/** Which lengths are heard, and at which speed one is held. */
import { InputError } from '../../errors.ts';
import { askedLength, askedSpeed, LENGTH_OPTION, lengthOption, SPEED_OPTION } from '../options.ts';
import type { Asked, StudyOption } from '../study.ts';
import type { ListenQuestion } from './compute.ts';
import { mouthsInTheOpen } from './source.ts';

export const LISTEN_OPTIONS: readonly StudyOption[] = [
  LENGTH_OPTION,
  { flags: '--against <length>', help: 'another trumpet length to hear beside it' },
  SPEED_OPTION,
  {
    flags: '--box',
    help: 'hear the inlet of the box over the trumpets, in place of mouths in the open',
  },
];

export function askedSounds(asked: Asked): ListenQuestion {
  const { engine, speeds, mouths, airbox, lengthUnit } = asked.scenario;
  const boxed = asked.options.box === true || !mouthsInTheOpen(engine);
  const length = askedLength(asked);
  const against = lengthOption(asked, 'against');
  if (against === length) {
    throw new InputError('--against: this is the length itself; name another, for example 180mm');
  }
  const speed = askedSpeed(asked);
  const lengths = against === undefined ? [length] : [length, against];
  const all = [...new Set([...speeds, speed])].sort((a, b) => a - b);
  const box = boxed && { box: airbox };
  return { engine, lengths, speeds: all, speed, row: mouths, ...box, lengthUnit };
}
