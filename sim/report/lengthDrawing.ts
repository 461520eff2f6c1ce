/** The drawing of what a length means, in the proportions of the engine's own intake. */

import type { LengthUnit } from '../decision/lengthUnit.ts';
import { cos, sin } from '../elementary/angles.ts';
import { throttleOf } from '../loss/throttles.ts';
import type { IntakeSpecification } from '../specification.ts';
import { lengthIn } from './figures.ts';
import { html, type Markup } from './markup.ts';
import { fixed } from './numbers.ts';
import { throttlePath } from './throttleOutline.ts';

const WIDTH = 760;
const HEIGHT = 240;
const MARGIN = 40;
const AXIS = 96;

/** Longitudinal section, valve left, from the valve to the rim plane; `length` is the trumpet's [m]. */
export function lengthDrawing(
  intake: IntakeSpecification,
  length: number,
  unit: LengthUnit = 'mm',
): Markup {
  const { trumpet, throttle, runner, port } = intake;
  const total = length + throttle.length + runner.length + port.length;
  const scale = (WIDTH - 2 * MARGIN) / total;
  /** Place of what lies so far behind the rim plane [m]. */
  const across = (x: number) => WIDTH - MARGIN - x * scale;
  const at = (x: number) => px(across(x));
  const wide = Math.max(trumpet.outerDiameter / 2 + trumpet.bellmouth.overhang, throttle.bore / 2);
  const stretch = Math.min(scale, (AXIS - 34) / wide);
  const points = wallOf(intake, length);
  const wall = (side: 1 | -1) =>
    points
      .map(([x, r], i) => `${i === 0 ? 'M' : 'L'}${at(x)} ${px(AXIS - side * r * stretch)}`)
      .join(' ');
  const plate = length + throttle.shaftPosition;
  const description =
    `Section of the intake. The length to cut, ${lengthIn(length, unit)}, runs from the rim plane of ` +
    'the mouth on the right to the face of the throttle body, bellmouth included.';
  return html`<svg class="drawing" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${description}">
<path class="wall" d="${wall(1)}"/>
<path class="wall" d="${wall(-1)}"/>
<line class="centre" x1="${at(0)}" x2="${at(total)}" y1="${AXIS}" y2="${AXIS}"/>
<path class="plate" d="${throttlePath(throttle, (x, y) => `${px(across(plate) - x * stretch)} ${px(AXIS - y * stretch)}`)}"/>
<line class="limit" x1="${at(0)}" x2="${at(0)}" y1="20" y2="${HEIGHT - 44}"/>
<line class="limit" x1="${at(length)}" x2="${at(length)}" y1="20" y2="${HEIGHT - 44}"/>
<line class="measure" x1="${at(0)}" x2="${at(length)}" y1="${HEIGHT - 54}" y2="${HEIGHT - 54}"/>
<path class="arrow" d="M${at(0)} ${HEIGHT - 54} l-10 -4 v8 z M${at(length)} ${HEIGHT - 54} l10 -4 v8 z"/>
<text x="${at(0)}" y="${HEIGHT - 32}" text-anchor="end" class="strong">length to cut ${lengthIn(length, unit)}, bellmouth included</text>
<text x="${at(0)}" y="14" text-anchor="end" class="upper">rim plane</text>
<text x="${at(length)}" y="14" text-anchor="middle" class="upper">body face</text>
<text x="${at(plate)}" y="32" text-anchor="middle">${throttleOf(throttle).noun}</text>
<line class="leader" x1="${at(plate)}" x2="${at(plate)}" y1="38" y2="${AXIS - 6}"/>
<text x="${at(total)}" y="14" class="upper">valve</text>
</svg>`;
}

/** The wall from the rim to the valve: distance behind the rim plane and radius [m]. */
function wallOf({ trumpet, throttle, runner, port }: IntakeSpecification, length: number) {
  const { depth, overhang } = trumpet.bellmouth;
  const pieces = [throttle, runner, port].filter((one) => one.length > 0);
  const points = [...flare(depth, overhang, trumpet.outerDiameter / 2)];
  points.push([length, trumpet.innerDiameter / 2]);
  let x = length;
  for (const piece of pieces) {
    const [from, to] =
      'bore' in piece ? [piece.bore, piece.bore] : [piece.outerDiameter, piece.innerDiameter];
    points.push([x, from / 2]);
    x += piece.length;
    points.push([x, to / 2]);
  }
  return points;
}

/** The quarter ellipse from the rim (x = 0) to the bore (x = depth). */
function flare(depth: number, overhang: number, bore: number): [number, number][] {
  if (depth === 0) return [[0, bore]];
  const steps = 12;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = ((Math.PI / 2) * i) / steps;
    return [depth * (1 - cos(angle)), bore + overhang * (1 - sin(angle))];
  });
}

function px(value: number): string {
  return fixed(value, 1);
}
