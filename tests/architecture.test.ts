/** Imports run one way, and the solver knows nothing of the machine it runs on. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '..');

/** From bottom to top: a folder may import those before it. */
const ORDER = [
  'step',
  'elementary',
  'kernel',
  'gas',
  'mixture',
  'duct',
  'loss',
  'acoustics',
  'boundary',
  'cylinder',
  'spray',
  'linkage',
  'sound',
  'engine',
  'sweep',
  'decision',
  'scenario',
  'report',
  'study',
];

/**
 * The independent estimate, and what it reaches in all, detours counted: data, units, elementary
 * functions, four-pole matrices and properties of air.
 */
const ESTIMATE = {
  file: 'tests/acoustics/linearEstimate.ts',
  reaches:
    /^sim\/(specification|bars|injectors|units)\.ts$|^tests\/acoustics\/|^sim\/elementary\/|^sim\/acoustics\/(complex|fourPole)\.ts$|^sim\/step\/(builtins|powers)\.ts$|^sim\/gas\/(atmosphere|component|species)\.ts$/,
};

/** The worker loads the solver without the reader of scenarios, so that it starts at once. */
const WORKER = 'sim/cli/pointWorker.ts';

interface Import {
  from: string;
  to: string;
  /** Whether only types are imported, which vanish at run time. */
  typesOnly: boolean;
}

const files = (folder: string) =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|tsx|mjs)$/.test(name))
    .map((name) => join(folder, name));

