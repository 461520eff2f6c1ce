/** What sounds: mouths in the open, or the inlet of the box that they stand in, which is then one mouth. */
import { STATIONS, type Station } from '../../engine/trace.ts';
import type { AirboxSpecification } from '../../fittings.ts';
import type { Row } from '../../sound/monopoles.ts';
import type { EngineSpecification } from '../../specification.ts';
import { inBox } from '../airbox/fitted.ts';

export interface Source {
  /** Where its flow is read, positive into the engine. */
  station: Station;
  row: Row;
  /** Bore of the pipe behind it, and across its rim [m]. */
  bore: number;
  rim: number;
  /** An engine with its trumpets, as it breathes. */
  fed(engine: EngineSpecification): EngineSpecification;
}

/** The box is one volume here, whatever stands in it. */
export function sourceOf(
  { intake: { trumpet } }: EngineSpecification,
  row: Row,
  box: AirboxSpecification | undefined,
): Source {
  if (!box) {
    const { outerDiameter: bore, bellmouth } = trumpet;
    const rim = bore + 2 * bellmouth.overhang;
    const station = STATIONS.find(({ name }) => name === 'mouth')!;
    return { station, row, bore, rim, fed: (engine) => engine };
  }
  const { row: _row, banks: _banks, cross: _cross, ...alike } = box;
  const bore = box.snorkelDiameter;
  return {
    station: { name: 'inlet', duct: 'inlet', share: 0 },
    row: { mouths: [{ place: 0, lag: 0 }], height: row.height },
    ...{ bore, rim: bore },
    fed: (engine) => inBox(engine, alike),
  };
}

/** Share by which the mouths' air may differ from that outside and still count as open. */
const OPEN = 0.01;

/** Whether the mouths stand in the open and not in a box. */
export function mouthsInTheOpen({ intake, ambient }: EngineSpecification): boolean {
  return Math.abs(intake.feed.pressure / ambient.pressure - 1) <= OPEN;
}
