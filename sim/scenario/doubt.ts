/** What a builder is unsure about, given or by trade sense, and engines that all of it allows. */
import { latinHypercube } from '../decision/latinHypercube.ts';
import { fewestSamples, type InputSample } from '../decision/uncertainty.ts';
import { type Change, flowChanges, insideText } from './change.ts';
import { convert } from './dimension.ts';
import { type Doubt, type Leaf, leafValue, limitsOf } from './key.ts';
import { leavesBelow } from './keyPath.ts';
import { quantityToText, readQuantity } from './quantity.ts';
import { engineReader, type OpenScenario, openScenario } from './read.ts';
import { scenarioKeys } from './schema.ts';
import type { Uncertainty } from './sections/uncertainty.ts';
import { TABLE_DOUBT, typicalDoubt } from './sections/valveFlow.ts';
import { LeafPlace } from './view.ts';

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
 * @param also what every engine says besides, whatever is in doubt
 *
 * @throws ScenarioError where values within the spreads break a rule of the scenario
 */
export function doubtfulEngines(
  text: string,
  name: string,
  places: readonly (readonly number[])[],
  byTrade = true,
  also: readonly Change[] = [],
): InputSample[] {
  const all = knobs(text, name, byTrade);
  const changesAt = (at: number[]) => [...all.flatMap((knob, k) => knob.changes(at[k]!)), ...also];
  const engineWith = engineReader(text, name, changesAt(all.map(() => 0)));
  return places.map((row) => {
    const at = all.map((_, k) => 2 * row[k]! - 1);
    return { at, engine: engineWith(changesAt(at)) };
  });
}

function knobs(text: string, name: string, byTrade: boolean): Knob[] {
  const open = openScenario(text, name);
  const { scenario, places, tree } = open;
  const leaves = places
    .filter((place) => place instanceof LeafPlace)
    .filter(({ path }) => PHYSICAL.test(path));
  const at = new Map(leaves.map((leaf) => [leaf.path, leaf]));
  const order = [...pathsOf(tree), ...scenario.defaultsUsed.map(({ path }) => path)];
  const singles = order.flatMap((path) => {
    const leaf = at.get(path);
    return leaf ? singleKnob(leaf, byTrade) : [];
  });
  return [...singles, ...flowKnobs(open, byTrade)].filter((knob) => knob.half > 0);
}

/** What the question asks, and how it is computed, is not in doubt. */
const PHYSICAL = /^(ambient|engine|intake|exhaust|fuel|injectors)\./;

/** Paths of all values, in the order of the file. */
function pathsOf(node: unknown, path = ''): string[] {
  if (!(node instanceof Object)) return [path];
  return Object.entries(node).flatMap(([key, child]) =>
    pathsOf(child, path === '' ? key : `${path}.${key}`),
  );
}

function singleKnob({ path, key, quantity, taken }: LeafPlace, byTrade: boolean): Knob[] {
  const { spread, gauge } = quantity ?? { spread: 0, gauge: false };
  const assumed = byTrade ? key.doubt : undefined;
  if ((!quantity && taken === undefined) || key.whole || (spread === 0 && !assumed)) return [];
  const text = quantity?.text ?? key.absent?.value ?? quantityToText(taken!, key.dimension);
  const value = quantity?.value ?? leafValue(text, key);
  const half = spread > 0 ? spread : halfOf(assumed!, value, key);
  const [low, high] = limitsOf(key);
  const held = (x: number) => (gauge ? x : Math.min(high, Math.max(low, x)));
  return [
    {
      path,
      value,
      half,
      text: spread > 0 ? text : withHalf(text, assumed!),
      given: spread > 0,
      why: spread > 0 ? 'given' : assumed!.why,
      changes: (at) => [{ path, text: insideText(held(value + at * half), key, gauge) }],
    },
  ];
}

/** Every half-width by trade sense with its key; that of flow coefficients stands for a whole table. */
export function doubtsByTrade(): (Doubt & { path: string })[] {
  const singles = leavesBelow(scenarioKeys).flatMap(([path, { doubt }]) => {
    return doubt ? [{ path, ...doubt }] : [];
  });
  const tables = (['intake', 'exhaust'] as const).flatMap((kind) => {
    const path = `${kind}.valves.flowCoefficient`;
    return [TABLE_DOUBT, typicalDoubt(kind)].map((doubt) => ({ path, ...doubt }));
  });
  return [...singles, ...tables];
}

/** Value and half-width as a file would say them: of a value in per cent in points, of inches in inches. */
function withHalf(text: string, { half }: Doubt): string {
  const [, millimetres] = /^([\d.]+) mm$/.exec(half) ?? [];
  if (millimetres && /( in|")$/.test(text)) {
    return `${text} +- ${Number(convert(Number(millimetres), 'mm', 'in').toPrecision(2))} in`;
  }
  if (!text.endsWith('%')) return `${text} +- ${half}`;
  return half.endsWith('%')
    ? `${text} +- ${half} of it`
    : `${text} +- ${Number((100 * Number(half)).toPrecision(6))} %`;
}

/** Half-width inside the program. */
function halfOf({ half }: Doubt, value: number, leaf: Leaf): number {
  if (half.endsWith('%')) return (Math.abs(value) * Number.parseFloat(half)) / 100;
  const read = readQuantity(half, leaf.dimension, leaf);
  if ('problem' in read) throw new Error(`doubt ${half}: ${read.problem}`);
  // A half-width of temperature is in kelvin, so that it needs no zero point.
  return read.value;
}

/** Flow coefficients rise and fall together: one knob for a table. */
function flowKnobs({ scenario, view }: OpenScenario, byTrade: boolean): Knob[] {
  if (!byTrade) return [];
  return (['intake', 'exhaust'] as const).flatMap((kind) => {
    const { flow } = scenario.engine[kind].valve;
    if (flow.kind !== 'coefficient') return [];
    const { present, path } = view[kind].valves.flowCoefficient.here;
    const { half, why } = present ? TABLE_DOUBT : typicalDoubt(kind);
    const share = Number.parseFloat(half) / 100;
    const text = `all coefficients +- ${half}`;
    const changes = (at: number) => flowChanges(path, flow, 1 + at * share);
    return [{ path, value: 1, half: share, text, given: false, why, changes }];
  });
}

/** What a study of the doubt starts from. */
export interface DoubtSample {
  inputs: DoubtfulInput[];
  samples: InputSample[];
  seed: number;
  /** Samples asked for; there are more where so many inputs want them. */
  asked: number;
}

/**
 * The designed sample of a scenario; more samples than asked where the inputs are many.
 *
 * @throws ScenarioError where values within the spreads break a rule of the scenario
 */
export function doubtSample(
  text: string,
  name: string,
  asked: Uncertainty,
  also: readonly Change[] = [],
): DoubtSample {
  const inputs = doubtfulInputs(text, name, asked.byTrade);
  const count = Math.max(asked.samples, fewestSamples(inputs.length));
  const places = latinHypercube(inputs.length, count, asked.seed);
  const samples = doubtfulEngines(text, name, places, asked.byTrade, also);
  return { inputs, samples, seed: asked.seed, asked: asked.samples };
}
