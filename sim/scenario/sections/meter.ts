/** A flow meter in the pipe that the box draws through, and what it is weighed against. */
import { ringingSpeed } from '../../decision/boxRinging.ts';
import type { Target } from '../../decision/target.ts';
import { type AirboxSpecification, leadChamber, type MeterSpecification } from '../../fittings.ts';
import type { EngineSpecification } from '../../specification.ts';
import { DRY_AIR_GAS_CONSTANT } from '../../units.ts';
import { choice, list, maybe, optional, quantity, section } from '../key.ts';
import { quantityToText } from '../quantity.ts';
import type { ScenarioView } from '../schema.ts';
import { numbers } from '../view.ts';
import { mostInOne } from './banks.ts';
import { checkOpen } from './throttle.ts';
import { anglesAbove, mostFlow, usualTaker } from './usual.ts';

const PRACTICE = 'common practice, no source';
/** Most speeds, and most angles. */
const MOST = 8;
/** Plate angles above the stop where the file gives none [deg]; wide open comes after them. */
const ABOVE_STOP = [3, 6, 12, 30];
/** Lowest speed that is looked at where the file has no lower one [rpm]. */
const LOWEST = 1000;
/** Peaks over the mean flow of full load that a meter is bought for [-]. */
const ROOM = 1.5;

export const meterSection = optional(
  section(
    'A flow meter in the snorkel of the box, to weigh against pressure and plate angle. Only that study computes with it; what is left out is taken as is usual.',
    {
      kind: choice(
        ['hot', 'difference', 'straight'],
        'What it is built on: the heat of a hot element; a difference of pressure, whose mean is read; or something that follows the flow straight. All are blind to direction.',
        { value: 'hot', why: PRACTICE },
      ),
      position: maybe('length', 'Where it stands, from the open end of the snorkel.', {
        limits: ['0 mm', '3 m'],
        absent: { rule: 'middle of the snorkel', why: PRACTICE },
      }),
      exponent: maybe('ratio', 'Power of the flow that the signal of a hot element follows.', {
        limits: ['0.1', '1'],
        usual: ['0.2', '0.6'],
        absent: {
          value: '0.5',
          why: 'heat of a wire: King, Phil. Trans. R. Soc. A 214 (1914) 373, from memory; its voltage follows half of that',
        },
      }),
      lag: maybe('time', 'Time constant of its signal.', {
        limits: ['0.1 ms', '2 s'],
        usual: ['1 ms', '200 ms'],
        absent: { value: '15 ms', why: PRACTICE },
      }),
      most: maybe(
        'massFlow',
        'Most flow that it reads; where each bank has a box, each box has such a meter.',
        {
          limits: ['1 g/s', '3 kg/s'],
          usual: ['10 g/s', '1 kg/s'],
          absent: {
            rule: 'one and a half times a filling of 1 at the highest speed, fewer than four cylinders counted as four',
            why: PRACTICE,
          },
        },
      ),
      turnDown: maybe('ratio', 'Most flow that it reads over the least.', {
        limits: ['2', '1000'],
        usual: ['5', '200'],
        absent: { value: '50', why: PRACTICE },
      }),
      flowError: maybe('ratio', 'By how much the meter may be off in a steady flow.', {
        limits: ['0', '50 %'],
        usual: ['0.5 %', '10 %'],
        example: '2 %',
        absent: { value: '2 %', why: PRACTICE },
      }),
      allowed: maybe('ratio', 'Error of the air at which a sensor still counts as right.', {
        limits: ['0.1 %', '50 %'],
        usual: ['1 %', '10 %'],
        example: '5 %',
        absent: {
          value: '5 %',
          why: '40 CFR 1065.930 asks as much of a flow sensor of production, steady',
        },
      }),
      pressureError: maybe('pressure', 'By how much the pressure sensor may be off.', {
        limits: ['1 Pa', '0.2 bar'],
        usual: ['0.1 kPa', '5 kPa'],
        example: '1 kPa',
        absent: { value: '1 kPa', why: 'one per cent of full scale; common practice, no source' },
      }),
      pressureLag: maybe('time', 'Time constant of the pressure signal.', {
        limits: ['0.1 ms', '2 s'],
        usual: ['1 ms', '200 ms'],
        absent: { value: '10 ms', why: PRACTICE },
      }),
      plateError: maybe('angle', 'By how much the plate may stand off what its sensor reads.', {
        limits: ['0.01 deg', '10 deg'],
        absent: { value: '0.2 deg', why: PRACTICE },
      }),
      climb: maybe('length', 'Height of a pass above the place of the file.', {
        limits: ['0 m', '6000 m'],
        usual: ['0 m', '3000 m'],
        example: '1500 m',
        absent: { value: '1500 m', why: PRACTICE },
      }),
      correction: choice(
        ['day', 'none'],
        "What a table of plate angles is corrected for: the day's pressure and temperature by p / sqrt(T), or nothing.",
        { value: 'day', why: PRACTICE },
      ),
      speeds: optional(
        list(
          quantity('speed', 'Engine speed to look at.', { limits: ['300 rpm', '25000 rpm'] }),
          'Speeds to look at, rising; without it 1000 rpm, the speed at which box and snorkel ring with the firing, the lowest of the file, the middle of the band and the highest.',
          { most: MOST, rising: '' },
        ),
      ),
      angles: optional(
        list(
          quantity('angle', 'Plate angle from the plane across the bore.', {
            limits: ['0 deg', '90 deg'],
          }),
          `Plate angles to look at, rising; without it ${ABOVE_STOP.join(', ')} deg above the stop, and wide open.`,
          { least: 2, most: MOST, rising: '' },
        ),
      ),
    },
  ),
);

