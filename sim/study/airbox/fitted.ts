/** The same engine with a box over its trumpets. */
import { type AirboxSpecification, standingOf } from '../../fittings.ts';
import type { EngineSpecification } from '../../specification.ts';

export function inBox(engine: EngineSpecification, box: AirboxSpecification): EngineSpecification {
  const { intake } = engine;
  const inlet = {
    ...intake.trumpet,
    length: box.snorkelLength,
    outerDiameter: box.snorkelDiameter,
    innerDiameter: box.snorkelDiameter,
    bendLoss: 0,
  };
  const chamber = {
    volume: box.volume,
    inlet,
    inletLoss: box.filterLoss,
    ...standingOf(box),
  };
  return { ...engine, intake: { ...intake, chamber } };
}
