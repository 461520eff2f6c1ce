/** Set-ups kept on this device: a scenario with the length in question, and the curve it had. */
import { signal } from '@preact/signals';
import { recall, remember } from './device.ts';
import { withFigure } from './figures.ts';
import { isDemo, read, reading, type Source, source } from './scenario.ts';

/** A point of the curve that a set-up had when it was kept. */
export interface KeptPoint {
  speed: number;
  /** Volumetric efficiency [-], brake torque [N m], brake power [W]; absent where not computed. */
  efficiency?: number;
  torque?: number;
  power?: number;
}

export interface SetUp extends Source {
  id: string;
  name: string;
  /** Trumpet length [m]. */
  length: number;
  /** Whether its curve is drawn beside the others. */
  pinned: boolean;
  points: readonly KeptPoint[];
}

const STORE = 'kept';

/** Most set-ups kept; the browser has room for some hundred. */
const MOST = 60;

export const kept = signal<readonly SetUp[]>(stored());

/** Keeps a set-up, the newest first. */
export function keep(setUp: Omit<SetUp, 'id'>): void {
  put([{ ...setUp, id: String(Date.now()) + Math.random() }, ...kept.peek()].slice(0, MOST));
}

/** Keeps the text on the page before another takes its place, unless it is a demo or kept already. */
export function setAside(): void {
  const { file, text } = source.peek();
  if (isDemo(text) || kept.peek().some((one) => one.text === text)) return;
  const now = reading.peek();
  const length = now.ok ? now.scenario.engine.intake.trumpet.length : Number.NaN;
  keep({ name: `${file}, set aside`, file, text, length, pinned: false, points: [] });
}

export const pin = (id: string, pinned: boolean) => change(id, { pinned });
export const rename = (id: string, name: string) => change(id, { name });

export function forget(id: string): void {
  put(kept.peek().filter((one) => one.id !== id));
}

/** The scenario of a set-up with its length as the one fitted. */
export function textOf({ text, file, length }: SetUp): string {
  const now = read({ file, text });
  if (!now.ok || now.scenario.engine.intake.trumpet.length === length) return text;
  const inches = now.scenario.lengthUnit === 'in';
  const figure = inches ? `${round(length / 0.0254, 1e4)} in` : `${round(length * 1e3, 1e2)} mm`;
  return withFigure(text, 'intake.trumpet.length', figure);
}

const round = (value: number, steps: number) => Math.round(value * steps) / steps;

function change(id: string, part: Partial<SetUp>): void {
  put(kept.peek().map((one) => (one.id === id ? { ...one, ...part } : one)));
}

function put(next: readonly SetUp[]): void {
  kept.value = next;
  remember(STORE, next);
}

function stored(): SetUp[] {
  const found = recall(STORE);
  return Array.isArray(found) ? found.filter(isSetUp) : [];
}

function isSetUp(value: unknown): value is SetUp {
  const { id, name, file, text, points } = (value ?? {}) as Partial<SetUp>;
  const words = [id, name, file, text].every((one) => typeof one === 'string');
  return words && Array.isArray(points);
}
