/** Files made from the schema. To renew them after a change: npx vitest run tests/scenario -u */
import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { readScenario } from '../../sim/scenario/read.ts';
import { scenarioJsonSchema } from '../../sim/scenario/schema.ts';
import { scenarioReference } from './scenarioReference.ts';

const demos = readdirSync('scenarios').filter((name) => name.endsWith('.yaml'));
const editor = () => new Ajv2020({ allErrors: true, allowUnionTypes: true });
const demo = (name: string) => parse(readFileSync(`scenarios/${name}`, 'utf8'));

test('docs/scenario.md is the reference of the present schema', async () => {
  await expect(scenarioReference()).toMatchFileSnapshot('../../docs/scenario.md');
});

test('no key of the reference is undescribed', () => {
  expect(scenarioReference()).not.toContain('undefined');
});

test('scenarios/scenario.schema.json is the present schema', async () => {
  const text = `${JSON.stringify(scenarioJsonSchema(), null, 2)}\n`;
  await expect(text).toMatchFileSnapshot('../../scenarios/scenario.schema.json');
});

test('the JSON Schema is valid and every key of it is described', () => {
  const ajv = editor();
  expect(ajv.validateSchema(scenarioJsonSchema())).toBe(true);
  const undescribed: string[] = [];
  const walk = (node: Record<string, unknown>, path: string) => {
    for (const [key, child] of Object.entries(node.properties ?? {})) {
      if (typeof child.description !== 'string') undescribed.push(`${path}.${key}`);
      walk(child.items ?? child, `${path}.${key}`);
    }
  };
  walk(scenarioJsonSchema() as Record<string, unknown>, '');
  expect(undescribed).toEqual([]);
});

test.each(demos)('%s passes the JSON Schema', (name) => {
  const validate = editor().compile(scenarioJsonSchema());
  validate(demo(name));
  expect(validate.errors).toBeNull();
});

test('the JSON Schema refuses a unit of the wrong kind, a bare number and a misspelt key', () => {
  const validate = editor().compile(scenarioJsonSchema());
  const scenario = demo('hill-climb.yaml');
  scenario.engine.bore = '86 kPa';
  scenario.engine.stroke = 86;
  scenario.engine.rodd = '143 mm';
  expect(validate(scenario)).toBe(false);
  const places = validate.errors?.map((error) => `${error.instancePath} ${error.keyword}`);
  expect(places).toEqual([
    '/engine additionalProperties',
    '/engine/bore pattern',
    '/engine/stroke type',
  ]);
});

test.each([
  ['intake.trumpet.bellmouth', { radius: '12 mm', depth: '12 mm' }],
  ['intake.trumpet.bellmouth', { depth: '12 mm' }],
  ['intake.port', { length: '100 mm' }],
  ['intake.port', { length: '100 mm', diameter: '40 mm', diameterAirEnd: '40 mm' }],
  ['intake.valves.lift', { open: '28 deg BTDC', close: '60 deg ABDC', maximum: '10 mm' }],
  ['ambient', { altitude: '600 m', pressure: '985 mbar' }],
  ['speeds', { from: '3000 rpm', step: '400 rpm' }],
  ['speeds', { from: '3000 rpm', at: ['3000 rpm', '8600 rpm'] }],
  ['target', { from: '5400 rpm', to: '7400 rpm', bands: [{ from: '3 rpm', to: '4 rpm' }] }],
])('the editor knows either-or as the reader does: %s %j', (path, instead) => {
  const scenario = demo('hill-climb.yaml');
  const names = path.split('.');
  const above = names.slice(0, -1).reduce((node, name) => node[name], scenario);
  above[names.at(-1)!] = instead;
  const validate = editor().compile(scenarioJsonSchema());
  expect(validate(scenario)).toBe(false);
  const place = `/${names.join('/')}`;
  const ways = validate.errors!.filter(({ keyword }) => keyword === 'oneOf');
  expect(ways.map(({ instancePath }) => instancePath)).toEqual([place]);
  expect(() => readScenario(stringify(scenario), 'x')).toThrow(/given twice|missing/);
});

test('every demo names its schema for editors', () => {
  for (const name of demos) {
    const [first] = readFileSync(`scenarios/${name}`, 'utf8').split('\n');
    expect(first).toBe('# yaml-language-server: $schema=./scenario.schema.json');
  }
});
