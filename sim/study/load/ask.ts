/** From which speed on, and how long the table may be. */
import { InputError } from '../../errors.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { askedValue, textOf } from '../options.ts';
import type { Asked, StudyOption } from '../study.ts';

export const LOAD_OPTIONS: readonly StudyOption[] = [
  {
    flags: '--from <speed>',
    help: 'lowest engine speed of the table, for example 900rpm (default: 1000 rpm, or the lowest of the file where that is less)',
  },
  { flags: '--most <size>', help: 'angles by speeds at most, for example 12x16 (default: 16x16)' },
];

export interface LoadQuestion {
  scenario: Scenario;
  /** Lowest and highest speed [rpm]. */
  from: number;
  to: number;
  /** Most plate angles and speeds. */
  mostAngles: number;
  mostSpeeds: number;
}

/** A table from the lowest speed of the file or 1000 rpm on, `size` values each way at most. */
export function loadQuestion(scenario: Scenario, size: number): LoadQuestion {
  const from = Math.min(LOWEST, ...scenario.speeds);
  const to = Math.max(...scenario.speeds);
  return { scenario, from, to, mostAngles: size, mostSpeeds: size };
}

const LOWEST = 1000;
const USUAL = 16;
/** Fewer cannot show a bend on either side; more no controller holds. */
export const SIZES = { least: 7, most: 80 };

export function askedLoad({ options, scenario }: Asked): LoadQuestion {
  const text = textOf(options, 'from');
  const usual = loadQuestion(scenario, USUAL);
  const { to } = usual;
  const from = text === undefined ? usual.from : askedValue('--from', 'speeds.from', text);
  if (from > to / 2) {
    throw new InputError(
      `--from ${text ?? from}: the table ends at ${to} rpm, the highest speed of the file; at most half of it`,
    );
  }
  return { scenario, from, to, ...askedSize(textOf(options, 'most') ?? `${USUAL}x${USUAL}`) };
}

function askedSize(text: string): Pick<LoadQuestion, 'mostAngles' | 'mostSpeeds'> {
  const [, angles, speeds] = /^(\d+)\s*x\s*(\d+)$/i.exec(text.trim()) ?? [];
  const sizes = [Number(angles), Number(speeds)] as const;
  const { least, most } = SIZES;
  if (sizes.every((size) => size >= least && size <= most))
    return { mostAngles: sizes[0], mostSpeeds: sizes[1] };
  throw new InputError(
    `--most ${text}: angles by speeds, ${least} to ${most} of each, for example 16x16`,
  );
}
