/**
 * `sweep FILE` and `merge FILE`: every length, or every value of other keys, at every speed, and the
 * decision. Finished points go at once into the store of the result folder.
 */
import {
  type Axis,
  allSettled,
  type Doubt,
  doubtSample,
  type LengthQuestion,
  type LengthStudy,
  lengthStudy,
  lengthsToRun,
  type PointRunner,
  runPoints,
  type Scenario,
  type Shard,
  type SweepObserver,
  shardPoints,
  studyCurves,
  sweepCsv,
  sweepDocument,
  sweepReport,
  sweepText,
  tablePoints,
  type Uncertainty,
  uncertaintyCsv,
  uncertaintyStudy,
  uncertaintyText,
  unfinished,
  variantCsv,
  variantDocument,
  variantEngines,
  variantReport,
  variantStudy,
  variantText,
  withLength,
} from '../../index.ts';
import { askedShard, askedUncertainty, askedVary } from '../asked.ts';
import { EXIT, InputError } from '../exit.ts';
import { openSource, type Source } from '../files.ts';
import { openPointStore, type PointStore } from '../pointStore.ts';
import { jsonText, print, printJson, remark, type Terminal } from '../terminal.ts';
import {
  type CommonOptions,
  compute,
  remarkWarnings,
  resultFolder,
  stampOf,
  writeResults,
} from './common.ts';

export interface SweepOptions extends CommonOptions {
  vary?: string[];
  uncertainty?: boolean;
  samples?: string;
  seed?: string;
  resume?: boolean;
  shard?: string;
}

/** What is to be computed, and what comes of it. */
interface Job {
  source: Source;
  axes: readonly Axis[];
  uncertainty?: Uncertainty;
  /** The engines of the table, every one at every speed. */
  engines: Scenario['engine'][];
}

export async function sweep(
  terminal: Terminal,
  file: string,
  options: SweepOptions,
): Promise<number> {
  const job = jobOf(file, options);
  const shard = askedShard(options.shard);
  const store = storeOf(options, options.resume === true, shard);
  return withStore(store, async () => {
    if (shard) return runShard(terminal, job, shard, store!, options);
    return decide(terminal, job, store, options);
  });
}

/** The decision from what shards have computed. */
export async function merge(
  terminal: Terminal,
  file: string,
  options: SweepOptions,
): Promise<number> {
  if (options.out === undefined)
    throw new InputError('merge needs --out: the folder of the shards');
  const job = jobOf(file, options);
  const store = storeOf(options, true)!;
  return withStore(store, async () => {
    const points = tablePoints(job.engines, job.source.scenario.speeds);
    const missing = unfinished(points, store.finished).length;
    if (missing > 0) {
      throw new InputError(
        `${missing} of ${points.length} points are not in ${options.out}; run the shards that are ` +
          'missing, or sweep with --resume to compute them here',
      );
    }
    return decide(terminal, job, store, options);
  });
}

function jobOf(file: string, options: SweepOptions): Job {
  const source = openSource(file);
  const { scenario, text } = source;
  const axes = askedVary(options.vary) ?? scenario.sweep.vary ?? [];
  const uncertainty = askedUncertainty(options, scenario);
  if (axes.length > 0 && options.uncertainty) {
    throw new InputError('--uncertainty belongs to a sweep of lengths; leave --vary away');
  }
  const engines =
    axes.length > 0
      ? [...variantEngines(text, file, axes), scenario.engine]
      : lengthsToRun(questionOf(scenario)).map((length) => withLength(scenario.engine, length));
  return { source, axes, engines, ...(uncertainty && { uncertainty }) };
}

function questionOf({ engine, sweep: { lengths }, speeds, target, fit }: Scenario): LengthQuestion {
  return { engine, lengths, speeds, target, ...(fit && { fit }) };
}

/** The store of the result folder; none where results go to stdout alone. */
function storeOf(options: SweepOptions, keep: boolean, shard?: Shard): PointStore | undefined {
  const folder = resultFolder(options);
  if (folder) return openPointStore(folder.path, keep, shard);
  if (options.resume || shard) {
    throw new InputError('--resume and --shard need --out: the folder that holds finished points');
  }
  return undefined;
}

async function withStore(
  store: PointStore | undefined,
  work: () => Promise<number>,
): Promise<number> {
  try {
    return await work();
  } finally {
    store?.close();
  }
}

