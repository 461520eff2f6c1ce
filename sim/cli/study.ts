/** Runs a study of the registry: question, workers, store of points, result in every form. */
import { basename, join, parse } from 'node:path';
import {
  type Computer,
  type Findings,
  InputError,
  type Job,
  type OptionValues,
  runPoints,
  type Scenario,
  type Shard,
  type Study,
  type SweepObserver,
  shardPoints,
  unfinished,
} from '../index.ts';
import { askedShard, askedWorkers, type CommonOptions } from './asked.ts';
import { EXIT } from './exit.ts';
import { type Folder, LARGEST_TABLE, nameOf, openFolder, openSource, textOf } from './files.ts';
import { openPointStore, type PointStore, type StoreUse } from './pointStore.ts';
import { progressOn, SILENT } from './progress.ts';
import { present } from './result.ts';
import { print, printJson, remark, type Terminal } from './terminal.ts';
import { withWorkers } from './workers.ts';

export type Options = CommonOptions & OptionValues;

/** A study on a scenario file; gives the exit code. */
export async function runStudy(
  terminal: Terminal,
  study: Study,
  file: string,
  options: Options,
): Promise<number> {
  const { scenario, job } = opened(study, file, options);
  const shard = askedShard(options.shard);
  const folder = study.reads ? undefined : resultFolder(file, options);
  const keep = options.resume === true;
  if (!folder && (keep || shard)) {
    throw new InputError('--resume and --shard need --out: the folder that holds finished points');
  }
  const stored = isStored(study, options);
  if (!stored && (keep || shard))
    throw new InputError(`--resume and --shard of ${study.name} go with --${study.mergedBy}`);
  const owner = { file: basename(nameOf(file)), title: scenario.title };
  const store = folder && stored ? storeOf(terminal, folder, { keep, owner, shard }) : undefined;
  return closing(store, async () => {
    if (shard) return runShard(terminal, job, shard, store!, options);
    return conclude(terminal, scenario, job, store, folder, options);
  });
}

/** Whether points are kept: of a study that an option makes big, only with it. */
function isStored({ stored = false, mergedBy }: Study, options: Options): boolean {
  return stored && (mergedBy === undefined || options[mergedBy] !== undefined);
}

/** The decision of a study from what shards have computed. */
export async function merge(
  terminal: Terminal,
  study: Study,
  file: string,
  options: Options,
): Promise<number> {
  if (options.out === undefined)
    throw new InputError('merge needs --out: the folder of the shards');
  const { scenario, job } = opened(study, file, options);
  const folder = openFolder(options.out);
  const owner = { file: basename(nameOf(file)), title: scenario.title };
  const store = storeOf(terminal, folder, { keep: true, owner });
  return closing(store, async () => {
    // What is asked for once only is not looked for twice: engines of big tables are made anew each time.
    if (job.closed)
      return conclude(terminal, scenario, { ...job, width: 0 }, store, folder, options);
    const points = job.table ?? [];
    const missing = unfinished(points, store.finished).length;
    if (missing > 0) throw notThere(`${missing} of ${points.length} points are`, options.out!);
    return conclude(terminal, scenario, job, store, folder, options);
  });
}

/** The scenario of a file and the job that a study makes of it. */
export function opened(
  study: Study,
  file: string,
  options: Options,
): { scenario: Scenario; job: Job } {
  const source = openSource(file);
  return {
    scenario: source.scenario,
    job: study.open({ ...source, options, read: (path) => textOf(path, LARGEST_TABLE) }),
  };
}

/** The folder for results: as asked, or one for each scenario; with JSON on stdout none unless asked. */
function resultFolder(file: string, { out, json }: CommonOptions): Folder | undefined {
  if (out === undefined && json) return undefined;
  return openFolder(out ?? join('out', parse(nameOf(file)).name));
}

/** The store of the result folder, and what there is to say of it. */
function storeOf(terminal: Terminal, folder: Folder, use: StoreUse): PointStore {
  const store = openPointStore(folder.path, use);
  for (const line of store.remarks) remark(terminal, line);
  return store;
}

async function closing<T>(store: PointStore | undefined, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } finally {
    store?.close();
  }
}

async function runShard(
  terminal: Terminal,
  { table = [] }: Job,
  shard: Shard,
  store: PointStore,
  options: Options,
): Promise<number> {
  const points = shardPoints(table, shard);
  const open = unfinished(points, store.finished);
  if (open.length > 0) {
    await compute(terminal, options, open.length, (computer, seen) =>
      runPoints(open, store.over(computer), seen),
    );
  }
  const done = `Shard ${shard.index} of ${shard.count}: ${points.length} points are in the store.`;
  print(terminal, [`${done} When all are done: trumpetry merge`]);
  printJson(terminal, { shard: shard.index, of: shard.count, points: points.length });
  return EXIT.done;
}

async function conclude(
  terminal: Terminal,
  scenario: Scenario,
  job: Job,
  store: PointStore | undefined,
  folder: Folder | undefined,
  options: Options,
): Promise<number> {
  const findings = await compute<Findings>(terminal, options, job.width, (computer, seen) =>
    job.run(store ? { ...computer, ...store.over(computer) } : computer, seen),
  );
  present(terminal, scenario, findings, folder);
  return findings.sound ? EXIT.done : EXIT.failed;
}

/** Computes at most `width` points at a time, with progress; returns what `work` returns. */
async function compute<T>(
  terminal: Terminal,
  options: CommonOptions,
  width: number,
  work: (computer: Computer, observer: SweepObserver) => Promise<T>,
): Promise<T> {
  const count = Math.min(askedWorkers(options.workers), width);
  const progress = terminal.quiet ? SILENT : progressOn(terminal.err);
  try {
    if (width === 0) return await work(nobody(options.out), progress);
    if (terminal.workers) return await work(terminal.workers, progress);
    return await withWorkers(count, (workers) => work(workers, progress));
  } finally {
    progress.stop();
  }
}

/** For studies that compute no point, and for conclusions from a folder that should hold all. */
function nobody(folder = ''): Computer {
  const refuse = () => {
    throw notThere('points are', folder);
  };
  return { run: refuse, task: refuse, atOnce: 1 };
}

function notThere(what: string, folder: string): InputError {
  return new InputError(
    `${what} not in ${folder}; run the shards that are missing, or all of it with --resume to ` +
      'compute them here; status says which',
  );
}
