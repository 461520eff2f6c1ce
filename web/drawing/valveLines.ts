/**
 * Lifts and the pressure in the cylinder beside the wave, growing from the valve's side: in the overlap and up to
 * closing they say what the wave meets. Places in per cent of a picture whose crank angle runs upwards.
 */
import type { Trace } from '../../sim/index.ts';
import type { Window } from './wavePixels.ts';

/** Share of the width that full lift takes [%]. */
const WIDTH = 24;

/** Pressure in the cylinder is drawn to this many times the reach of the port's; beyond, gas exchange is over. */
const BEYOND = 1;

export interface ValveLines {
  intake: string;
  exhaust: string;
  cylinder: string;
  /** Heights of the greatest lift of the intake and of where the cylinder's line ends [% from below]. */
  lifted: number;
  closed: number;
}

/** @param still pressure of the outside air, and the greatest difference to it that is coloured [Pa] */
export function valveLines(trace: Trace, { from, to }: Window, still: number): ValveLines {
  const { crankAngle, intakeLift, exhaustLift, cylinderPressure, stations } = trace;
  const shown = crankAngle.flatMap((angle, i) => (angle >= from && angle <= to ? [i] : []));
  const up = (angle: number) => (100 * (angle - from)) / (to - from);
  const full = Math.max(...intakeLift, ...exhaustLift);
  const port = stations.find(({ name }) => name === 'port')!.pressure;
  const reach = Math.max(1, ...shown.map((i) => Math.abs(port[i]! - still)));
  const line = (xs: readonly number[], drawn: (i: number) => boolean) =>
    runs(shown.filter(drawn))
      .map(
        (run) =>
          `M${run.map((i) => `${xs[i]!.toFixed(2)} ${(100 - up(crankAngle[i]!)).toFixed(2)}`).join(' L')}`,
      )
      .join(' ');
  const lift = (values: readonly number[]) =>
    line(
      values.map((value) => (WIDTH * value) / full),
      (i) => values[i]! > 0,
    );
  const inside = cylinderPressure.map((p) => (p - still) / reach);
  const top = shown.reduce((best, i) => (intakeLift[i]! > intakeLift[best]! ? i : best), shown[0]!);
  const near = (i: number) => Math.abs(inside[i]!) <= BEYOND;
  return {
    intake: lift(intakeLift),
    exhaust: lift(exhaustLift),
    cylinder: line(
      inside.map((p) => (WIDTH * (1 + p / BEYOND)) / 2),
      near,
    ),
    lifted: up(crankAngle[top]!),
    closed: up(crankAngle[shown.filter(near).at(-1) ?? top]!),
  };
}

/** Neighbours together. */
function runs(indices: readonly number[]): number[][] {
  const all: number[][] = [];
  for (const i of indices) {
    const last = all.at(-1);
    if (last?.at(-1) === i - 1) last.push(i);
    else all.push([i]);
  }
  return all;
}
