/**
 * The intake cut along its axis, drawn to scale: bellmouth and trumpet at the chosen length, throttle
 * body, port and valve. The mouths of the three lengths are marked on the rule beneath.
 */
import { millimetres } from '../format.ts';
import { handRange } from '../state/hand.ts';
import type { Picture } from '../state/picture.ts';
import { ROLE_NAME } from '../views/look.ts';

/** Room around the drawing [mm]. */
const EDGE = 14;
const RULE = 34;

export function IntakeDrawing({ picture, length }: { picture: Picture; length: number }) {
  const { intake } = picture.scenario.engine;
  const most = handRange.value.most * 1e3;
  const body = intake.throttle.length * 1e3;
  const tail = (intake.runner.length + intake.port.length) * 1e3;
  const width = most + body + tail + 2 * EDGE;
  const { bellmouth } = intake.trumpet;
  const rim = intake.trumpet.outerDiameter * 500 + bellmouth.overhang * 1e3;
  const middle = rim + 6;
  const face = EDGE + most;
  const at = (value: number) => face - value * 1e3;
  return (
    <svg
      class="intake"
      viewBox={`0 0 ${width} ${2 * middle + RULE}`}
      role="img"
      aria-label={`The intake drawn to scale with a trumpet of ${millimetres(length)}`}
    >
      <g transform={`translate(0 ${middle})`}>
        <line class="axis" x1={EDGE / 2} x2={width - EDGE / 2} y1={0} y2={0} />
        <path class="trumpet" d={trumpetPath(picture, length, face)} />
        <path class="body" d={bodyPath(picture, face)} />
        <ellipse
          class="plate"
          cx={face + intake.throttle.shaftPosition * 1e3}
          cy={0}
          rx={intake.throttle.bore * 500 * 0.92}
          ry={1.6}
        />
        <path class="pipe" d={pipesPath(picture, face + body)} />
        <path class="valve" d={valvePath(picture, face + body + tail)} />
      </g>
      <g transform={`translate(0 ${2 * middle + 4})`} class="rule">
        <line x1={EDGE} x2={face} y1={0} y2={0} />
        {ticks(most).map((mm) => (
          <g key={mm} transform={`translate(${face - mm} 0)`}>
            <line y2={mm % 50 === 0 ? 6 : 3} />
            {mm % 50 === 0 && (
              <text y={17} text-anchor="middle">
                {mm}
              </text>
            )}
          </g>
        ))}
        {picture.curves.map((curve) => (
          <path
            key={curve.role}
            class={`mark ${curve.role}`}
            d="M0 0 l-4 -7 h8 z"
            transform={`translate(${at(curve.length)} 0)`}
          >
            <title>{`${ROLE_NAME[curve.role]}: ${millimetres(curve.length)}`}</title>
          </path>
        ))}
      </g>
    </svg>
  );
}

const ticks = (most: number) => Array.from({ length: Math.floor(most / 10) + 1 }, (_, i) => 10 * i);

/** Both walls of a piece given by its upper half, mirrored about the axis. */
function mirrored(upper: string, lower: string): string {
  return `${upper} ${lower}`;
}

function trumpetPath({ scenario }: Picture, length: number, face: number): string {
  const { trumpet } = scenario.engine.intake;
  const mouth = face - length * 1e3;
  const { depth, overhang } = trumpet.bellmouth;
  const [d, o] = [depth * 1e3, overhang * 1e3];
  const [ra, rb] = [trumpet.outerDiameter * 500, trumpet.innerDiameter * 500];
  const wall = (s: 1 | -1) =>
    `M${mouth} ${s * (ra + o)} A${Math.max(d, 0.1)} ${Math.max(o, 0.1)} 0 0 ${s > 0 ? 1 : 0} ${mouth + d} ${s * ra} L${face} ${s * rb}`;
  return mirrored(wall(-1), wall(1));
}

function bodyPath({ scenario }: Picture, face: number): string {
  const { throttle } = scenario.engine.intake;
  const r = throttle.bore * 500;
  const end = face + throttle.length * 1e3;
  const flange = (x: number) => `M${x} ${-r - 7} V${-r} M${x} ${r} V${r + 7}`;
  return `M${face} ${-r} H${end} M${face} ${r} H${end} ${flange(face)} ${flange(end)}`;
}

function pipesPath({ scenario }: Picture, start: number): string {
  const { runner, port } = scenario.engine.intake;
  const wall = (s: 1 | -1) =>
    [runner, port]
      .filter(({ length }) => length > 0)
      .reduce(
        ({ x, d }, pipe) => {
          const end = x + pipe.length * 1e3;
          return {
            x: end,
            d: `${d} M${x} ${s * pipe.outerDiameter * 500} L${end} ${s * pipe.innerDiameter * 500}`,
          };
        },
        { x: start, d: '' },
      ).d;
  return mirrored(wall(-1), wall(1));
}

/** A sign for the valve, its head as wide as the port's end. */
function valvePath({ scenario }: Picture, seat: number): string {
  const r = scenario.engine.intake.port.innerDiameter * 500;
  return `M${seat + 3} ${-r} Q${seat - 1} 0 ${seat + 3} ${r} M${seat + 1} 0 H${seat - 26}`;
}
