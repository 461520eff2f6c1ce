/**
 * Whether individual bodies pay on this engine, from the studies that each answer a part: length, plenum, response, which
 * sensor to trust, one plate that is off, idle air, pedal, and what the defaults of the file move. Nothing is computed here.
 */
import type { TradeOff } from '../../decision/tradeOff.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import { type SweepObserver, withLength } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import { type SpreadStudy, spreadStudy } from '../balance/spread.ts';
import { type Effect, effectQuestion, effectsOf } from '../check/effects.ts';
import { type JoinedIdle, joinedIdleOf } from '../idle/joined.ts';
import { type LengthStudy, lengthStudy } from '../length/compute.ts';
import { meterQuestion } from '../meter/ask.ts';
import { type MeterStudy, meterOutcomes, meterStudyOf } from '../meter/compute.ts';
import { type PedalStudy, pedalStudyOf } from '../pedal/compute.ts';
import { type PlenumStudy, plenumOutcomes, plenumStudyOf } from '../plenum/compute.ts';
import { usualResponse } from '../response/ask.ts';
import { type ResponseStudy, responseOutcomes, responseStudyOf } from '../response/compute.ts';
import type { Asked } from '../study.ts';
import { weighedAgainst } from '../weigh.ts';

/** How far plates are opened. */
export type Opening = 'little' | 'wide';

/** A little: from where response begins, so many degrees on; common practice, no source. */
const LITTLE = 3;

export interface WorthStudy {
  length: LengthStudy;
  /** Bodies on the trumpets recommended beside a plenum. */
  plenum: PlenumStudy;
  /** Bodies on the trumpets fitted now against that plenum. */
  fitted: TradeOff;
  /** Plates opened at the lowest speed, a little and wide: bodies on those trumpets and the plenum. */
  response: Record<Opening, ResponseStudy>;
  /** Flow meter, pressure and plate angle, on those trumpets in a box. */
  meter: MeterStudy;
  /** One plate that is off; absent for one cylinder. */
  plates?: SpreadStudy;
  /** Absent where the file has no section of it. */
  idle?: JoinedIdle;
  pedal?: PedalStudy;
  /** Defaults of the file by what they move, most first. */
  effects: Effect[];
}

export async function worthStudyOf(
  asked: Pick<Asked, 'text' | 'file' | 'scenario'>,
  computer: Computer,
  observer: SweepObserver = {},
): Promise<WorthStudy> {
  const { scenario } = asked;
  const { engine, speeds, target, refine, pressureBar: bar } = scenario;
  const length = await lengthStudy(lengthQuestion(scenario), computer, observer);
  const best = withLength(engine, length.recommended.length);
  const { plenum: spec, lengthUnit } = scenario;
  const question = { engine: best, plenum: spec, speeds, target, refine, lengthUnit };
  const opened = openings({ ...scenario, engine: best });
  const [plenum, little, wide, meter, plates, effects] = await Promise.all([
    plenumStudyOf(question, computer, observer),
    responseStudyOf(opened.little, computer, observer),
    responseStudyOf(opened.wide, computer, observer),
    meterStudyOf(meterQuestion(scenario, length.recommended.length), computer, observer),
    engine.cylinder.count > 1
      ? spreadStudy({ ...scenario, engine: best }, computer, observer)
      : undefined,
    effectsOf(effectQuestion(asked), computer, observer),
  ]);
  const idle = scenario.idle && { engine: best, spec: scenario.idle, ...(bar && { bar }) };
  return {
    ...{ length, plenum, meter, effects, response: { little, wide } },
    fitted: weighedAgainst({ speeds, target }, length.baseline, plenum.onPlenum),
    ...(plates && { plates }),
    ...(idle && { idle: await joinedIdleOf(idle, computer) }),
    ...(scenario.pedal && { pedal: pedalStudyOf(scenario.pedal) }),
  };
}

/** As `sweep` asks it, without what is bought and sprayed. */
function lengthQuestion({ engine, speeds, refine, target, fit, lengthUnit, sweep }: Scenario) {
  const { lengths } = sweep;
  return { engine, lengths, speeds, refine, unit: lengthUnit, target, ...(fit && { fit }) };
}

function openings(scenario: Scenario) {
  const { injectors: _dry, ...usual } = usualResponse(scenario, scenario.speeds[0]!);
  const wide = { ...usual, ways: ['bodies', 'plenum'] as const };
  return { wide, little: { ...wide, to: wide.from + LITTLE } };
}

/** Every point that the page rests on but those that rank the defaults. */
export function worthOutcomes({
  length,
  plenum,
  response,
  meter,
  plates,
}: WorthStudy): PointOutcome[] {
  const curves = [...length.tried, length.baseline, length.recommended];
  return [
    ...curves.flatMap(({ outcomes, between = [] }) => [...outcomes, ...between]),
    ...plenumOutcomes(plenum),
    ...Object.values(response).flatMap(responseOutcomes),
    ...meterOutcomes(meter),
    ...(plates?.loads.flatMap(({ outcomes }) => outcomes) ?? []),
  ];
}

export const worthSound = (study: WorthStudy): boolean =>
  worthOutcomes(study).every((one) => !isFailure(one) && one.settled);
