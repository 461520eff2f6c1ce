/** Which readings, and what mixture is wanted. */

import { InputError } from '../../errors.ts';
import { type FuelName, fuelNamed } from '../../gas/fuel.ts';
import { type LambdaReadings, readLambdaReadings } from '../../scenario/lambdaReadings.ts';
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

export function askedTrims(asked: Asked): TrimsQuestion & Pick<LambdaReadings, 'fromGases'> {
  const { options, scenario } = asked;
  const file = textOf(options, 'readings');
  if (file === undefined) {
    throw new InputError('--readings is missing: name the CSV of the readings');
  }
  const { engine } = scenario;
  if (engine.cylinder.count < 2) {
    throw new InputError('trims compares cylinders, and this engine has one');
  }
  const { carbon, hydrogen, oxygen } = fuelNamed(engine.combustion.fuel as FuelName);
  const found = readLambdaReadings(asked.read(file), file, {
    cylinders: engine.cylinder.count,
    closedAngle: engine.intake.throttle.closedAngle,
    fuel: { hydrogen: hydrogen / carbon, oxygen: oxygen / carbon },
  });
  const wanted = textOf(options, 'lambda');
  return {
    engine,
    ...found,
    ...(wanted !== undefined && { target: askedValue('--lambda', 'fuel.lambda', wanted) }),
  };
}
