/** What a builder is unsure about, given or by trade sense, and engines that all of it allows. */
import type { z } from 'zod';
import { latinHypercube } from '../decision/latinHypercube.ts';
import { fewestSamples, type InputSample } from '../decision/uncertainty.ts';
import type { ValveFlowSpecification } from '../specification.ts';
import { type Change, insideText } from './change.ts';
import { type DefaultSpread, defaultSpread, TYPICAL_FLOW_SPREAD } from './defaultSpreads.ts';
import { LEAVES, type Leaf, leafValue } from './leaf.ts';
import type { Quantity } from './quantity.ts';
import { readQuantity } from './quantity.ts';
import { readScenario } from './read.ts';
import { schemaAt } from './reading.ts';
import type { Scenario } from './resolve.ts';
import { scenarioSections } from './schema.ts';
import type { Uncertainty } from './sections/uncertainty.ts';
import { yamlSource } from './yamlSource.ts';

/** One input with its doubt. */
export interface DoubtfulInput {
  /** The key. */
  path: string;
  /** Value and half-width in the unit inside the program; both 1 and a share for a whole table. */
  value: number;
  half: number;
  /** Value and half-width in words. */
  text: string;
  /** Whether the file gives the half-width; otherwise it is by trade sense. */
  given: boolean;
  why: string;
}

/** An input and what a file would say at a place of it, -1 to 1. */
interface Knob extends DoubtfulInput {
  changes(at: number): Change[];
}

/**
 * Everything in doubt in a scenario, in the order of the file, defaults after it.
 *
 * @param byTrade whether inputs without a spread of their own take one by trade sense
 */
export function doubtfulInputs(text: string, name: string, byTrade = true): DoubtfulInput[] {
  return knobs(text, name, byTrade).map(({ changes: _, ...input }) => input);
}

/**
 * One engine a row of places, each place from 0 to 1 over its input's spread.
 *
 * @throws ScenarioError where values within the spreads break a rule of the scenario
 */
export function doubtfulEngines(
  text: string,
  name: string,
  places: readonly (readonly number[])[],
  byTrade = true,
): InputSample[] {
  const all = knobs(text, name, byTrade);
  return places.map((row) => {
    const at = all.map((_, k) => 2 * row[k]! - 1);
    const changes = all.flatMap((knob, k) => knob.changes(at[k]!));
    return { at, engine: readScenario(text, name, changes).engine };
  });
}

function knobs(text: string, name: string, byTrade: boolean): Knob[] {
  const scenario = readScenario(text, name);
  const { tree } = yamlSource(text, name);
  const written = writtenQuantities(tree, scenarioSections);
  const taken = scenario.defaultsUsed.flatMap(({ path, value }) => asTaken(path, value));
  const singles = [...written, ...taken].flatMap((one) => singleKnob(one, byTrade));
  return [...singles, ...flowKnobs(scenario, tree, byTrade)].filter((knob) => knob.half > 0);
}

interface At {
  path: string;
  leaf: Leaf;
  quantity: Quantity;
}

/** Quantities of the file, but for those of the question: lengths, speeds, bands, numerics. */
function writtenQuantities(node: unknown, root: z.ZodType, path = ''): At[] {
  const schema = schemaAt(root, path);
  if (schema === undefined) return [];
  const leaf = LEAVES.get(schema);
  if (leaf) {
    const quantity = readQuantity(node, leaf.dimension, leaf);
    return 'problem' in quantity ? [] : [{ path, leaf, quantity }];
  }
  if (!(node instanceof Object)) return [];
  return Object.entries(node)
    .filter(([key]) => path !== '' || PHYSICAL.includes(key))
    .flatMap(([key, child]) => writtenQuantities(child, root, path ? `${path}.${key}` : key));
}

const PHYSICAL = ['ambient', 'engine', 'intake', 'exhaust', 'fuel', 'injectors'];