const withoutRemarks = (source: string) =>
  source.replace(/\/\*[\s\S]*?\*\//g, '').replace(/\/\/.*$/gm, '');

const sources = new Map(
  [...files('sim'), ...files('web'), ...files('tests/acoustics')].map((file) => [
    file,
    readFileSync(join(ROOT, file), 'utf8'),
  ]),
);
const imports = [...sources].flatMap(([file, text]) => importsOf(file, withoutRemarks(text)));

function importsOf(file: string, text: string): Import[] {
  const found = text.matchAll(
    /(?:\b(?:import|export)\s+(type\s)?[^;'()]*?\bfrom|\bimport|\bURL)\s*\(?\s*'(\.[^'?]*)/g,
  );
  return [...found].map(([, type, path]) => ({
    from: file,
    to: relative(ROOT, join(ROOT, dirname(file), path!)),
    typesOnly: type !== undefined,
  }));
}

/** `gas` for sim/gas/gas.ts, nothing for a file at the root of sim. */
function folderOf(file: string): string | undefined {
  const [, folder, ...rest] = file.split('/');
  return rest.length > 0 ? folder : undefined;
}

const within = (file: string, folder: string) => file.startsWith(`${folder}/`);
const text = ({ from, to }: Import) => `${from} imports ${to}`;

function mayImport({ from, to }: Import): boolean {
  const [upper, lower] = [folderOf(from), folderOf(to)];
  if (to === 'sim/index.ts') return false;
  if (lower === undefined) return true;
  if (upper === undefined) return false;
  if (upper === lower) return true;
  return ORDER.includes(lower) && ORDER.indexOf(lower) < ORDER.indexOf(upper);
}

test('every folder of sim has its place in the order', () => {
  const folders = readdirSync(join(ROOT, 'sim'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name);
  expect(folders.sort()).toEqual([...ORDER, 'cli'].sort());
});

test('imports are found', () => {
  expect(imports.length).toBeGreaterThan(300);
  expect(imports).toContainEqual({ from: WORKER, to: 'sim/sweep/tasks.ts', typesOnly: false });
  expect(imports).toContainEqual({ from: 'sim/cli/pointWorker.mjs', to: WORKER, typesOnly: false });
  expect(imports.some(({ typesOnly }) => typesOnly)).toBe(true);
});

test('below the command line, imports run one way', () => {
  const inside = imports.filter(
    ({ from }) => within(from, 'sim') && !within(from, 'sim/cli') && from !== 'sim/index.ts',
  );
  expect(inside.filter((one) => !mayImport(one)).map(text)).toEqual([]);
});

test('the independent estimate reaches nothing of the solver', () => {
  const reached = new Set([ESTIMATE.file]);
  for (const file of reached) {
    for (const { from, to } of imports) if (from === file) reached.add(to);
  }
  expect(reached.size).toBeGreaterThan(5);
  expect([...reached].filter((file) => !ESTIMATE.reaches.test(file))).toEqual([]);
});

test('the command line builds on the public interface only', () => {
  const outside = imports.filter(
    ({ from, to }) => within(from, 'sim/cli') && !within(to, 'sim/cli') && from !== WORKER,
  );
  const other = outside.filter((one) => one.to !== 'sim/index.ts');
  expect(other.map(text)).toEqual([]);
});

/** Folders of the page from bottom to top; files beside them are below all but what begins the page. */
const PAGE = ['sketches', 'compute', 'state', 'drawing', 'parts', 'views', 'places'];
const PAGE_ROOT = ['web/main.tsx', 'web/Page.tsx', 'web/virtual.d.ts'];

test('inside the page, imports run one way, those of types too', () => {
  const rank = (file: string) => {
    if (PAGE_ROOT.includes(file)) return PAGE.length;
    return PAGE.indexOf(folderOf(file) ?? '');
  };
  const inside = imports.filter(({ from, to }) => within(from, 'web') && within(to, 'web'));
  const drawn = inside.filter(({ from, to }) => !within(from, 'web/build') && /\.tsx?$/.test(to));
  expect(drawn.length).toBeGreaterThan(100);
  expect(drawn.filter(({ from, to }) => rank(to) > rank(from)).map(text)).toEqual([]);
});

test('nothing that is shipped imports a test', () => {
  const shipped = imports.filter(({ from }) => !within(from, 'tests'));
  expect(shipped.filter(({ to }) => within(to, 'tests')).map(text)).toEqual([]);
});

test('the page builds on the public interface only', () => {
  const outside = imports.filter(({ from, to }) => within(from, 'web') && within(to, 'sim'));
  expect(outside.filter(({ to }) => to !== 'sim/index.ts').map(text)).toEqual([]);
});

test('no file imports itself by a detour', () => {
  const next = new Map<string, string[]>();
  for (const { from, to, typesOnly } of imports) {
    if (typesOnly) continue;
    next.set(from, [...(next.get(from) ?? []), to]);
  }
  const done = new Set<string>();
  const circle = (file: string, path: string[]): string[] | undefined => {
    if (path.includes(file)) return [...path.slice(path.indexOf(file)), file];
    if (done.has(file)) return undefined;
    for (const to of next.get(file) ?? []) {
      const found = circle(to, [...path, file]);
      if (found) return found;
    }
    done.add(file);
    return undefined;
  };
  const circles = [...sources.keys()].map((file) => circle(file, []) ?? []);
  expect(circles.filter((found) => found.length > 0)).toEqual([]);
});

test('factors of units stand with the quantities alone', () => {
  const FACTOR = /\b1e-?[36]\b|\b100 \*|\* 100\b|\* 1000\b|\/ 1000\b/;
  const files = ['quantity', 'quantities', 'setUpQuantities', 'figures'];
  const own = files.map((name) => `sim/report/${name}.ts`);
  const told = [...sources].filter(
    ([file]) => /^sim\/(report|study|cli)\//.test(file) && !own.includes(file),
  );
  expect(told.length).toBeGreaterThan(60);
  const found = told.filter(([, source]) => FACTOR.test(withoutRemarks(source)));
  expect(found.map(([file]) => file)).toEqual([]);
});

describe('sim outside sim/cli', () => {
  const pure = [...sources].filter(([file]) => within(file, 'sim') && !within(file, 'sim/cli'));

  /** Their last bit is free to whoever builds a runtime; sim/elementary has those that are not. */
  const FREE =
    /\s\*\*=?\s|\bMath\.(?:pow|exp|expm1|log\w*|a?(?:sin|cos|tan)h?|atan2|cbrt|hypot|f16round|sumPrecise)\b/;

  test('no built-in whose last bit is free reaches a result', () => {
    expect('x ** 2, Math.atanh(x), Math.log1p(x)'.match(new RegExp(FREE, 'g'))).toHaveLength(3);
    const built = /^sim\/kernel\/f/;
    const found = pure.filter(
      ([file, source]) => !built.test(file) && FREE.test(withoutRemarks(source)),
    );
    expect(found.map(([file]) => file)).toEqual([]);
  });

  test.each([
    ['Node', /['"]node:|\bprocess\.|\brequire\(|\bBuffer\b/],
    ['a console', /\bconsole\./],
    ['a clock', /\bDate\b|\bperformance\.|\bsetTimeout\b|\bsetInterval\b/],
    ['chance', /\bMath\.random\b|\bcrypto\.(?:get|random)/],
    [
      'a browser',
      /\bwindow\.|\bnavigator\.|\blocalStorage\b|\bdocument\.(?:query|createEl|getEl|body)/,
    ],
    ['a network', /\bfetch\(|\bXMLHttpRequest\b|\bWebSocket\b/],
  ])('knows nothing of %s', (_, pattern) => {
    const found = pure.filter(([, source]) => pattern.test(withoutRemarks(source)));
    expect(found.map(([file]) => file)).toEqual([]);
  });
});
