/** `trace FILE`: one cycle at one speed against crank angle. */
import { traceCsv, traceDocument, traceText, withLength } from '../../index.ts';
import { askedLength, askedSpeed, askedStations } from '../asked.ts';
import { ComputationError, EXIT } from '../exit.ts';
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

export interface TraceOptions extends CommonOptions {
  length?: string;
  speed?: string;
  stations?: string;
}

export async function trace(
  terminal: Terminal,
  file: string,
  options: TraceOptions,
): Promise<number> {
  const scenario = openScenario(file);
  const length = askedLength(options.length, scenario);
  const speed = askedSpeed(options.speed, scenario);
  const stations = askedStations(options.stations);
  const folder = resultFolder(options);
  const engine = withLength(scenario.engine, length);
  const result = await compute(terminal, options, 1, (workers) =>
    workers.trace({ engine, speed, stations }),
  );
  if ('failure' in result) throw new ComputationError(result.failure);
  const document = traceDocument(result, length, stampOf(scenario));
  print(terminal, traceText(result, length, scenario));
  remarkWarnings(terminal, scenario);
  writeResults(terminal, folder, {
    'trace.csv': () => traceCsv(result),
    'trace.json': () => jsonText(document),
  });
  printJson(terminal, document);
  return result.point.settled ? EXIT.done : EXIT.failed;
}
