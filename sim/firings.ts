/** Which cylinder fires when. */
import { CYCLE, wrapAngle } from './crankAngle.ts';
import type { EngineSpecification } from './specification.ts';

/** A cylinder and when it fires. */
export interface Firing {
  /** Place in the firing order, from 0. */
  place: number;
  /** Number of the cylinder, from 1. */
  number: number;
  /** Crank angle behind the first [deg]. */
  angle: number;
}

/** Every cylinder in the order they fire. */
export function firings({ firing, cylinder: { count } }: EngineSpecification): Firing[] {
  return Array.from({ length: count }, (_, place) => {
    const turn = firing?.[place];
    return {
      place,
      number: turn?.cylinder ?? place + 1,
      angle: turn?.angle ?? (place * CYCLE) / count,
    };
  });
}

/** How far one fires behind another [deg]. */
export const behind = (one: Firing, other: Firing): number => wrapAngle(one.angle - other.angle);

/** Whether every cylinder fires as far behind the last as all do, to a thousandth of a degree. */
export function firesEvenly(spec: EngineSpecification): boolean {
  const turns = firings(spec);
  return turns.every(({ angle }, i) => Math.abs(angle - (i * CYCLE) / turns.length) < 1e-3);
}
