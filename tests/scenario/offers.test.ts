/** What a scenario might say besides: every key of the schema, put in as the page does and taken out again. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ScenarioError } from '../../sim/index.ts';
import { leavesBelow, nodeAt } from '../../sim/scenario/keyPath.ts';
import { offersOf } from '../../sim/scenario/offers.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { mayGo, scenarioKeys } from '../../sim/scenario/schema.ts';
import { treeOf, withKey, withoutKey } from '../../web/state/keys.ts';

const folder = join(import.meta.dirname, '../../scenarios');
const demos = readdirSync(folder).filter((name) => name.endsWith('.yaml'));

describe.each(demos)('%s', (demo) => {
  const text = readFileSync(join(folder, demo), 'utf8');
  const tree = treeOf(text);
  const offers = offersOf(tree).flatMap((one) => one.offers);

  it('holds or is offered every key, but for other ways of saying what it says', () => {
    const begun = (path: string) => offers.some((one) => `${path}.`.startsWith(`${one.path}.`));
    const said = (path: string) => nodeAt(tree, path.replace(/\.\*.*/, '')) !== undefined;
    const missing = leavesBelow(scenarioKeys)
      .map(([path]) => path)
      .filter((path) => !begun(path) && !said(path));
    expect(missing).toMatchSnapshot();
  });

  it('takes every offer, and gives it back without a trace', () => {
    expect(offers.length).toBeGreaterThan(80);
    for (const { path, example } of offers) {
      const added = withKey(text, path, example);
      expect(nodeAt(treeOf(added), path), path).toEqual(example);
      expect(mayGo(path), path).toBe(true);
      expect(withoutKey(added, path), path).toBe(text);
    }
  });
});

/** What a reader of a text says against it. */
function issuesOf(text: string): string[] {
  try {
    readScenario(text, 'offered.yaml');
    return [];
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error;
    return error.issues.map(({ path, message }) => `${path}: ${message}`);
  }
}

it('what an offer puts in as it stands is read, or refused at its place for a reason that only the reader can mend', () => {
  const text = readFileSync(join(folder, 'hill-climb.yaml'), 'utf8');
  const offers = offersOf(treeOf(text)).flatMap((one) => one.offers);
  const refused = offers.flatMap(({ path, example }) => {
    const issues = issuesOf(withKey(text, path, example));
    for (const issue of issues) expect(issue.startsWith(path), issue).toBe(true);
    return issues;
  });
  expect(refused).toMatchSnapshot();
});

it('keys go into and out of sections that stand on one line', () => {
  const text = 'a: { b: 1 } # remark\nc:\n  d: 2\n\n# end\n';
  expect(withKey(text, 'a.x', '3 mm')).toBe('a: { b: 1, x: 3 mm } # remark\nc:\n  d: 2\n\n# end\n');
  expect(withKey(text, 'c.e.f', 4)).toBe(
    'a: { b: 1 } # remark\nc:\n  d: 2\n  e:\n    f: 4\n\n# end\n',
  );
  expect(withoutKey('a: { b: 1, x: 3, y: 2 }\n', 'a.x')).toBe('a: { b: 1, y: 2 }\n');
  expect(withoutKey('a: { b: 1, x: 3 }\n', 'a.b')).toBe('a: { x: 3 }\n');
  expect(withoutKey(text, 'c.d')).toBe('a: { b: 1 } # remark\n\n# end\n');
  expect(withoutKey(text, 'c.nothing')).toBe(text);
});
