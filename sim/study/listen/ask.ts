/** Which lengths are heard, and at which speed one is held. */
import { InputError } from '../../errors.ts';
import { askedLength, askedSpeed, LENGTH_OPTION, lengthOption, SPEED_OPTION } from '../options.ts';
import type { Asked, StudyOption } from '../study.ts';
import { type ListenQuestion, mouthsInTheOpen } from './compute.ts';

export const LISTEN_OPTIONS: readonly StudyOption[] = [
  LENGTH_OPTION,
  { flags: '--against <length>', help: 'another trumpet length to hear beside it' },
  SPEED_OPTION,
];

export function askedSounds(asked: Asked): ListenQuestion {
  const { engine, speeds, mouths, lengthUnit } = asked.scenario;
  if (!mouthsInTheOpen(engine)) {
    throw new InputError(
      `${asked.file}: the mouths breathe from a box (intake.feed.pressure), so what is heard comes through its walls; listen needs mouths in the open`,
    );
  }
  const length = askedLength(asked);
  const against = lengthOption(asked, 'against');
  if (against === length) {
    throw new InputError('--against: this is the length itself; name another, for example 180mm');
  }
  const speed = askedSpeed(asked);
  const lengths = against === undefined ? [length] : [length, against];
  const all = [...new Set([...speeds, speed])].sort((a, b) => a - b);
  return { engine, lengths, speeds: all, speed, row: mouths, lengthUnit };
}
