/** A scenario from the few figures that a builder has at hand. */
import type { LengthUnit } from '../decision/lengthUnit.ts';
import type { ScenarioIssue } from '../errors.ts';
import { isQuantity, type Leaf, readLeaf } from './key.ts';
import { keyAt } from './keyPath.ts';
import { ownEngineText } from './ownEngineText.ts';
import { lengthUnitOf } from './resolve.ts';
import { scenarioKeys } from './schema.ts';

/** A figure that is asked for. */
export interface OwnFigure {
  /** The key that it is written to. */
  path: string;
  label: string;
  /** Unit of a figure that names none. */
  unit: string;
}

const own = (path: string, label: string, unit = 'mm'): OwnFigure => ({ path, label, unit });

/** Twelve figures, and the band. */
export const OWN_FIGURES = [
  own('engine.cylinders', 'Cylinders', ''),
  own('engine.bore', 'Bore'),
  own('engine.stroke', 'Stroke'),
  own('engine.compressionRatio', 'Compression ratio', ''),
  own('intake.trumpet.length', 'Trumpet fitted now, rim to body face'),
  own('intake.throttle.bore', 'Throttle bore'),
  own('intake.port.length', 'Body face to intake valve'),
  own('intake.valves.count', 'Intake valves a cylinder', ''),
  own('intake.valves.headDiameter', 'Intake valve head'),
  own('intake.valves.lift.duration', 'Intake duration at 1 mm lift', 'deg'),
  own('intake.valves.lift.maximum', 'Intake full lift'),
  own('exhaust.primary.length', 'Exhaust primary length'),
  own('target.from', 'Band from', 'rpm'),
  own('target.to', 'Band to', 'rpm'),
] as const;

/** What the builder wrote, by path; a figure without a unit has the usual one. */
export type OwnTexts = Readonly<Record<string, string>>;

/** What is wrong with a figure. */
export type OwnIssue = Pick<ScenarioIssue, 'path' | 'message' | 'remedy'>;

/** The scenario's text, or what is wrong with the figures. */
export type OwnEngine = { text: string } | { issues: OwnIssue[] };

/**
 * @param lengths unit of lengths that name none
 * @returns a text that may still break a rule between figures; whoever reads it is told at their paths
 */
export function ownEngine(title: string, texts: OwnTexts, lengths: LengthUnit = 'mm'): OwnEngine {
  const written = Object.fromEntries(
    OWN_FIGURES.map(({ path, unit }) => [
      path,
      withUnit((texts[path] ?? '').trim(), unit === 'mm' ? lengths : unit),
    ]),
  );
  const read = OWN_FIGURES.map(({ path }) => readFigure(path, written[path]!));
  const issues = read.filter((one) => typeof one !== 'number');
  if (issues.length > 0) return { issues };
  const values = Object.fromEntries(OWN_FIGURES.map(({ path }, i) => [path, read[i] as number]));
  const unit = lengthUnitOf(written['intake.trumpet.length']);
  return { text: ownEngineText(title, written, values, unit) };
}

/** `86` -> `86 mm`, `3 3/8` -> `3 3/8 in`. */
const withUnit = (text: string, unit: string) =>
  unit !== '' && /^(\d+\.?\d*|(\d+ )?\d+\/\d+)$/.test(text) ? `${text} ${unit}` : text;

function readFigure(path: string, text: string): number | OwnIssue {
  const leaf = keyAt(scenarioKeys, path) as Leaf;
  const read = readLeaf(text === '' ? undefined : numeric(text, leaf), leaf);
  if (isQuantity(read)) return read.value;
  return { path, message: read.problem, remedy: read.remedy };
}

const numeric = (text: string, { dimension }: Leaf) =>
  dimension === 'ratio' && /^[\d.]+$/.test(text) ? Number(text) : text;
