/** `check FILE`: reads a scenario and says what it was understood to be. */
import { checkDocument, checkText } from '../../index.ts';
import { EXIT } from '../exit.ts';
import { openScenario } from '../files.ts';
import { print, printJson, type Terminal } from '../terminal.ts';
import { stampOf } from './common.ts';

export function check(terminal: Terminal, file: string): number {
  const scenario = openScenario(file);
  print(terminal, checkText(scenario));
  printJson(terminal, checkDocument(scenario, stampOf(scenario)));
  return EXIT.done;
}
