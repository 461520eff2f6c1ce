/**
 * Ways of idle air in the solver's own network, all cylinders solved, warm and cold, without the load and with it:
 * each set by closed formulas, and anew until the engine draws what it wants, or there is no more. Then each as far
 * open as it goes, the valve of the pressure bar at other frequencies, and the spark at its best and late.
 */
import type { PointOutcome } from '../../sweep/runner.ts';
import type { SweepObserver } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import { bestOf, contextOf, type IdleStudy, idleStudyOf } from './compute.ts';
import { computedWay } from './computedWay.ts';
import { moving, onBleeds, onPlates, type StateWay } from './moves.ts';
import type { IdleQuestion } from './need.ts';
import { Runs } from './runs.ts';
import { timesOf } from './settings.ts';
import type { LateSpark } from './spark.ts';
import type { WayName } from './ways.ts';

export interface JoinedIdle extends IdleStudy {
  joined: StateWay[];
  sparks: LateSpark[];
  /** How often the valve is driven there [Hz], and where plates are shut [deg]. */
  pulsed: number;
  stop: number;
  outcomes: PointOutcome[];
}

export async function joinedIdleOf(
  question: IdleQuestion,
  computer: Computer,
  observer: SweepObserver = {},
): Promise<JoinedIdle> {
  const study = idleStudyOf(question);
  const context = contextOf(question);
  const runs = new Runs(context, computer, observer);
  const valves = study.ways.flatMap(({ name, duty }) => (duty ? [name] : []));
  const [plates, bleeds, ...driven] = await Promise.all([
    onPlates(runs, context),
    onBleeds(runs),
    ...valves.map((name) => moving(name, runs, context)),
  ]);
  const joined = [...plates.ajar, ...bleeds, ...plates.driven, ...driven.flat()];
  const named = study.ways.flatMap(({ name }) => joined.filter((one) => one.name === name));
  const frequencies = await atFrequencies(study, named, runs);
  const ways = study.ways.map((way) => computedWay(way, named, context));
  const best = bestOf(ways, question.bar);
  const { best: _, ...rest } = study;
  return {
    ...rest,
    mean: plates.ajar[0]?.mean ?? study.mean,
    ways,
    ...(best && { best }),
    frequencies,
    joined: named,
    sparks: plates.sparks,
    pulsed: (timesOf(context) * question.spec.speed) / 120,
    stop: question.engine.intake.throttle.closedAngle,
    outcomes: runs.outcomes,
  };
}

/** The valve into the pressure bar at every frequency, as it is set for the warm engine. */
async function atFrequencies(
  { frequencies }: IdleStudy,
  joined: readonly StateWay[],
  runs: Runs,
): Promise<IdleStudy['frequencies']> {
  const warm = (name: WayName) => joined.find((one) => one.name === name && one.state === 'warm');
  const [shared, quiet] = [warm('shared'), warm('ajar')?.signal];
  if (!shared?.setting.valve || !quiet) return frequencies;
  const { setting } = shared;
  const { open } = shared.setting.valve;
  runs.expect(frequencies.length);
  return Promise.all(
    frequencies.map(async (row) => {
      const found = await runs.run({ ...setting, valve: { open, times: row.times } }, 'warm');
      return { ...row, ...(found?.signal && { sensor: found.signal.ripple - quiet.ripple }) };
    }),
  );
}
