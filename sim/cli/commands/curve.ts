/** `curve FILE`: one length at every speed. */
import {
  allSettled,
  curveCsv,
  curveDocument,
  curveReport,
  curveText,
  runLengths,
} from '../../index.ts';
import { askedLength } from '../asked.ts';
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

export interface CurveOptions extends CommonOptions {
  length?: string;
}

export async function curve(
  terminal: Terminal,
  file: string,
  options: CurveOptions,
): Promise<number> {
  const scenario = openScenario(file);
  const { engine, speeds } = scenario;
  const length = askedLength(options.length, scenario);
  const folder = resultFolder(options);
  const [one] = await compute(terminal, options, speeds.length, (workers, seen) =>
    runLengths(engine, [length], speeds, workers, seen),
  );
  const result = one!;
  const stamp = stampOf(scenario);
  const document = curveDocument(result, speeds, stamp);
  print(terminal, curveText(result, scenario));
  remarkWarnings(terminal, scenario);
  writeResults(terminal, folder, {
    'curve.csv': () => curveCsv(result, speeds),
    'curve.json': () => jsonText(document),
    'curve.html': () => curveReport(result, scenario, stamp),
  });
  printJson(terminal, document);
  return allSettled([result]) ? EXIT.done : EXIT.failed;
}
