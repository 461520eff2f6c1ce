/**
 * Keys put into the scenario's text and taken out of it again. Only lines of the key itself come and go, so that
 * remarks and layout of the rest stay; what is put in and taken out leaves the text as it was.
 */
import {
  type Document,
  isMap,
  isScalar,
  type Node,
  type Pair,
  parseDocument,
  stringify,
  type YAMLMap,
} from 'yaml';

/** What a text holds as plain data; undefined where it cannot be read. */
export function treeOf(text: string): unknown {
  return parsed(text)?.toJS();
}

/** The text with a key that it does not hold, sections above it included; the same text where there is no place for it. */
export function withKey(text: string, path: string, value: unknown): string {
  const root = parsed(text)?.contents;
  if (!isMap(root)) return text;
  const { map, rest } = deepest(root, path.split('.'));
  if (rest.length === 0) return text;
  const tree = rest.reduceRight<unknown>((inner, name) => ({ [name]: inner }), value);
  return map.flow ? intoFlow(text, map, tree) : intoBlock(text, map, tree);
}

/** The text without a key, and without sections that held nothing else. */
export function withoutKey(text: string, path: string): string {
  const root = parsed(text)?.contents;
  if (!isMap(root)) return text;
  const names = path.split('.');
  for (let depth = names.length; depth > 0; depth--) {
    const map = depth === 1 ? root : root.getIn(names.slice(0, depth - 1), true);
    if (!isMap(map)) return text;
    const at = map.items.findIndex(({ key }) => nameOf(key) === names[depth - 1]);
    if (at < 0) return text;
    if (map.items.length > 1 || depth === 1)
      return map.flow ? outOfFlow(text, map, at) : outOfBlock(text, map, at);
  }
  return text;
}

function parsed(text: string): Document.Parsed | undefined {
  const document = parseDocument(text, { logLevel: 'silent' });
  return document.errors.length > 0 ? undefined : document;
}

const nameOf = (key: unknown) => String(isScalar(key) ? key.value : key);

/** The deepest section of a path that the text has, and the names below it that it has not. */
function deepest(root: YAMLMap, names: string[]): { map: YAMLMap; rest: string[] } {
  const [first, ...rest] = names;
  if (first === undefined || !root.has(first)) return { map: root, rest: names };
  const next = root.get(first, true);
  return isMap(next) ? deepest(next, rest) : { map: root, rest: [] };
}

function intoBlock(text: string, map: YAMLMap, tree: unknown): string {
  const indent = ' '.repeat(columnOf(text, begin(map.items[0]!)));
  const lines = stringify(tree, { lineWidth: 0 }).trimEnd().split('\n');
  const at = endOfLine(text, end(map.items[map.items.length - 1]!));
  const before = text.slice(0, at);
  const joint = before.endsWith('\n') ? '' : '\n';
  return `${before}${joint}${lines.map((line) => `${indent}${line}\n`).join('')}${text.slice(at)}`;
}

function intoFlow(text: string, map: YAMLMap, tree: unknown): string {
  const inside = stringify(tree, { collectionStyle: 'flow', lineWidth: 0 }).trim().slice(1, -1);
  const last = map.items.at(-1);
  const at = last ? end(last) : map.range![0] + 1;
  const added = last ? `, ${inside.trim()}` : inside;
  return text.slice(0, at) + added + text.slice(at);
}

function outOfBlock(text: string, map: YAMLMap, at: number): string {
  const pair = map.items[at]!;
  const from = begin(pair) - columnOf(text, begin(pair));
  return text.slice(0, from) + text.slice(endOfLine(text, end(pair)));
}

function outOfFlow(text: string, map: YAMLMap, at: number): string {
  const [pair, before, after] = [map.items[at]!, map.items[at - 1], map.items[at + 1]];
  if (before) return text.slice(0, end(before)) + text.slice(end(pair));
  return text.slice(0, begin(pair)) + text.slice(begin(after!));
}

const begin = ({ key }: Pair) => (key as Node).range![0];
const end = ({ key, value }: Pair) => lastOf((value ?? key) as Node);

/** Where a value ends, without blank lines and remarks behind it. */
function lastOf(node: Node): number {
  const inner = isMap(node) && !node.flow && node.items.at(-1);
  if (inner) return end(inner);
  const items = (node as { items?: Node[]; flow?: boolean }).items;
  const row = items && !(node as { flow?: boolean }).flow ? items.at(-1) : undefined;
  return row ? lastOf(row) : node.range![1];
}

const columnOf = (text: string, at: number) => at - (text.lastIndexOf('\n', at - 1) + 1);

/** Where the line ends in which a place lies, its break included. */
function endOfLine(text: string, at: number): number {
  if (text[at - 1] === '\n') return at;
  const next = text.indexOf('\n', at);
  return next < 0 ? text.length : next + 1;
}
