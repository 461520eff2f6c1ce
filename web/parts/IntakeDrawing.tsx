/**
 * The intake cut along its axis, drawn to scale: valve, port, throttle body and the trumpet at the
 * chosen length. On the rule beneath, which the length slider follows, the lengths are marked.
 */
import { millimetres } from '../format.ts';
import { ROLE_NAME } from '../look.ts';
import { hand, handRange } from '../state/hand.ts';
import { isFull, type Picture } from '../state/picture.ts';

/** Room around the drawing and for the rule [mm]. */
const EDGE = 12;
const RULE = 30;

/** Where things lie along the drawing [mm]. */
export function drawingSpan({ scenario }: Picture) {
  const { intake } = scenario.engine;
  const seat = EDGE;
  const flange = seat + (intake.runner.length + intake.port.length) * 1e3;
  const face = flange + intake.throttle.length * 1e3;
  return { seat, flange, face, width: face + handRange.value.most * 1e3 + EDGE };
}

export function IntakeDrawing({ picture, length }: { picture: Picture; length: number }) {
  const { intake } = picture.scenario.engine;
  const { seat, flange, face, width } = drawingSpan(picture);
  const { trumpet, throttle } = intake;
  const widest = Math.max(
    trumpet.outerDiameter * 500 + trumpet.bellmouth.overhang * 1e3,
    throttle.bore * 500 + 7,
  );
  const middle = widest + 4;
  return (
    <svg
      class={hand.value === undefined ? 'intake resting' : 'intake'}
      viewBox={`0 0 ${width} ${2 * middle + RULE}`}
      role="img"
      aria-label={`The intake drawn to scale with a trumpet of ${millimetres(length)}`}
    >
      <g transform={`translate(0 ${middle})`}>
        <line class="axis" x1={EDGE / 2} x2={width - EDGE / 2} />
        <path class="pipe" d={pipesPath(picture, flange)} />
        <path class="valve" d={valvePath(picture, seat)} />
        <path class="body" d={bodyPath(picture, flange, face)} />
        <ellipse
          class="plate"
          cx={face - throttle.shaftPosition * 1e3}
          rx={throttle.bore * 450}
          ry={1.4}
        />
        <path class="trumpet" d={trumpetPath(picture, length, face)} />
      </g>
      <Rule picture={picture} top={2 * middle + 8} />
    </svg>
  );
}

function Rule({ picture, top }: { picture: Picture; top: number }) {
  const { face } = drawingSpan(picture);
  const most = handRange.value.most * 1e3;
  const ticks = Array.from({ length: Math.floor(most / 10) + 1 }, (_, i) => 10 * i);
  return (
    <g transform={`translate(${face} ${top})`} class="rule">
      <line x2={most} />
      {ticks.map((mm) => (
        <g key={mm} transform={`translate(${mm} 0)`}>
          <line y2={mm % 50 === 0 ? 5 : 2.5} />
          {mm % 50 === 0 && (
            <text y={15} text-anchor="middle">
              {mm}
            </text>
          )}
        </g>
      ))}
      {picture.curves.map((curve) => (
        <path
          key={curve.role}
          class={`mark ${curve.role} ${isFull(curve) ? 'full' : 'preview'}`}
          d="M0 0 l-3.2 -6 h6.4 z"
          transform={`translate(${curve.length * 1e3} 0)`}
        >
          <title>{`${ROLE_NAME[curve.role]}: ${millimetres(curve.length)}`}</title>
        </path>
      ))}
    </g>
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

function bodyPath({ scenario }: Picture, from: number, to: number): string {
  const r = scenario.engine.intake.throttle.bore * 500;
  const wall = (s: 1 | -1) => `M${from} ${s * r} H${to}`;
  const flanges = (s: 1 | -1) => `M${from} ${s * r} v${7 * s} M${to} ${s * r} v${7 * s}`;
  return `${mirrored(wall)} ${mirrored(flanges)}`;
}

/** Runner, if any, and port, from the body's flange towards the valve. */
function pipesPath({ scenario }: Picture, flange: number): string {
  const { runner, port } = scenario.engine.intake;
  const pipes = [runner, port].filter(({ length }) => length > 0);
  return mirrored((s) => {
    let x = flange;
    return pipes
      .map((pipe) => {
        const start = x;
        x -= pipe.length * 1e3;
        return `M${start} ${s * pipe.outerDiameter * 500} L${x} ${s * pipe.innerDiameter * 500}`;
      })
      .join(' ');
  });
}

/** A sign for the valve, its head as wide as the port's end. */
function valvePath({ scenario }: Picture, seat: number): string {
  const r = scenario.engine.intake.port.innerDiameter * 500;
  return `M${seat - 3} ${-r} Q${seat + 3} 0 ${seat - 3} ${r} M${seat} 0 H${seat + 26}`;
}
