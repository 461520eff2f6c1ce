/** `compare FILE --measured RUN`: a run off the dyno beside the prediction. */
import {
  changedText,
  compareCsv,
  compareDocument,
  compareReport,
  compareText,
  isRefusal,
  type MeasuredStudy,
  measuredStudy,
  readMeasuredRun,
  UNKNOWN_NAMES,
  type UnknownName,
} from '../../index.ts';
import { askedLength } from '../asked.ts';
import { askedNoise, askedUnknowns } from '../askedMeasured.ts';
import { ComputationError, EXIT, InputError } from '../exit.ts';
import { openSource, type Source, textOf, writeFile } from '../files.ts';
import { jsonText, print, printJson, type Terminal } from '../terminal.ts';
import {
  type CommonOptions,
  compute,
  remarkWarnings,
  resultFolder,
  stampOf,
  writeResults,
} from './common.ts';

export interface CompareOptions extends CommonOptions {
  measured?: string;
  length?: string;
  fit?: string;
  noise?: string;
  write?: string;
}

export async function compare(
  terminal: Terminal,
  file: string,
  options: CompareOptions,
): Promise<number> {
  const source = openSource(file);
  const { scenario, text } = source;
  const fit = askedUnknowns(options.fit);
  checkOptions(options, fit, file);
  const run = readMeasuredRun(textOf(options.measured!), options.measured!);
  const length = askedLength(options.length, scenario);
  const noise = askedNoise(options.noise);
  const folder = resultFolder(options);
  const question = { text, name: file, run, length, fit, ...(noise !== undefined && { noise }) };
  const study = await compute(terminal, options, scenario.speeds.length, (workers, seen) =>
    measuredStudy(question, workers, seen),
  );
  if ('problem' in study) throw new ComputationError(study.problem);
  const stamp = stampOf(scenario);
  const document = compareDocument(study, stamp);
  print(terminal, compareText(study, scenario));
  remarkWarnings(terminal, scenario);
  writeResults(terminal, folder, {
    'compare.csv': () => compareCsv(study),
    'compare.json': () => jsonText(document),
    'compare.html': () => compareReport(study, scenario, stamp),
  });
  if (options.write !== undefined) writeCalibrated(terminal, source, study, options.write);
  printJson(terminal, document);
  const refused = study.calibration && isRefusal(study.calibration);
  return refused || study.leftOut.length > 0 ? EXIT.failed : EXIT.done;
}

function checkOptions(options: CompareOptions, fit: readonly UnknownName[], file: string): void {
  if (options.measured === undefined) {
    throw new InputError('--measured is missing: name the CSV of the run');
  }
  if (options.write === undefined) return;
  if (fit.length === 0) {
    throw new InputError(`--write needs --fit: ${UNKNOWN_NAMES.join(', ')}`);
  }
  if (options.write === file) {
    throw new InputError('--write: name another file, so that the scenario itself stays as it is');
  }
}

/** A copy of the scenario with the values found; none where they were refused. */
function writeCalibrated(
  terminal: Terminal,
  { text, file }: Source,
  { calibration, unknowns }: MeasuredStudy,
  path: string,
): void {
  if (!calibration || isRefusal(calibration)) return;
  const changes = calibration.unknowns.flatMap(({ value }, k) => unknowns[k]!.changes(value));
  writeFile(path, changedText(text, file, changes));
  print(terminal, [`Written: ${path}, the scenario with these values`]);
}
