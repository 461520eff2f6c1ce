/**
 * The intake cut along its axis, drawn to scale, valve at the left: port, throttle body and the trumpet at
 * the length in question. Its mouth is taken and moved with the pointer; the air in it has the colour of its
 * pressure at the moment on show.
 */
import { useRef } from 'preact/hooks';
import { METRES, type Scenario, type Trace, throttlePath } from '../../sim/index.ts';
import { pipeSpan } from '../drawing/pipeSpan.ts';
import { mixed, rowAt, stillAir } from '../drawing/pressure.ts';
import { type Look, ROLE_NAME, type Role } from '../look.ts';
import { hand, handRange, letGo, moveHand } from '../state/hand.ts';
import { isFull, type Picture } from '../state/picture.ts';
import { unit } from '../state/scenario.ts';
import { look } from '../state/theme.ts';
import { lengthText } from '../state/unit.ts';
import { moment } from '../state/wave.ts';
import { useSize } from './size.ts';

/** Room for the rule [mm]. */
const RULE = 26;

interface DrawingProps {
  picture: Picture;
  length: number;
  /** A cycle of this very length, where there is one. */
  trace: Trace | undefined;
}

export function IntakeDrawing({ picture, length, trace }: DrawingProps) {
  const { intake } = picture.scenario.engine;
  const { seat, flange, face, edge, width } = pipeSpan(picture);
  const { trumpet, throttle } = intake;
  const widest = Math.max(
    trumpet.outerDiameter * 500 + trumpet.bellmouth.overhang * 1e3,
    throttle.bore * 500 + 7,
  );
  const middle = widest + 4;
  const height = 2 * middle + RULE;
  const drawing = useRef<SVGSVGElement>(null);
  const [across, up] = useSize(drawing) ?? [width, height];
  return (
    <svg
      ref={drawing}
      class={classOf(picture)}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`The intake drawn to scale with a trumpet of ${lengthText(length)}`}
      {...taking(face, width)}
    >
      <g transform={`translate(0 ${middle})`}>
        {trace && <Air picture={picture} trace={trace} length={length} />}
        <line class="axis" x1={edge / 2} x2={width - edge / 2} />
        <Fixed scenario={picture.scenario} seat={seat} flange={flange} face={face} />
        <path class="trumpet" d={trumpetPath(picture, length, face)} />
        <Grip at={face + length * 1e3} reach={widest} />
      </g>
      <Rule picture={picture} top={2 * middle + 7} pixel={Math.max(width / across, height / up)} />
    </svg>
  );
}

interface FixedProps {
  scenario: Scenario;
  seat: number;
  flange: number;
  face: number;
}

/** From the valve to the face of the body; its own part, for it stays while the mouth moves. */
function Fixed({ scenario, seat, flange, face }: FixedProps) {
  const { throttle } = scenario.engine.intake;
  const middle = face - throttle.shaftPosition * 1e3;
  return (
    <>
      <path class="pipe" d={pipesPath(scenario, flange)} />
      <path class="valve" d={valvePath(scenario, seat)} />
      <path class="body" d={bodyPath(scenario, flange, face)} />
      <path class="plate" d={throttlePath(throttle, (x, y) => `${middle + x * 1e3} ${-y * 1e3}`)} />
    </>
  );
}

/** What the mouth is taken by [mm]; placed without a transform, which a browser pays for anew at every move. */
function Grip({ at, reach }: { at: number; reach: number }) {
  return (
    <g class="grip">
      <rect class="grip-reach" x={at - 9} y={-reach} width={18} height={2 * reach} />
      <rect class="grip-bar" x={at - 1.6} y={-12} width={3.2} height={24} rx={1.6} />
      <path d={`M${at - 4.5} -3.5 l-3 3.5 l3 3.5 M${at + 4.5} -3.5 l3 3.5 l-3 3.5`} />
    </g>
  );
}

/** At rest the trumpet has the colour of the answer, once there is one. */
function classOf({ verdict }: Picture): string {
  if (hand.value !== undefined) return 'intake';
  return verdict?.standing === 'full' ? 'intake resting' : 'intake resting open';
}

/** Pointer events that take the mouth along; the drawing is as wide as its frame. */
function taking(face: number, width: number) {
  const take = ({ clientX, currentTarget }: PointerEvent) => {
    const box = (currentTarget as Element).getBoundingClientRect();
    moveHand((((clientX - box.left) / box.width) * width - face) / 1e3, true);
  };
  return {
    onPointerDown: (event: PointerEvent) => {
      if (!(event.target as Element).closest('.grip')) return;
      (event.currentTarget as Element).setPointerCapture(event.pointerId);
    },
    onPointerMove: (event: PointerEvent) => {
      const held = (event.currentTarget as Element).hasPointerCapture(event.pointerId);
      if (held && event.buttons === 1) take(event);
    },
    onLostPointerCapture: letGo,
  };
}

/** The inside of the pipe in the colours of its pressure. */
function Air({ picture, trace, length }: { picture: Picture; trace: Trace; length: number }) {
  const { seat, face } = pipeSpan(picture);
  const row = trace.wave.pressure[rowAt(trace, moment.value)]!;
  const rim = face + length * 1e3;
  const { still, reach } = stillAir(picture, trace);
  const colours: Look['wave'] = look.value.wave;
  return (
    <>
      <linearGradient id="air" gradientUnits="userSpaceOnUse" x1={rim} x2={seat}>
        {trace.wave.distance.map((at, i) => (
          <stop
            key={at}
            offset={(at * 1e3) / (rim - seat)}
            stop-color={mixed(colours, (row[i]! - still) / reach)}
          />
        ))}
      </linearGradient>
      <path class="air" fill="url(#air)" d={insidePath(picture, length)} />
    </>
  );
}

