/** `sweep FILE`: every length at every speed, and the decision. */
import {
  allSettled,
  lengthStudy,
  studyCurves,
  sweepCsv,
  sweepDocument,
  sweepReport,
  sweepText,
} from '../../index.ts';
import { EXIT } from '../exit.ts';
import { openScenario } from '../files.ts';
import { jsonText, print, printJson, type Terminal } from '../terminal.ts';
import {
  type CommonOptions,
  compute,
  remarkWarnings,
  resultFolder,
  stampOf,
  writeResults,
} from './common.ts';

export async function sweep(
  terminal: Terminal,
  file: string,
  options: CommonOptions,
): Promise<number> {
  const scenario = openScenario(file);
  const folder = resultFolder(options);
  const { engine, speeds, target } = scenario;
  const { lengths } = scenario.sweep;
  const study = await compute(terminal, options, lengths.length * speeds.length, (workers, seen) =>
    lengthStudy({ engine, lengths, speeds, target }, workers, seen),
  );
  const stamp = stampOf(scenario);
  const document = sweepDocument(study, stamp);
  print(terminal, sweepText(study, scenario));
  remarkWarnings(terminal, scenario);
  writeResults(terminal, folder, {
    'sweep.csv': () => sweepCsv(study),
    'sweep.json': () => jsonText(document),
    'report.html': () => sweepReport(study, scenario, stamp),
  });
  printJson(terminal, document);
  return allSettled(studyCurves(study)) ? EXIT.done : EXIT.failed;
}
