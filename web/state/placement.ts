/** The injector question, worked out when asked. */
import { type PlacementStudy, placementStudy } from '../../sim/index.ts';
import { askedStudy, resultOf } from './asked.ts';
import type { Picture } from './picture.ts';

export const placement = askedStudy<PlacementStudy>(({ scenario }, runner, seen) => {
  const { engine, injectors, speeds } = scenario;
  return placementStudy({ engine, injectors: injectors!, speeds }, runner, seen);
});

/** Whether the scenario has two injectors to compare. */
export function hasPlacement({ scenario }: Picture): boolean {
  return (scenario.injectors?.list.length ?? 0) >= 2;
}

/** The study, where it has been worked out for the scenario on show. */
export const placed = (): PlacementStudy | undefined => resultOf(placement);

/** For the views that stand only beside a finished study. */
export const isPlaced = (picture: Picture): boolean =>
  hasPlacement(picture) && placed() !== undefined;
