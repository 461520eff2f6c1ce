/** What throttles, wide open, in a drawing of the intake: lines about its middle, x along the pipe, y across it. */
import { cos, sin } from '../elementary/angles.ts';
import type { ThrottleSpecification } from '../specification.ts';

/** Lines of points [m]; those that are closed end where they begin. */
type Outline = [number, number][][];

/** The path of what throttles; `place` says where in the drawing a point along and across the pipe lies [m]. */
export function throttlePath(
  throttle: ThrottleSpecification,
  place: (along: number, across: number) => string,
): string {
  const path = (points: readonly [number, number][]) =>
    points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${place(x, y)}`).join(' ');
  return OUTLINES[throttle.kind ?? 'butterfly'](throttle).map(path).join(' ');
}

const OUTLINES = { butterfly: plate, slide, barrel } satisfies Record<
  NonNullable<ThrottleSpecification['kind']> | 'butterfly',
  (throttle: ThrottleSpecification) => Outline
>;

function plate({ bore, shaftDiameter }: ThrottleSpecification): Outline {
  const reach = 0.47 * bore;
  return [
    [
      [-reach, 0],
      [reach, 0],
    ],
    circle(shaftDiameter / 2),
  ];
}

/** The plate with its hole over the bore: seen from the side, above and below it. */
function slide({ bore }: ThrottleSpecification): Outline {
  const [thick, reach] = [0.03 * bore, 0.8 * bore];
  const strip = (from: number, to: number): [number, number][] => [
    [-thick, from],
    [thick, from],
    [thick, to],
    [-thick, to],
    [-thick, from],
  ];
  return [strip(bore / 2, reach), strip(-bore / 2, -0.6 * bore)];
}

/** The barrel round the bore that goes through it. */
function barrel({ bore, barrelDiameter = bore }: ThrottleSpecification): Outline {
  return [circle(barrelDiameter / 2)];
}

function circle(radius: number): [number, number][] {
  const steps = 32;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = (2 * Math.PI * i) / steps;
    return [radius * cos(angle), radius * sin(angle)];
  });
}
