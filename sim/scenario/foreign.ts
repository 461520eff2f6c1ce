/** Engines that are not computed here are refused once, rather than key by key. */
import { ScenarioError } from '../errors.ts';
import type { YamlSource } from './yamlSource.ts';

/** Keys that only such engines have, and keys whose value may say so; in lower case. */
const KEYS =
  /^(rotors?|rotary|wankel|trochoids?|eccentricity|two-?strokes?|2-?strokes?|transfer(ports?)?|scavenging|reeds?)$/;
const KINDS = /^(strokes|strokespercycle|cycle|cycletype|enginetype|type|kind|engine)$/;
const SAID = /^(2|two)\b|(2|two)[ -]?strokes?|rotary|rotors?\b|wankel/i;
const FOUR = /^(4|four)\b|(4|four)[ -]?strokes?/i;

/** @throws ScenarioError where the file, or its engine, is none of four strokes with valves */
export function refuseForeign(source: YamlSource): void {
  const tree = source.tree as Record<string, unknown>;
  const { engine } = tree;
  const path = foreignIn(tree) ?? foreignIn(engine)?.replace(/^/, 'engine.');
  if (path === undefined) return;
  const names = path.split('.');
  throw new ScenarioError([
    {
      file: source.file,
      ...source.placeOfKey(names),
      path,
      value: names.reduce((node, name) => Object(node)[name], tree as unknown),
      message: 'two-stroke and rotary engines are not computed',
      limit: 'four strokes, with poppet valves',
      remedy: 'ports that a piston or a rotor opens follow rules that this program does not know',
    },
  ]);
}

function foreignIn(section: unknown): string | undefined {
  if (!(section instanceof Object) || Array.isArray(section)) return undefined;
  return Object.entries(section).find(([key, value]) => {
    return KEYS.test(plain(key)) || (KINDS.test(plain(key)) && SAID.test(wordsOf(value)));
  })?.[0];
}

/** Whether a key that is none says no more than that the engine has four strokes. */
export function isFourStroke(key: string, value: unknown): boolean {
  return KINDS.test(plain(key)) && FOUR.test(wordsOf(value));
}

const plain = (key: string) => key.toLowerCase().replace(/[\s_]/g, '');

const wordsOf = (value: unknown) =>
  typeof value === 'string' || typeof value === 'number' ? String(value) : '';
