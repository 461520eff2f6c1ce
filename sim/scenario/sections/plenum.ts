/** One throttle and a plenum, as the engine had or could have in place of individual bodies. */
import { sweptVolume } from '../../cylinder/crank.ts';
import type { PlenumSpecification } from '../../fittings.ts';
import { throttleOf } from '../../loss/throttles.ts';
import type { Row } from '../../sound/monopoles.ts';
import type { EngineSpecification, ThrottleSpecification } from '../../specification.ts';
import { maybe, optional, section } from '../key.ts';
import { quantityToText } from '../quantity.ts';
import type { ScenarioView } from '../schema.ts';
import { chamberKeys, chambersOf, mostInOne } from './banks.ts';
import { LEAST_STRAIGHT } from './trumpet.ts';
import { boreFor, inletAt, mostFlow, rowAlong, usualTaker } from './usual.ts';

/** Volume over the swept volume [-], and mean air speed in the plate's bore at the highest speed [m/s]. */
const PLENUM_SHARE = 1.5;
const PLATE_SPEED = 45;
const PRACTICE = 'common practice, no source';

export const plenumSection = optional(
  section(
    'One throttle and a plenum, to weigh individual bodies against. Only that study computes with it; what is left out is taken as is usual.',
    {
      volume: maybe('volume', 'Volume of the plenum, runners and inlet not counted.', {
        limits: ['100 cm3', '60 L'],
        usual: ['600 cm3', '12 L'],
        absent: { rule: '1.5 of the swept volume', why: PRACTICE },
      }),
      ...chamberKeys(),
      inletAt: inletAt(),
      plateBore: maybe('length', 'Bore of the one throttle.', {
        limits: ['15 mm', '200 mm'],
        usual: ['30 mm', '110 mm'],
        absent: {
          rule: '45 m/s of mean air at the highest speed, fewer than four cylinders counted as four; at most the area of all bodies',
          why: PRACTICE,
        },
      }),
      runnerLength: maybe('length', 'From the rim in the plenum to the face of the head.', {
        limits: ['60 mm', '1.5 m'],
        usual: ['100 mm', '700 mm'],
        absent: { value: '330 mm', why: PRACTICE },
      }),
      runnerDiameter: maybe('length', 'Bore of the runners.', {
        limits: ['10 mm', '120 mm'],
        usual: ['25 mm', '60 mm'],
        absent: { rule: 'as the port at its air end', why: PRACTICE },
      }),
      mouthRadius: maybe('length', 'Radius of the lip of each runner in the plenum.', {
        limits: ['1 mm', '40 mm'],
        absent: { value: '8 mm', why: PRACTICE },
      }),
      runnerTemperature: maybe('temperature', 'Temperature of the walls of the runners.', {
        limits: ['-20 degC', '200 degC'],
        usual: ['10 degC', '110 degC'],
        absent: { value: '60 degC', why: 'cast on a warm head; common practice, no source' },
      }),
      inletLength: maybe('length', 'Pipe from the air to the throttle.', {
        limits: ['20 mm', '3 m'],
        absent: { value: '400 mm', why: PRACTICE },
      }),
      inletDiameter: maybe('length', 'Bore of that pipe.', {
        limits: ['15 mm', '250 mm'],
        absent: { rule: 'bore of the throttle', why: PRACTICE },
      }),
      inletLoss: maybe('ratio', 'Loss of its mouth and filter, in dynamic heads of it.', {
        limits: ['0', '20'],
        usual: ['0.2', '6'],
        absent: { value: '1.5', why: PRACTICE },
      }),
    },
  ),
);

export function checkPlenum({ plenum }: ScenarioView): void {
  const { runnerLength, mouthRadius } = plenum;
  const least = 2 * (mouthRadius.assumed + LEAST_STRAIGHT);
  if (runnerLength.assumed >= least) return;
  runnerLength.problem(
    'the runner is hardly longer than its lip',
    'count from the rim in the plenum to the face of the head, or make the lip smaller',
    `at least ${quantityToText(least, 'length')}`,
  );
}

/** Shaft over bore of the one plate [-], angle at which it seals [deg]; common practice, no source. */
const PLATE = { shaft: 0.18, closedAngle: 7 };

/** The one throttle body, wide open: half a bore before the plate and a whole one behind it. */
function bodyOf(bore: number): ThrottleSpecification {
  return {
    bore,
    length: 1.5 * bore,
    shaftPosition: 0.5 * bore,
    shaftDiameter: PLATE.shaft * bore,
    closedAngle: PLATE.closedAngle,
    angle: 90,
    rimGap: 0,
    openLoss: throttleOf({}).openLoss(PLATE.shaft),
  };
}

/** The plenum of the file, or one as is usual; `highest` engine speed [rpm]. */
export function resolvePlenum(
  { plenum }: ScenarioView,
  engine: EngineSpecification,
  highest: number,
  mouths: Row,
): PlenumSpecification {
  const { cylinder, intake } = engine;
  const take = usualTaker(plenum.here);
  const swept = cylinder.count * sweptVolume(cylinder);
  const chambers = chambersOf(plenum, mouths, take);
  const fed = mostInOne(chambers, cylinder.count);
  const allBodies = intake.throttle.bore * Math.sqrt(fed);
  const plateBore = take.rule(plenum.plateBore, () =>
    Math.min(boreFor(mostFlow(engine, highest, fed), PLATE_SPEED), allBodies),
  );
  return {
    given: plenum.here.present,
    volume: take.rule(plenum.volume, () => PLENUM_SHARE * swept),
    ...chambers,
    ...rowAlong(mouths, take.word(plenum.inletAt)),
    throttle: bodyOf(plateBore),
    runnerLength: take.value(plenum.runnerLength),
    runnerDiameter: take.rule(plenum.runnerDiameter, () => intake.port.outerDiameter),
    mouthRadius: take.value(plenum.mouthRadius),
    runnerTemperature: take.value(plenum.runnerTemperature),
    inletLength: take.value(plenum.inletLength),
    inletDiameter: take.rule(plenum.inletDiameter, () => plateBore),
    inletLoss: take.value(plenum.inletLoss),
  };
}
