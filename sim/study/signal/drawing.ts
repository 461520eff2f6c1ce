/** The bar drawn with its hoses: runners in a row with what throttles them, jets, hoses, bar and sensor. Not to scale. */

import type { LengthUnit } from '../../decision/lengthUnit.ts';
import { type Firing, firings } from '../../firings.ts';
import type { PressureBarSpecification } from '../../fittings.ts';
import { throttleOf } from '../../loss/throttles.ts';
import { lengthIn, sizeIn } from '../../report/figures.ts';
import { html, type Markup } from '../../report/markup.ts';
import { counted, fixed } from '../../report/numbers.ts';
import { told } from '../../report/quantities.ts';
import { throttlePath } from '../../report/throttleOutline.ts';
import type { EngineSpecification, ThrottleSpecification } from '../../specification.ts';
import { shiftsOf } from './hoses.ts';
import { VOLUME } from './tables.ts';

const WIDTH = 760;
const HEIGHT = 326;
/** Heights of runners, throttles and taps. */
const [TOP, THROTTLE, TAP, FOOT] = [136, 178, 224, 270];
const BAR = { left: 110, right: 720, top: 40, bottom: 74 };

export function barDrawing(
  engine: EngineSpecification,
  spec: PressureBarSpecification,
  unit: LengthUnit,
): { caption: string; picture: Markup } {
  const { count } = engine.cylinder;
  const { throttle } = engine.intake;
  const { noun } = throttleOf(throttle);
  const pitch = (BAR.right - 70) / count;
  const half = Math.min(22, 0.2 * pitch);
  const at = ({ number }: Firing) => 50 + (number - 0.5) * pitch;
  const order = firings(engine);
  const joined = shiftsOf(spec.hoses, count).map((late) => order[Math.round(late * count)]!);
  const picture = html`<svg class="drawing" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${described(spec, noun)}" fill="none" stroke="currentColor" stroke-width="2" font-size="14">
${order.map((one) => runner(one.number, at(one), half, throttle))}
${joined.map((one) => hose(at(one) + half, Math.min(44, 0.3 * pitch)))}
<rect x="${BAR.left}" y="${BAR.top}" width="${BAR.right - BAR.left}" height="${BAR.bottom - BAR.top}" rx="8"/>
<path d="M${BAR.left} ${(BAR.top + BAR.bottom) / 2} H${BAR.left - 44}"/>
<circle cx="${BAR.left - 58}" cy="${(BAR.top + BAR.bottom) / 2}" r="14"/>
${words(spec, unit, noun)}
</svg>`;
  return { caption: 'The bar and its hoses, not to scale', picture };
}

/** A runner from above: walls, what throttles it, its cylinder's number. */
function runner(number: number, x: number, half: number, throttle: ThrottleSpecification): Markup {
  const scale = (2 * half) / throttle.bore;
  return html`<path d="M${px(x - half)} ${TOP} V${FOOT} M${px(x + half)} ${TOP} V${FOOT}"/>
<path d="${throttlePath(throttle, (along, across) => `${px(x + across * scale)} ${px(THROTTLE + along * scale)}`)}"/>
<text x="${px(x)}" y="${FOOT + 20}" text-anchor="middle" stroke="none" fill="currentColor">${number}</text>`;
}

/** From a runner's side, by a jet, to the bar so far beside it. */
function hose(side: number, beside: number): Markup {
  const up = px(side + beside);
  return html`<path d="M${px(side)} ${TAP - 4} h6 M${px(side)} ${TAP + 4} h6"/>
<path d="M${px(side + 6)} ${TAP} C${up} ${TAP} ${up} ${TAP - 30} ${up} ${BAR.bottom}"/>`;
}

function words(spec: PressureBarSpecification, unit: LengthUnit, noun: string): Markup {
  const { hoseLength, hoseBore, jetBore, volume, sensorVolume, sensorHoseLength } = spec;
  const own =
    sensorHoseLength > 0 ? `on ${lengthIn(sensorHoseLength, unit)} of hose` : 'on the bar';
  const text = (x: number, y: number, anchor: string, said: string) =>
    html`<text x="${x}" y="${y}" text-anchor="${anchor}" stroke="none" fill="currentColor">${said}</text>`;
  const jets = jetBore < hoseBore ? `, jets of ${sizeIn(jetBore, unit)} at the runners` : '';
  return html`${text((BAR.left + BAR.right) / 2, (BAR.top + BAR.bottom) / 2 + 5, 'middle', `bar ${told(VOLUME, volume)}`)}
${text(10, 22, 'start', `sensor ${told(VOLUME, sensorVolume)}, ${own}`)}
${text(WIDTH / 2, HEIGHT - 6, 'middle', `${counted(spec.hoses, 'hose')} of ${lengthIn(hoseLength, unit)}, bore ${sizeIn(hoseBore, unit)}${jets}`)}
${text(10, THROTTLE + 4, 'start', `${noun}s`)}
${text(10, TAP + 4, 'start', 'taps')}`;
}

const described = (spec: PressureBarSpecification, noun: string) =>
  `Runners with their ${noun}s; behind them ${counted(spec.hoses, 'hose')} lead by jets to a bar with one sensor.`;

const px = (value: number) => fixed(value, 1);
