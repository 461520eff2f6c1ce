/** A scenario file's text becomes a resolved scenario, or one error with every problem in it. */
import type { z } from 'zod';
import { ScenarioError } from '../errors.ts';
import type { EngineSpecification } from '../specification.ts';
import { type Change, changedTree, patchedTree } from './change.ts';
import { refuseForeign } from './foreign.ts';
import { issueFrom, issueOf } from './issue.ts';
import { resolveScenario, resolveWholeEngine, type Scenario, warnUnusual } from './resolve.ts';
import { checkScenario, parseScenario, type ScenarioView, scenarioKeys } from './schema.ts';
import { type Place, Told, viewOf } from './view.ts';
import { type YamlSource, yamlSource } from './yamlSource.ts';

/** A file whose single values are read, those that were refused beside the others. */
interface ParsedFile extends YamlSource {
  values: unknown;
  issues: z.core.$ZodIssue[];
}

/**
 * Reads a scenario.
 *
 * @param text the whole file
 * @param name the file's name, for messages
 * @param changes what to read in place of what the file says
 * @throws ScenarioError with every issue found, in the order of the file
 */
export function readScenario(
  text: string,
  name: string,
  changes: readonly Change[] = [],
): Scenario {
  return openScenario(text, name, changes).scenario;
}

/** A scenario with what its sections see. */
export interface OpenScenario {
  scenario: Scenario;
  view: ScenarioView;
  places: readonly Place[];
  /** The file as plain data. */
  tree: unknown;
}

/** Reads a scenario and keeps the view of it. */
export function openScenario(
  text: string,
  name: string,
  changes: readonly Change[] = [],
): OpenScenario {
  const file = parsedFile(text, name, changes);
  const told = new Told();
  const view = checkedView(file, told);
  warnUnusual(told);
  return { scenario: resolveScenario(view, told), view, places: told.places, tree: file.tree };
}

/**
 * Engines of one file that differ at the same keys, each as if the file said so. The file is read
 * once; after that, values are put into what was read, so that an engine costs a fraction of a
 * millisecond.
 *
 * @param first changes of one of the engines; the others change the same keys
 * @throws ScenarioError, from here or from the engine asked for, where the changed file is no scenario
 */
export function engineReader(
  text: string,
  name: string,
  first: readonly Change[],
): (changes: readonly Change[]) => EngineSpecification {
  const file = parsedFile(text, name, first);
  const told = new Told();
  if (file.issues.length > 0) checkedView(file, told);
  return (changes) => {
    told.clear();
    const { values, problems } = patchedTree(file.values, changes, scenarioKeys);
    told.problems.push(...problems);
    return resolveWholeEngine(checkedView({ ...file, values }, told));
  };
}

function parsedFile(text: string, name: string, changes: readonly Change[]): ParsedFile {
  const source = yamlSource(text, name);
  refuseForeign(source);
  const tree = changedTree(source.tree, changes);
  const { tree: values, issues } = parseScenario(tree);
  return { ...source, tree, values, issues };
}

/** The view of a file that has passed every check. */
function checkedView(file: ParsedFile, told: Told): ScenarioView {
  const view = viewOf(scenarioKeys, file.values, told);
  checkScenario(view, told);
  if (file.issues.length === 0 && told.problems.length === 0) return view;
  const issues = [
    ...file.issues.flatMap((issue) => issueFrom(issue, file)),
    ...told.problems.map((problem) => issueOf(problem, file)),
  ];
  issues.sort((a, b) => a.line - b.line || a.column - b.column);
  throw new ScenarioError(issues);
}
