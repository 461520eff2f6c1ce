/** Every file of physics says where its equations come from, or that they have no source. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const PHYSICS = [
  'step',
  'gas',
  'mixture',
  'duct',
  'acoustics',
  'loss',
  'boundary',
  'spray',
  'cylinder',
];

/** Files that hold no equation: types, registries, book-keeping, numerics. */
const WITHOUT_PHYSICS = [
  // Words, places and loops of the step; what they compute stands in the other files.
  'sim/step/builtins.ts',
  'sim/step/lanes.ts',
  'sim/step/layout.ts',
  'sim/step/step.ts',
  'sim/boundary/ductEnd.ts',
  'sim/boundary/node.ts',
  'sim/boundary/reservoir.ts',
  'sim/cylinder/cylinder.ts',
  'sim/duct/duct.ts',
  'sim/duct/mesh.ts',
  'sim/step/powers.ts',
  // The spray's books, and how its answers are shared out in time and place.
  'sim/spray/filmOptions.ts',
  'sim/spray/sprayOptions.ts',
  'sim/spray/filmConditions.ts',
  'sim/spray/intakeLine.ts',
  'sim/spray/pulse.ts',
  'sim/spray/spray.ts',
  'sim/spray/sprayLedger.ts',
  'sim/spray/sprayTally.ts',
  'sim/spray/staging.ts',
];

const filesOf = (folder: string) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.ts'))
    .map((name) => `${folder}/${name}`);

const files = [...PHYSICS.map((folder) => `sim/${folder}`), 'tests/acoustics'].flatMap(filesOf);

/** The remark that opens a file, on one line. */
const header = (file: string) => {
  const text = readFileSync(file, 'utf8');
  const found = /^\/\*\*([\s\S]*?)\*\//.exec(text);
  return (found?.[1] ?? '').replace(/\s*\n \*\s?/g, ' ');
};

const NAMES_ONE =
  /\bSources?(?: of [^:.]*)?[:.] |no source\b|No source:|source is named|no constant is fitted|Closure: /;

it.each(files.filter((file) => !WITHOUT_PHYSICS.includes(file)))('%s names a source', (file) => {
  expect(header(file)).toMatch(NAMES_ONE);
});

it('lists only files that exist', () => {
  expect(WITHOUT_PHYSICS.filter((file) => !files.includes(file))).toEqual([]);
});