function asTaken(path: string, text: string): At[] {
  const schema = PHYSICAL.includes(path.split('.')[0]!) && schemaAt(scenarioSections, path);
  const leaf = schema && LEAVES.get(schema);
  if (!leaf) return [];
  const quantity = readQuantity(text, leaf.dimension, leaf);
  return 'problem' in quantity ? [] : [{ path, leaf, quantity }];
}

function singleKnob({ path, leaf, quantity }: At, byTrade: boolean): Knob[] {
  const { value, spread, gauge } = quantity;
  const assumed = byTrade ? defaultSpread(path) : undefined;
  if (leaf.whole || (spread === 0 && !assumed)) return [];
  const half = spread > 0 ? spread : halfOf(assumed!, value, leaf);
  const [low, high] = leaf.limits.map((limit) => leafValue(limit, leaf)) as [number, number];
  const held = (x: number) => (gauge ? x : Math.min(high, Math.max(low, x)));
  return [
    {
      path,
      value,
      half,
      text: spread > 0 ? quantity.text : `${quantity.text} +- ${assumed!.half}`,
      given: spread > 0,
      why: spread > 0 ? 'given' : assumed!.why,
      changes: (at) => [{ path, text: insideText(held(value + at * half), leaf, gauge) }],
    },
  ];
}

/** Half-width inside the program. */
function halfOf({ half }: DefaultSpread, value: number, leaf: Leaf): number {
  if (half.endsWith('%')) return (Math.abs(value) * Number.parseFloat(half)) / 100;
  const read = readQuantity(half, leaf.dimension, leaf);
  if ('problem' in read) throw new Error(`default spread ${half}: ${read.problem}`);
  // Kelvin in the table, so that a half-width of temperature needs no zero point.
  return read.value;
}

/** Flow coefficients rise and fall together: one knob for a table. */
function flowKnobs(scenario: Scenario, tree: unknown, byTrade: boolean): Knob[] {
  if (!byTrade) return [];
  return (['intake', 'exhaust'] as const).flatMap((kind) => {
    const { flow } = scenario.engine[kind].valve;
    if (flow.kind !== 'coefficient') return [];
    const path = `${kind}.valves.flowCoefficient`;
    const own = Object.hasOwn(Object(Object(Object(tree)[kind]).valves), 'flowCoefficient');
    const { half, why } = own ? defaultSpread(path)! : TYPICAL_FLOW_SPREAD;
    return [
      {
        path,
        value: 1,
        half: Number.parseFloat(half) / 100,
        text: `all coefficients +- ${half}`,
        given: false,
        why,
        changes: (at: number) => flowChanges(path, flow, 1 + (at * Number.parseFloat(half)) / 100),
      },
    ];
  });
}

function flowChanges(
  path: string,
  flow: Extract<ValveFlowSpecification, { kind: 'coefficient' }>,
  factor: number,
): Change[] {
  const points = flow.liftRatio.flatMap((ratio, i) => [
    { path: `${path}.points.${i}.liftRatio`, text: String(ratio) },
    {
      path: `${path}.points.${i}.coefficient`,
      text: String(Math.min(1, factor * flow.coefficient[i]!)),
    },
  ]);
  return [{ path: `${path}.reference`, text: flow.reference }, ...points];
}

/** What a study of the doubt starts from. */
export interface DoubtSample {
  inputs: DoubtfulInput[];
  samples: InputSample[];
  seed: number;
}

/**
 * The designed sample of a scenario; more samples than asked where the inputs are many.
 *
 * @throws ScenarioError where values within the spreads break a rule of the scenario
 */
export function doubtSample(text: string, name: string, asked: Uncertainty): DoubtSample {
  const inputs = doubtfulInputs(text, name, asked.byTrade);
  const count = Math.max(asked.samples, fewestSamples(inputs.length));
  const places = latinHypercube(inputs.length, count, asked.seed);
  const samples = doubtfulEngines(text, name, places, asked.byTrade);
  return { inputs, samples, seed: asked.seed };
}