interface RuleProps {
  picture: Picture;
  top: number;
  /** What a pixel of the screen is in the drawing [mm]. */
  pixel: number;
}

function Rule({ picture, top, pixel }: RuleProps) {
  const { face } = pipeSpan(picture);
  return (
    <g transform={`translate(${face} ${top})`} class="rule">
      <Ticks most={handRange.value.most * 1e3} inches={unit.value === 'in'} pixel={pixel} />
      {picture.curves.map((curve) => (
        <Mark key={curve.role} role={curve.role} length={curve.length} full={isFull(curve)} />
      ))}
    </g>
  );
}

function Mark({ role, length, full }: { role: Role; length: number; full: boolean }) {
  return (
    <path
      class={`mark ${role} ${full ? 'full' : 'preview'}`}
      d={`M${length * 1e3} 0 l-3.2 -6 h6.4 z`}
    >
      <title>{`${ROLE_NAME[role]}: ${lengthText(length)}`}</title>
    </path>
  );
}

/** Height of its figures [px]. */
const FIGURES = 11;

interface TicksProps {
  most: number;
  inches: boolean;
  pixel: number;
}

/** Its own part, for it stays while the mouth moves. */
function Ticks({ most, inches, pixel }: TicksProps) {
  const [step, named] = inches ? [METRES.in * 250, 4] : [10, 5];
  const ticks = Array.from({ length: Math.floor(most / step) + 1 }, (_, i) => i);
  return (
    <>
      <line x2={most} />
      {ticks.map((i) => (
        <g key={i} transform={`translate(${i * step} 0)`}>
          <line y2={i % named === 0 ? 4 : 2} />
          {i % named === 0 && (
            <text y={5 + 0.75 * FIGURES * pixel} font-size={FIGURES * pixel} text-anchor="middle">
              {inches ? i / 4 : i * 10}
            </text>
          )}
        </g>
      ))}
    </>
  );
}

/** A wall above and the same below the axis. */
const mirrored = (wall: (side: 1 | -1) => string) => `${wall(-1)} ${wall(1)}`;

function trumpetPath({ scenario }: Picture, length: number, face: number): string {
  const { trumpet } = scenario.engine.intake;
  const mouth = face + length * 1e3;
  const depth = Math.max(trumpet.bellmouth.depth * 1e3, 0.1);
  const overhang = Math.max(trumpet.bellmouth.overhang * 1e3, 0.1);
  const [air, body] = [trumpet.outerDiameter * 500, trumpet.innerDiameter * 500];
  return mirrored(
    (s) =>
      `M${face} ${s * body} L${mouth - depth} ${s * air} ` +
      `A${depth} ${overhang} 0 0 ${s > 0 ? 1 : 0} ${mouth} ${s * (air + overhang)}`,
  );
}

function bodyPath(scenario: Scenario, from: number, to: number): string {
  const r = scenario.engine.intake.throttle.bore * 500;
  const wall = (s: 1 | -1) => `M${from} ${s * r} H${to}`;
  const flanges = (s: 1 | -1) => `M${from} ${s * r} v${7 * s} M${to} ${s * r} v${7 * s}`;
  return `${mirrored(wall)} ${mirrored(flanges)}`;
}

/** Ends of runner, if any, and port, from the body's flange towards the valve [mm]. */
function pipeEnds(scenario: Scenario, flange: number): [number, number][][] {
  const { runner, port } = scenario.engine.intake;
  let x = flange;
  return [runner, port]
    .filter(({ length }) => length > 0)
    .map(({ length, outerDiameter, innerDiameter }) => {
      const start = x;
      x -= length * 1e3;
      return [
        [start, outerDiameter * 500],
        [x, innerDiameter * 500],
      ];
    });
}

function pipesPath(scenario: Scenario, flange: number): string {
  const ends = pipeEnds(scenario, flange);
  return mirrored((s) =>
    ends.map(([a, b]) => `M${a![0]} ${s * a![1]} L${b![0]} ${s * b![1]}`).join(' '),
  );
}

/** The outline of the air from the rim to the valve and back. */
function insidePath(picture: Picture, length: number): string {
  const { trumpet, throttle } = picture.scenario.engine.intake;
  const { flange, face } = pipeSpan(picture);
  const mouth = face + length * 1e3;
  const depth = trumpet.bellmouth.depth * 1e3;
  const wide = trumpet.outerDiameter * 500;
  const wall = [
    [mouth, wide + trumpet.bellmouth.overhang * 500],
    [mouth - depth, wide],
    [face, trumpet.innerDiameter * 500],
    [face, throttle.bore * 500],
    [flange, throttle.bore * 500],
    ...pipeEnds(picture.scenario, flange).flat(),
  ] as [number, number][];
  const back = wall.map(([x, r]): [number, number] => [x, -r]).reverse();
  return `M${[...wall, ...back].map(([x, r]) => `${x} ${r}`).join(' L')} Z`;
}

/** A sign for the valve, its head as wide as the port's end. */
function valvePath(scenario: Scenario, seat: number): string {
  const r = scenario.engine.intake.port.innerDiameter * 500;
  return `M${seat - 3} ${-r} Q${seat + 3} 0 ${seat - 3} ${r} M${seat} 0 H${seat + 26}`;
}
