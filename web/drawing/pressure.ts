/** Pressure along the intake as colour. */
import type { Trace } from '../../sim/index.ts';
import type { Picture } from '../state/picture.ts';

/** Pressure of the still air before the mouths, and how far the wave goes from it at most [Pa]. */
export function stillAir({ scenario }: Picture, { wave }: Trace) {
  const still = scenario.engine.intake.feed.pressure;
  let reach = 1;
  for (const row of wave.pressure) {
    for (const p of row) reach = Math.max(reach, Math.abs(p - still));
  }
  return { still, reach };
}

/** The row of the trace at a crank angle [deg]. */
export function rowAt({ crankAngle }: Trace, angle: number): number {
  return Math.max(
    0,
    crankAngle.findLastIndex((at) => at <= angle),
  );
}

/** The colour at -1 to 1 between low, still and high. */
export function mixed([low, still, high]: readonly [string, string, string], at: number): string {
  const share = Math.round(Math.min(Math.abs(at), 1) * 100);
  return `color-mix(in srgb, ${at < 0 ? low : high} ${share}%, ${still})`;
}
