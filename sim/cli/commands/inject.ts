/** `inject FILE`: injectors near the valve, above the trumpet, or both. */
import {
  placementCsv,
  placementDocument,
  placementReport,
  placementSettled,
  placementStudy,
  placementText,
} from '../../index.ts';
import { EXIT, InputError } from '../exit.ts';
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

export async function inject(
  terminal: Terminal,
  file: string,
  options: CommonOptions,
): Promise<number> {
  const scenario = openScenario(file);
  const { engine, injectors, speeds } = scenario;
  if (!injectors || injectors.list.length < 2) {
    throw new InputError(
      `${file}: placement needs two injectors a cylinder; add a section injectors with two rows under each`,
    );
  }
  const folder = resultFolder(options);
  const study = await compute(terminal, options, speeds.length, (workers, seen) =>
    placementStudy({ engine, injectors, speeds }, workers, seen),
  );
  const stamp = stampOf(scenario);
  const document = placementDocument(study, stamp);
  print(terminal, placementText(study, scenario));
  remarkWarnings(terminal, scenario);
  writeResults(terminal, folder, {
    'inject.csv': () => placementCsv(study),
    'inject.json': () => jsonText(document),
    'inject.html': () => placementReport(study, scenario, stamp),
  });
  printJson(terminal, document);
  return placementSettled(study) ? EXIT.done : EXIT.failed;
}
