/**
 * The figures of the form, read from the scenario's text and written back into it. Only the
 * figure itself is replaced, so that remarks and layout of the file stay as they are.
 */
import { isScalar, parseDocument } from 'yaml';

/** The figure at the path as the text writes it; undefined where none stands. */
export function figureAt(text: string, path: string): string | undefined {
  const node = nodeAt(text, path);
  return node && text.slice(node.from, node.to).replace(/^(["'])(.*)\1$/, '$2');
}

/** The text with another figure at the path; the same text where none stands there. */
export function withFigure(text: string, path: string, figure: string): string {
  const node = nodeAt(text, path);
  if (!node) return text;
  const plain = /^[\w.][\w .+°%/-]*$/.test(figure) ? figure : JSON.stringify(figure);
  return text.slice(0, node.from) + plain + text.slice(node.to);
}

function nodeAt(text: string, path: string): { from: number; to: number } | undefined {
  const document = parseDocument(text, { logLevel: 'silent' });
  if (document.errors.length > 0) return undefined;
  const node = document.getIn(path.split('.'), true);
  if (!isScalar(node) || !node.range || node.value === null) return undefined;
  return { from: node.range[0], to: node.range[1] };
}
