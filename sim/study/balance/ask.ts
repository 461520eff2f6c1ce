/** Which readings; without them, at which loads the spread is computed. */
import { InputError } from '../../errors.ts';
import { throttleArea } from '../../loss/throttlePlate.ts';
import { readBodyReadings, type Screws } from '../../scenario/bodyReadings.ts';
import type { EngineSpecification } from '../../specification.ts';
import { askedValue, textOf } from '../options.ts';
import type { Asked, StudyOption } from '../study.ts';
import type { ScrewsQuestion } from './screws.ts';
import type { Rod } from './tellSpread.ts';

export const BALANCE_OPTIONS: readonly StudyOption[] = [
  {
    flags: '--readings <file>',
    help: 'CSV of the readings: speed, plate angle, cylinder, and flow or vacuum',
  },
  {
    flags: '--spacing <length>',
    help: 'without readings: from body to body, along the rod that links them',
  },
  { flags: '--lever <length>', help: 'without readings: of that rod at each shaft' },
];

/** Throws InputError for an engine with nothing to balance. */
export function checkBodies({ cylinder }: EngineSpecification): void {
  if (cylinder.count < 2) throw new InputError('balance compares bodies, and this engine has one');
}

/**
 * Readings of an engine's bodies.
 *
 * @param text the whole file
 * @throws InputError where there is one body, ScenarioError with all that is wrong with the file
 */
export function askedScrews(
  fitted: EngineSpecification,
  text: string,
  file: string,
): Omit<ScrewsQuestion, 'steps'> {
  checkBodies(fitted);
  const { cylinder, intake } = fitted;
  const { doubts, ...found } = readBodyReadings(text, file, {
    cylinders: cylinder.count,
    throttle: intake.throttle,
  });
  const engine = withBleed(fitted, found.screws);
  const whole = wholeBleed(engine);
  return {
    engine,
    ...found,
    ...(found.screws.master > 0 && { master: found.screws.master - 1 }),
    doubts: { ...doubts, bleed: doubts.bleed * whole },
    wholeBleed: whole,
  };
}

/** The engine with the bleeds that the readings tell of. */
function withBleed(
  engine: EngineSpecification,
  { bleedBore, bleedOpen }: Screws,
): EngineSpecification {
  if (bleedBore === 0) return engine;
  const throttle = { ...engine.intake.throttle, bleed: { bore: bleedBore, open: bleedOpen } };
  return { ...engine, intake: { ...engine.intake, throttle } };
}

/** Effective area of a bleed whose screw is out [m^2]; 0 where there is none. */
function wholeBleed({ intake: { throttle } }: EngineSpecification): number {
  const { bleed, ...plate } = throttle;
  if (!bleed) return 0;
  const open = { ...plate, bleed: { ...bleed, open: 1 } };
  return throttleArea(open, throttle.angle) - throttleArea(plate, throttle.angle);
}

/** Rod and levers of a linkage [m]; undefined where neither is given. */
export function askedRod({ options }: Asked): Rod | undefined {
  const [spacing, lever] = [textOf(options, 'spacing'), textOf(options, 'lever')];
  if (spacing === undefined && lever === undefined) return undefined;
  if (spacing === undefined || lever === undefined) {
    throw new InputError(
      '--spacing and --lever belong together: give both, for example 92mm and 22mm',
    );
  }
  return {
    spacing: askedValue('--spacing', 'intake.throttle.length', spacing),
    lever: askedValue('--lever', 'intake.throttle.shaftPosition', lever),
  };
}
