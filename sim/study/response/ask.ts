/** Which plates move how far and how fast, at which speed. */
import { InputError } from '../../errors.ts';
import type { AirboxSpecification, PlenumSpecification } from '../../fittings.ts';
import type { InjectorsSpecification } from '../../injectors.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { EngineSpecification } from '../../specification.ts';
import { askedSpeed, askedValue, SPEED_OPTION, textOf } from '../options.ts';
import type { Asked, StudyOption } from '../study.ts';
import type { WayName } from './compute.ts';

export interface ResponseQuestion {
  engine: EngineSpecification;
  plenum: PlenumSpecification;
  airbox: AirboxSpecification;
  /** Whose film wets the walls; absent where the file has none. */
  injectors?: InjectorsSpecification;
  /** [rpm] */
  speed: number;
  /** Plates above their stop before and after [deg], and time that they take [s]. */
  from: number;
  to: number;
  seconds: number;
  /** Time constant of the pressure signal that fuels [s]. */
  lag: number;
  /** Absent: all. */
  ways?: readonly WayName[];
}

export const RESPONSE_OPTIONS: readonly StudyOption[] = [
  SPEED_OPTION,
  { flags: '--from <angle>', help: 'plates above their stop before, for example 10deg' },
  { flags: '--to <angle>', help: 'and after, for example 40deg (default: wide open)' },
  { flags: '--within <time>', help: 'time that plates take, for example 50ms' },
  { flags: '--lag <time>', help: 'time constant of the pressure signal, for example 20ms' },
];

/** Above the stop [deg], and times [s]; common practice, no source. */
const USUAL = { from: 8, seconds: 0.05, lag: 0.02 };

/** As asked without options, at a speed [rpm]. */
export function usualResponse(
  { engine, plenum, airbox, injectors }: Scenario,
  speed: number,
): ResponseQuestion {
  const to = 90 - engine.intake.throttle.closedAngle;
  const own = { engine, plenum, airbox, ...(injectors && { injectors }) };
  return { ...own, speed, to, ...USUAL };
}

export function askedResponse(asked: Asked): ResponseQuestion {
  const { options, scenario } = asked;
  const usual = usualResponse(scenario, askedSpeed(asked));
  const widest = usual.to;
  const angle = (name: 'from' | 'to') => {
    const text = textOf(options, name);
    return text === undefined
      ? usual[name]
      : askedValue(`--${name}`, 'intake.throttle.angle', text);
  };
  const time = (name: 'within' | 'lag', otherwise: number) => {
    const text = textOf(options, name);
    return text === undefined ? otherwise : askedValue(`--${name}`, 'pressureBar.mostLag', text);
  };
  const [from, to] = [angle('from'), angle('to')];
  if (from < LEAST) {
    throw new InputError(
      `--from ${from}deg: plates are all but shut; limit: at least ${LEAST} deg; open them more`,
    );
  }
  if (to <= from || to > widest) {
    throw new InputError(
      `--to ${to}deg: plates do not open; limit: more than ${from} deg, at most ${widest} deg above the stop; name a wider opening`,
    );
  }
  return {
    ...usual,
    from,
    to,
    seconds: time('within', USUAL.seconds),
    lag: time('lag', USUAL.lag),
  };
}

/** Smallest opening at which cycles repeat well enough to settle [deg]; found on the demos. */
const LEAST = 5;
