/** Which sketch shows a key, and which of its dimension lines. */
import { hoses, injector, linkage, mouths, room } from './beside.ts';
import { body } from './body.ts';
import { cylinder } from './engine.ts';
import { pipe } from './pipe.ts';
import { band, day, lengths } from './question.ts';
import type { Sketch } from './sketch.ts';
import { valve } from './valve.ts';

const tail = pipe({ name: 'tail', left: 'joint', right: 'open' });
const primary = pipe({ name: 'primary', left: 'flange', right: 'joint' });

/** Sketches by the beginnings of keys; the first that fits is taken. */
const SKETCHES: readonly (readonly [string, Sketch])[] = [
  ['engine.', cylinder],
  ['intake.trumpet.', pipe({ name: 'trumpet', left: 'flange', right: 'mouth' })],
  ['intake.runner.', pipe({ name: 'runner', left: 'flange', right: 'flange' })],
  ['intake.port.', pipe({ name: 'intake port', left: 'valve', right: 'flange' })],
  ['intake.throttle.', body],
  ['intake.valves.', valve('intake')],
  ['exhaust.valves.', valve('exhaust')],
  ['exhaust.port.', pipe({ name: 'exhaust port', left: 'valve', right: 'flange' })],
  ['exhaust.primary.', primary],
  ['exhaust.step.', primary],
  ['exhaust.joined', primary],
  ['exhaust.secondary.', pipe({ name: 'secondary', left: 'joint', right: 'joint' })],
  ['exhaust.collector.', tail],
  ['exhaust.tail.', tail],
  ['ambient.', day],
  ['fuel.', day],
  ['speeds.', band],
  ['target.', band],
  ['sweep.lengths.', lengths],
  ['fit.', lengths],
  ['plenum.', room('plenum')],
  ['airbox.', room('box over the mouths')],
  ['pressureBar.', hoses],
  ['idle.', hoses],
  ['injectors.', injector],
  ['pedal.', linkage],
  ['sound.', mouths],
];

/** Keys whose line has another name than their last part. */
const LINES: Record<string, string> = { 'speeds.from': 'lowest', 'speeds.to': 'highest' };

/** The sketch of what a key belongs to, whether or not it has a line there. */
export const sketchFor = (path: string): Sketch | undefined =>
  SKETCHES.find(([begin]) => path.startsWith(begin))?.[1];

/** The sketch of a key and the name of its line; undefined where no line of a sketch shows it. */
export function sketchOf(path: string): { sketch: Sketch; line: string } | undefined {
  const sketch = sketchFor(path);
  const last = path
    .replace(/\.(\*|\d+)$/, '')
    .split('.')
    .at(-1)!;
  const line = LINES[path] ?? last;
  return sketch?.measures[line] && { sketch, line };
}