async function runShard(
  terminal: Terminal,
  { engines, source }: Job,
  shard: Shard,
  store: PointStore,
  options: SweepOptions,
): Promise<number> {
  const points = shardPoints(tablePoints(engines, source.scenario.speeds), shard);
  const open = unfinished(points, store.finished);
  if (open.length > 0) {
    await compute(terminal, options, open.length, (workers, seen) =>
      runPoints(open, store.over(workers), seen),
    );
  }
  const done = `Shard ${shard.index} of ${shard.count}: ${points.length} points are in the store.`;
  print(terminal, [`${done} When all are done: trumpetry merge`]);
  printJson(terminal, { shard: shard.index, of: shard.count, points: points.length });
  return EXIT.done;
}

function decide(
  terminal: Terminal,
  job: Job,
  store: PointStore | undefined,
  options: SweepOptions,
): Promise<number> {
  const over = (runner: PointRunner) => store?.over(runner) ?? runner;
  return job.axes.length > 0
    ? decideVariants(terminal, job, over, options)
    : decideLengths(terminal, job, over, options);
}

async function decideLengths(
  terminal: Terminal,
  job: Job,
  over: (runner: PointRunner) => PointRunner,
  options: SweepOptions,
): Promise<number> {
  const { scenario } = job.source;
  const folder = resultFolder(options);
  const { study, doubt } = await compute(terminal, options, pointsOf(job), (workers, seen) =>
    studyLengths(job, over(workers), seen),
  );
  const stamp = stampOf(scenario);
  const document = sweepDocument(study, stamp, doubt);
  print(terminal, [...sweepText(study, scenario), ...(doubt ? uncertaintyText(doubt) : [])]);
  remarkWarnings(terminal, scenario);
  writeResults(terminal, folder, {
    'sweep.csv': () => sweepCsv(study),
    'sweep.json': () => jsonText(document),
    'report.html': () => sweepReport(study, scenario, stamp, doubt),
    ...(doubt && { 'uncertainty.csv': () => uncertaintyCsv(doubt.study) }),
  });
  printJson(terminal, document);
  return allSettled(studyCurves(study)) ? EXIT.done : EXIT.failed;
}

async function studyLengths(
  { source, uncertainty }: Job,
  runner: PointRunner,
  seen: SweepObserver,
): Promise<{ study: LengthStudy; doubt?: Doubt }> {
  const { scenario, text, file } = source;
  const study = await lengthStudy(questionOf(scenario), runner, seen);
  if (!uncertainty) return { study };
  const { inputs, samples, seed } = doubtSample(text, file, uncertainty);
  const question = {
    inputs: inputs.map(({ path }) => path),
    samples,
    recommended: study.recommended.length,
    baseline: study.baseline.length,
    speeds: scenario.speeds,
    target: scenario.target,
  };
  return {
    study,
    doubt: { study: await uncertaintyStudy(question, runner, seen), inputs, seed },
  };
}

async function decideVariants(
  terminal: Terminal,
  job: Job,
  over: (runner: PointRunner) => PointRunner,
  options: SweepOptions,
): Promise<number> {
  const { source, axes, engines } = job;
  const { scenario } = source;
  const { engine: baseline, speeds, target } = scenario;
  const folder = resultFolder(options);
  const question = { baseline, keys: axes, engines: engines.slice(0, -1), speeds, target };
  const study = await compute(terminal, options, pointsOf(job), (workers, seen) =>
    variantStudy(question, over(workers), seen),
  );
  const document = variantDocument(study, stampOf(scenario));
  print(terminal, variantText(study, scenario));
  remarkWarnings(terminal, scenario);
  if (scenario.uncertainty)
    remark(terminal, 'The doubt is carried through in sweeps of lengths only.');
  writeResults(terminal, folder, {
    'variants.csv': () => variantCsv(study),
    'variants.json': () => jsonText(document),
    'report.html': () => variantReport(study, scenario, stampOf(scenario)),
  });
  printJson(terminal, document);
  const curves = [...study.weighed.map(({ outcomes }) => outcomes), study.baseline];
  return allSettled(curves.map((outcomes) => ({ length: 0, outcomes }))) ? EXIT.done : EXIT.failed;
}

function pointsOf({ engines, source }: Job): number {
  return engines.length * source.scenario.speeds.length;
}
