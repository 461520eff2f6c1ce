/** Engines that are not computed here are refused once, rather than key by key. */
import { ScenarioError } from '../errors.ts';
import type { YamlSource } from './yamlSource.ts';

/** Keys that only such engines have, and keys whose value may say so; in lower case. */
const KEYS = /^(rotors?|rotary|eccentricity|two-?strokes?|2-?strokes?|transfer(ports?)?|reeds?)$/;
const KINDS = /^(strokes|strokespercycle|cycle|type|kind|engine)$/;
const SAID = /^(2|two)\b|(2|two)[ -]?strokes?|rotary/i;
/** What the others may say of themselves, which goes without saying here. */
const OWN = /^(4|four)\b|(4|four)[ -]?strokes?/i;

const FOREIGN = {
  message: 'two-stroke and rotary engines are not computed',
  limit: 'four strokes, with poppet valves',
  remedy: 'ports that a piston or a rotor opens follow rules that this program does not know',
};

const NEEDLESS = {
  message: 'four strokes go without saying: no other engine is computed',
  remedy: 'leave the line out',
};

/** @throws ScenarioError where the file, or its engine, is none of four strokes with valves, or says that it is */
export function refuseForeign(source: YamlSource): void {
  refuse(source, FOREIGN, (name, said) => KEYS.test(name) || (KINDS.test(name) && SAID.test(said)));
  refuse(source, NEEDLESS, (name, said) => KINDS.test(name) && OWN.test(said));
}

type Says = (name: string, said: string) => boolean;

function refuse(source: YamlSource, words: typeof FOREIGN | typeof NEEDLESS, says: Says): void {
  const tree = source.tree as Record<string, unknown>;
  const path = keyThat(says, tree) ?? keyThat(says, tree.engine)?.replace(/^/, 'engine.');
  if (path === undefined) return;
  const names = path.split('.');
  const value = names.reduce((node, name) => Object(node)[name], tree as unknown);
  const place = source.placeOfKey(names);
  throw new ScenarioError([{ file: source.file, ...place, path, value, ...words }]);
}

function keyThat(says: Says, section: unknown): string | undefined {
  if (!(section instanceof Object) || Array.isArray(section)) return undefined;
  return Object.entries(section).find(([key, value]) => {
    const text = typeof value === 'string' || typeof value === 'number' ? String(value) : '';
    return says(key.toLowerCase().replace(/[\s_]/g, ''), text);
  })?.[0];
}
