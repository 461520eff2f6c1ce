/** The reference of scenario keys as Markdown, made from the schema so that it cannot drift. */
import { DIMENSIONS } from '../../sim/scenario/dimension.ts';
import type { Choice, Key, Leaf, Section } from '../../sim/scenario/key.ts';
import { join } from '../../sim/scenario/keyPath.ts';
import { scenarioKeys } from '../../sim/scenario/schema.ts';
import { DEEPEST, LONGEST_TEXT, MOST_TOKENS } from '../../sim/scenario/yamlSource.ts';

const INTRODUCTION = `# Scenario files

This page is made from the schema (\`sim/scenario/\`); a test keeps the two alike. To renew it after a
change of the schema: \`npx vitest run tests/scenario -u\`.

A scenario is one YAML file: one engine and the question asked about its trumpets. Begin with a copy
of one in \`scenarios/\`. The first line, \`# yaml-language-server: $schema=./scenario.schema.json\`,
gives completion and remarks in editors that know it.

- **Quantities** are a number and a unit, \`86 mm\`, with a point for decimals and no separator for
  thousands. Nothing is evaluated. Metric and imperial units may be mixed.
- **Crank angles** count from a dead centre, \`62 deg ABDC\`: BTDC, ATDC, BBDC and ABDC. For valves
  the top dead centre between exhaust and intake counts, and the bottom dead centre next to the
  valve's own opening or closing; for the burn, firing top dead centre. Without one of these words an
  angle counts from firing top dead centre: 180 deg is bottom dead centre after expansion, 360 deg
  top dead centre between exhaust and intake, 540 deg bottom dead centre after intake. \`38 BTDC\` is
  understood; a cam event without a dead centre is refused where no event lies.
- **Fractions** of a length are understood: \`1 3/4 in\`.
- **Pressures** are absolute. Where the key allows it, \`0.7 bar gauge\` counts from ambient.
- **Doubt** may follow any quantity: \`62 deg ABDC +- 2 deg\`. The computation takes the value; the
  half-width is kept beside it.
- **Length of a trumpet** runs from the plane of the rim of the mouth to the face of the throttle
  body, bellmouth included.
- **Defaults** stand for every key that is left out; each one taken is listed with its origin.
- **Errors** come all at once, each with line, column, key, limit and remedy. A key that is not known
  is an error.
- **Bounds**: one document a file, at most ${LONGEST_TEXT} characters, ${MOST_TOKENS} keys and
  values, ${DEEPEST} levels deep, no aliases, no tags.
`;

export function scenarioReference(): string {
  return [
    INTRODUCTION,
    unitTable(),
    '## Keys\n',
    sectionText(scenarioKeys, '', scenarioKeys.description),
  ].join('\n');
}

function unitTable(): string {
  const rows = Object.values(DIMENSIONS).map(({ name, units, example }) => {
    const names = Object.keys(units).map((unit) => (unit === '' ? 'none' : `\`${unit}\``));
    return `| ${name.replace(/^an? /, '')} | ${names.join(', ')} | \`${example}\` |`;
  });
  return `## Units\n\n| kind | units | example |\n|---|---|---|\n${rows.join('\n')}\n`;
}

/** One section: its own keys in a table, then its sections below it. */
function sectionText(section: Section, path: string, description: string): string {
  const keys = Object.entries(section.keys).filter(([name]) => name !== '$schema');
  const rows = keys.map(([name, key]) => `| \`${name}\` | ${cells(key, join(path, name))} |`);
  const table = `| key | what | limits | default |\n|---|---|---|---|\n${rows.join('\n')}\n`;
  const below = keys.flatMap(([name, key]) => {
    const inner = sectionBelow(key);
    const what = inner === key ? key.description : `${key.description} ${inner?.description}`;
    return inner ? [sectionText(inner, join(path, name), what)] : [];
  });
  return [...(path === '' ? [] : [`### ${path}\n`, `${description}\n`]), table, ...below].join(
    '\n',
  );
}

function cells(key: Key, path: string): string {
  if (key.kind === 'leaf') return leafCells(key);
  if (key.kind === 'choice') {
    return `${key.description} | ${key.words.join(', ')} | ${defaultCell(key)}`;
  }
  const presence = key.optional ? 'may be left out' : 'must be given';
  if (!sectionBelow(key)) return `${key.description} | | ${presence}`;
  const kind = key.kind === 'list' ? 'list' : 'section';
  return `${kind}: see [${path}](#${path.toLowerCase().replaceAll('.', '')}) | | ${presence}`;
}

function leafCells(leaf: Leaf): string {
  const limits = `${leaf.limits[0]} to ${leaf.limits[1]}`;
  const usual = leaf.usual ? `; usual ${leaf.usual[0]} to ${leaf.usual[1]}` : '';
  return `${leaf.description} | ${limits}${usual} | ${defaultCell(leaf)}`;
}

function defaultCell({ absent, optional }: Leaf | Choice): string {
  if (!absent) return optional ? 'may be left out' : 'must be given';
  const what = 'rule' in absent ? (absent.value ?? absent.rule) : absent.value;
  return `${what} (${absent.why})`;
}

/** The section that a key holds, or the section of one row of its list. */
function sectionBelow(key: Key): Section | undefined {
  const inner = key.kind === 'list' ? key.row : key;
  return inner.kind === 'section' ? inner : undefined;
}
