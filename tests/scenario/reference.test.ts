/** Files made from the schema. To renew them after a change: npx vitest run tests/scenario -u */
import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { scenarioReference } from '../../sim/scenario/reference.ts';
import { scenarioJsonSchema } from '../../sim/scenario/schema.ts';

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

test('every demo names its schema for editors', () => {
  for (const name of demos) {
    const [first] = readFileSync(`scenarios/${name}`, 'utf8').split('\n');
    expect(first).toBe('# yaml-language-server: $schema=./scenario.schema.json');
  }
});
