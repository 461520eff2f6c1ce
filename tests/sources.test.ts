/** Every file of physics says where its equations come from, or that they have no source. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const PHYSICS = ['step', 'gas', 'duct', 'loss', 'boundary', 'spray', 'cylinder', 'acoustics'];

/** Files that hold no equation: types, registries, book-keeping, numerics. */
const WITHOUT_PHYSICS = [
  'boundary/ductEnd.ts',
  'boundary/node.ts',
  'boundary/reservoir.ts',
  'duct/duct.ts',
  'duct/mesh.ts',
  // The spray's books, and how its answers are shared out in time and place.
  'spray/filmConditions.ts',
  'spray/intakeLine.ts',
  'spray/pulse.ts',
  'spray/spray.ts',
  'spray/sprayLedger.ts',
  'spray/sprayTally.ts',
  'spray/staging.ts',
];

const files = PHYSICS.flatMap((folder) =>
  readdirSync(`sim/${folder}`)
    .filter((name) => name.endsWith('.ts'))
    .map((name) => `${folder}/${name}`),
);

/** The remark that opens a file, on one line. */
const header = (file: string) => {
  const text = readFileSync(`sim/${file}`, 'utf8');
  const found = /^\/\*\*([\s\S]*?)\*\//.exec(text);
  return (found?.[1] ?? '').replace(/\s*\n \*\s?/g, ' ');
};

const NAMES_ONE =
  /\bSources?(?: of [^:.]*)?[:.] |no source\b|No source:|source is named|no constant is fitted|Closure: /;

it.each(files.filter((file) => !WITHOUT_PHYSICS.includes(file)))(
  'sim/%s names a source',
  (file) => {
    expect(header(file)).toMatch(NAMES_ONE);
  },
);

it('lists only files that exist', () => {
  expect(WITHOUT_PHYSICS.filter((file) => !files.includes(file))).toEqual([]);
});
