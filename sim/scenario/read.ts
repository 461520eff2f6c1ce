/** A scenario file's text becomes a resolved scenario, or one error with every problem in it. */
import { ScenarioError } from '../errors.ts';
import { type Change, changedTree } from './change.ts';
import { issueFrom } from './issue.ts';
import { resolveScenario, type Scenario } from './resolve.ts';
import { checked, scenarioSchema } from './schema.ts';
import { yamlSource } from './yamlSource.ts';

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
  const source = yamlSource(text, name);
  const tree = changedTree(source.tree, changes);
  const parsed = scenarioSchema.safeParse(tree);
  if (parsed.success) return resolveScenario(checked(parsed.data));
  const issues = parsed.error.issues.flatMap((issue) => issueFrom(issue, { ...source, tree }));
  issues.sort((a, b) => a.line - b.line || a.column - b.column);
  throw new ScenarioError(issues);
}
