/** Which readings, and what mixture is wanted. */

import { InputError } from '../../errors.ts';
import { type FuelName, fuelNamed } from '../../gas/fuel.ts';
import { readLambdaReadings } from '../../scenario/lambdaReadings.ts';
import type { EngineSpecification } from '../../specification.ts';
import { askedValue, textOf } from '../options.ts';
import type { Asked, StudyOption } from '../study.ts';
import type { TrimsQuestion } from './compute.ts';

export const TRIMS_OPTIONS: readonly StudyOption[] = [
  {
    flags: '--readings <file>',
    help: 'CSV of the readings: speed, plate angle, cylinder and lambda or exhaust gases',
  },
  {
    flags: '--lambda <number>',
    help: 'mixture that every cylinder is to have (default: what all have together)',
  },
];

export function askedTrims(asked: Asked): TrimsQuestion {
  const { options, scenario } = asked;
  const file = textOf(options, 'readings');
  if (file === undefined) {
    throw new InputError('--readings is missing: name the CSV of the readings');
  }
  const question = readTrims(scenario.engine, asked.read(file), file);
  const wanted = textOf(options, 'lambda');
  if (wanted === undefined) return question;
  return { ...question, target: askedValue('--lambda', 'fuel.lambda', wanted) };
}

/**
 * Mixture readings of an engine.
 *
 * @param text the whole file
 * @throws InputError where there is one cylinder, ScenarioError with all that is wrong with the file
 */
export function readTrims(engine: EngineSpecification, text: string, file: string): TrimsQuestion {
  if (engine.cylinder.count < 2) {
    throw new InputError('trims compares cylinders, and this engine has one');
  }
  const { carbon, hydrogen, oxygen } = fuelNamed(engine.combustion.fuel as FuelName);
  const found = readLambdaReadings(text, file, {
    cylinders: engine.cylinder.count,
    throttle: engine.intake.throttle,
    fuel: { hydrogen: hydrogen / carbon, oxygen: oxygen / carbon },
  });
  return { engine, ...found };
}
