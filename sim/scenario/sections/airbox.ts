/** A box over the trumpets. */
import { sweptVolume } from '../../cylinder/crank.ts';
import type { AirboxSpecification } from '../../fittings.ts';
import type { Row } from '../../sound/monopoles.ts';
import type { EngineSpecification } from '../../specification.ts';
import { maybe, optional, section } from '../key.ts';
import type { ScenarioView } from '../schema.ts';
import { chamberKeys, chambersOf, mostInOne } from './banks.ts';
import { boreFor, inletAt, mostFlow, rowAlong, usualTaker } from './usual.ts';

/** Volume over the swept volume [-], and mean air speed in the snorkel at the highest speed [m/s]. */
const BOX_SHARE = 4;
const SNORKEL_SPEED = 30;
const PRACTICE = 'common practice, no source';

export const airboxSection = optional(
  section(
    'A box over the trumpets, to see what it changes. Only that study computes with it; what is left out is taken as is usual.',
    {
      volume: maybe('volume', 'Volume of the box, trumpets not counted.', {
        limits: ['100 cm3', '200 L'],
        usual: ['1 L', '40 L'],
        absent: { rule: '4 of the swept volume', why: PRACTICE },
      }),
      ...chamberKeys(),
      inletAt: inletAt(),
      snorkelLength: maybe('length', 'Pipe that the box draws through.', {
        limits: ['20 mm', '3 m'],
        usual: ['50 mm', '1.5 m'],
        absent: { value: '300 mm', why: PRACTICE },
      }),
      snorkelDiameter: maybe('length', 'Bore of that pipe.', {
        limits: ['15 mm', '400 mm'],
        usual: ['40 mm', '200 mm'],
        absent: {
          rule: '30 m/s of mean air at the highest speed, fewer than four cylinders counted as four',
          why: PRACTICE,
        },
      }),
      filterLoss: maybe(
        'ratio',
        'Loss of snorkel mouth and filter, in dynamic heads of the snorkel.',
        {
          limits: ['0', '50'],
          usual: ['0.2', '10'],
          absent: { value: '2', why: PRACTICE },
        },
      ),
    },
  ),
);

/** The box of the file, or one as is usual; `highest` engine speed [rpm]. */
export function resolveAirbox(
  { airbox }: ScenarioView,
  engine: EngineSpecification,
  highest: number,
  mouths: Row,
): AirboxSpecification {
  const { cylinder } = engine;
  const take = usualTaker(airbox.here);
  const swept = cylinder.count * sweptVolume(cylinder);
  const chambers = chambersOf(airbox, mouths, take);
  const flow = mostFlow(engine, highest, mostInOne(chambers, cylinder.count));
  return {
    given: airbox.here.present,
    volume: take.rule(airbox.volume, () => BOX_SHARE * swept),
    ...chambers,
    ...rowAlong(mouths, take.word(airbox.inletAt)),
    snorkelLength: take.value(airbox.snorkelLength),
    snorkelDiameter: take.rule(airbox.snorkelDiameter, () => boreFor(flow, SNORKEL_SPEED)),
    filterLoss: take.value(airbox.filterLoss),
  };
}
