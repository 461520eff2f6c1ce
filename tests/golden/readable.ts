/** Documents as files that a reader can follow and compare line by line. */

/** One key a line, lists of plain values on one line; the hash of the scenario is left out. */
export function readableJson(text: string): string {
  const document = JSON.parse(text);
  if (`${JSON.stringify(document)}\n` !== text)
    throw new Error('the document is not one plain line');
  return `${indented(document)}\n`.replaceAll(HASH, 'HASH');
}

/** Every scenario has one of its own, guarded by tests/scenario/hash.test.ts. */
const HASH = /\b[0-9a-f]{64}\b/g;

/** One element of a table a line; looks and the hash of the scenario are left out. */
export function readableHtml(text: string): string {
  return text
    .replace(/<style>[\s\S]*?<\/style>/, '<style></style>')
    .replaceAll(/\b([0-9a-f]{12,64})\b/g, 'HASH')
    .replaceAll(/(<\/tr>|<\/td>|<\/th>)(?=<)/g, '$1\n');
}

export function indented(value: unknown, indent = ''): string {
  if (!(value instanceof Object)) return JSON.stringify(value);
  const entries = Object.values(value);
  if (Array.isArray(value) && entries.every((entry) => !(entry instanceof Object))) {
    return `[${entries.map((entry) => JSON.stringify(entry)).join(', ')}]`;
  }
  const inner = `${indent}  `;
  const lines = Object.entries(value).map(
    ([key, entry]) =>
      `${inner}${Array.isArray(value) ? '' : `${JSON.stringify(key)}: `}${indented(entry, inner)}`,
  );
  const [open, close] = Array.isArray(value) ? '[]' : '{}';
  return entries.length === 0
    ? `${open}${close}`
    : `${open}\n${lines.join(',\n')}\n${indent}${close}`;
}