export function checkMeter({ meter, airbox, intake }: ScenarioView): void {
  const snorkel = airbox.snorkelLength.assumed;
  if (meter.position.given! > snorkel) {
    meter.position.problem(
      'the meter stands beyond the snorkel, in the box',
      'count from the open end of the snorkel of the section airbox',
      `at most ${quantityToText(snorkel, 'length')}`,
    );
  }
  checkOpen(meter.angles.rows, intake.throttle);
}

/** The meter of the file, or one as is usual; `speeds` of the file [rpm]. */
export function resolveMeter(
  { meter }: ScenarioView,
  engine: EngineSpecification,
  airbox: AirboxSpecification,
  speeds: readonly number[],
  { from, to }: Target,
): MeterSpecification {
  const take = usualTaker(meter.here);
  const highest = speeds.at(-1)!;
  const own = numbers(meter.speeds.rows);
  const angles = numbers(meter.angles.rows);
  const stop = engine.intake.throttle.closedAngle;
  const count = mostInOne(airbox, engine.cylinder.count);
  return {
    given: meter.here.present,
    kind: take.word(meter.kind),
    position: take.rule(meter.position, () => airbox.snorkelLength / 2),
    exponent: take.value(meter.exponent),
    lag: take.value(meter.lag),
    most: take.rule(meter.most, () => ROOM * densityOf(engine) * mostFlow(engine, highest, count)),
    turnDown: take.value(meter.turnDown),
    allowed: take.value(meter.allowed),
    flowError: take.value(meter.flowError),
    pressureError: take.value(meter.pressureError),
    pressureLag: take.value(meter.pressureLag),
    plateError: take.value(meter.plateError),
    climb: take.value(meter.climb),
    correction: take.word(meter.correction),
    speeds: own.length > 0 ? own : usualSpeeds(engine, airbox, speeds, (from + to) / 2),
    angles: angles.length > 0 ? angles : anglesAbove(stop, ABOVE_STOP),
  };
}

/** Of the air before the snorkel [kg/m^3]. */
const densityOf = ({ intake: { feed } }: EngineSpecification) =>
  feed.pressure / (DRY_AIR_GAS_CONSTANT * feed.temperature);

function usualSpeeds(
  { cylinder, intake }: EngineSpecification,
  airbox: AirboxSpecification,
  speeds: readonly number[],
  middle: number,
): number[] {
  const [first, last] = [speeds[0]!, speeds.at(-1)!];
  const lowest = Math.min(LOWEST, first);
  const { volume, cylinders } = leadChamber(airbox, cylinder.count);
  const ringing = ringingSpeed({ ...airbox, volume }, cylinders, intake.feed.temperature);
  const within = ringing > lowest && ringing < last ? [Math.round(ringing / 10) * 10] : [];
  const all = [lowest, ...within, first, Math.round(middle), last];
  return [...new Set(all)].sort((a, b) => a - b);
}
