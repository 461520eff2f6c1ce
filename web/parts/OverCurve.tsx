/** A curve drawn over a plot whose axes are known, so that it follows the hand without drawing the plot again. */
import type { Curve } from '../state/picture.ts';
import { lengthText } from '../state/unit.ts';

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

/** The axes as the drawing counts them. */
const SIZE = 1000;

export function OverCurve(props: OverCurveProps) {
  const { curve, ys, fitted, xRange, yRange, margin, label } = props;
  const x = (speed: number) => (SIZE * (speed - xRange[0])) / (xRange[1] - xRange[0]);
  const y = (value: number) => (SIZE * (yRange[1] - value)) / (yRange[1] - yRange[0]);
  const points = curve.points.map(({ speed, standing }, i) => ({
    standing,
    x: x(speed),
    y: y(ys[i]!),
    base: y(fitted[i]!),
  }));
  const known = points.filter((point) => Number.isFinite(point.y));
  const last = known[known.length - 1];
  const exact = known.every(({ standing }) => standing !== 'preview');
  const { l, r, t, b } = margin;
  return (
    <div class="over-curve" style={{ inset: `${t}px ${r}px ${b}px ${l}px` }}>
      <svg viewBox={`0 0 ${SIZE} ${SIZE}`} preserveAspectRatio="none" aria-hidden="true">
        <path class="losses" d={lossesPath(known)} />
        <path class={exact ? 'tried' : 'tried estimate'} d={linePath(known)} />
      </svg>
      {known
        .filter(({ standing }) => standing !== 'preview')
        .map((point) => (
          <i
            key={point.x}
            class={point.standing === 'full' ? 'dot' : 'dot hollow'}
            style={{ left: `${point.x / 10}%`, top: `${point.y / 10}%` }}
          />
        ))}
      {last && (
        <span class="over-name" style={{ top: `calc(${last.y / 10}% + ${label}px)` }}>
          yours {lengthText(curve.length)}
        </span>
      )}
    </div>
  );
}

interface At {
  x: number;
  y: number;
  base: number;
}

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
    return [{ x: before.x + t * (point.x - before.x), y, base: y }, point];
  });
}
