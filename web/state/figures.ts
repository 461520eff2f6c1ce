/**
 * The figures a reader changes most, read from the scenario's text and written back into it. Only the
 * figure itself is replaced, so that remarks and layout of the file stay as they are.
 */
import { isScalar, parseDocument } from 'yaml';

export interface FigureField {
  path: string;
  label: string;
}

/** Fields in the order of the form; one that the text does not hold is left out. */
export const FIGURE_GROUPS: readonly { title: string; fields: readonly FigureField[] }[] = [
  {
    title: 'Engine',
    fields: [
      { path: 'engine.bore', label: 'Bore' },
      { path: 'engine.stroke', label: 'Stroke' },
      { path: 'engine.compressionRatio', label: 'Compression ratio' },
    ],
  },
  {
    title: 'Intake',
    fields: [
      { path: 'intake.trumpet.length', label: 'Trumpet fitted now' },
      { path: 'intake.valves.lift.open', label: 'Intake opens' },
      { path: 'intake.valves.lift.close', label: 'Intake closes' },
      { path: 'intake.valves.lift.centre', label: 'Intake lobe centre' },
      { path: 'intake.valves.lift.duration', label: 'Intake duration' },
    ],
  },
  {
    title: 'Where you need it',
    fields: [
      { path: 'target.from', label: 'Band from' },
      { path: 'target.to', label: 'Band to' },
      { path: 'ambient.temperature', label: 'Air temperature' },
    ],
  },
  {
    title: 'Lengths to try',
    fields: [
      { path: 'sweep.lengths.from', label: 'Shortest' },
      { path: 'sweep.lengths.to', label: 'Longest' },
      { path: 'sweep.lengths.step', label: 'Step' },
    ],
  },
];

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
