/** A curve drawn over a plot whose axes are known, so that it follows the hand without drawing the plot again. */
import { useRef } from 'preact/hooks';
import type { Curve, Standing } from '../state/picture.ts';
import { lengthText } from '../state/unit.ts';
import { useSize } from './size.ts';

interface OverCurveProps {
  curve: Curve;
  /** Values of the curve, and of the length fitted now, in the unit of the axis. */
  ys: readonly number[];
  fitted: readonly number[];
  xRange: readonly [number, number];
  yRange: readonly [number, number];
  /** Room around the axes [px]. */
  margin: { l: number; r: number; t: number; b: number };
  /** How far its name is moved down [px]. */
  label: number;
}

export function OverCurve(props: OverCurveProps) {
  const { l, r, t, b } = props.margin;
  const frame = useRef<HTMLDivElement>(null);
  const size = useSize(frame);
  return (
    <div class="over-curve" style={{ inset: `${t}px ${r}px ${b}px ${l}px` }} ref={frame}>
      {size && <Drawn {...props} size={size} />}
    </div>
  );
}

/** Few paths for all of it: it is drawn at every move of the hand. */
function Drawn({ size, ...props }: OverCurveProps & { size: readonly [number, number] }) {
  const known = placed(props, size).filter(({ y }) => Number.isFinite(y));
  const last = known[known.length - 1];
  const of = (standing: (one: Standing) => boolean) =>
    known.filter((one) => standing(one.standing));
  const exact = known.every(({ standing }) => standing !== 'preview');
  return (
    <>
      <svg aria-hidden="true">
        <Hatch />
        <path class="losses" fill={`url(#${HATCH})`} d={lossesPath(known)} />
        <path class={exact ? 'tried' : 'tried estimate'} d={linePath(known)} />
        <path class="dots" d={dotsPath(of((standing) => standing === 'full'))} />
        <path
          class="dots hollow"
          d={dotsPath(of((standing) => standing !== 'full' && standing !== 'preview'))}
        />
      </svg>
      {last && (
        <span
          class="over-name"
          style={{ left: `${last.x + 8}px`, top: `${last.y + props.label}px` }}
        >
          yours {lengthText(props.curve.length)}
        </span>
      )}
    </>
  );
}

const HATCH = 'lost-by-yours';

/** What is lost is hatched, so that it does not rest on colour. */
function Hatch() {
  return (
    <pattern
      id={HATCH}
      width={7}
      height={7}
      patternUnits="userSpaceOnUse"
      patternTransform="rotate(45)"
    >
      <rect class="lost-ground" width={7} height={7} />
      <path class="lost-line" d="M0 0 V7" />
    </pattern>
  );
}

/** The points of the curve [px]. */
function placed(props: OverCurveProps, [width, height]: readonly [number, number]): At[] {
  const { curve, ys, fitted, xRange, yRange } = props;
  const x = (speed: number) => (width * (speed - xRange[0])) / (xRange[1] - xRange[0]);
  const y = (value: number) => (height * (yRange[1] - value)) / (yRange[1] - yRange[0]);
  const even = (at: number) => Math.round(at * 10) / 10;
  return curve.points.map(({ speed, standing }, i) => ({
    standing,
    x: even(x(speed)),
    y: even(y(ys[i]!)),
    base: even(y(fitted[i]!)),
  }));
}

interface At {
  standing: Standing;
  x: number;
  y: number;
  base: number;
}

/** A lozenge at each. */
const dotsPath = (points: readonly At[]) =>
  points.map(({ x, y }) => `M${x - 5} ${y} l5 -5 l5 5 l-5 5 z`).join(' ');

const linePath = (points: readonly At[]) =>
  points.length === 0 ? '' : `M${points.map(({ x, y }) => `${x} ${y}`).join(' L')}`;

/** Ground between the curve and the one fitted now, where it lies below. */
function lossesPath(points: readonly At[]): string {
  const known = points.filter(({ base }) => Number.isFinite(base));
  if (known.length < 2) return '';
  const top = known.map(({ x, base }) => `${x} ${base}`);
  const under = crossed(known).map(({ x, y, base }) => `${x} ${Math.max(y, base)}`);
  return `M${top.join(' L')} L${under.reverse().join(' L')} Z`;
}

/** With the points in which the two cross. */
function crossed(points: readonly At[]): At[] {
  return points.flatMap((point, i) => {
    const before = points[i - 1];
    if (!before) return [point];
    const [a, b] = [before.y - before.base, point.y - point.base];
    if (a * b >= 0) return [point];
    const t = a / (a - b);
    const y = before.base + t * (point.base - before.base);
    return [{ ...point, x: before.x + t * (point.x - before.x), y, base: y }, point];
  });
}
