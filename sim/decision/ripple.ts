/**
 * How far apart the waves stand on a curve against speed. Echoes in a pipe that is shut at the valve
 * and open at the mouth come 120 f1 / n times in two turns of the crank; one more or less of them is
 *
 *   dn = n^2 / (120 f1),   f1 = c / (4 L),   c = sqrt(1.4 R T)
 *
 *   n   speed [rpm]                   f1  quarter-wave frequency of mouth to valve [Hz]
 *   L   mouth to valve [m]            c   speed of sound in the air breathed [m/s]
 *   T   its temperature [K]           R   gas constant of dry air, 287 J/(kg K)
 *
 * Quarter wave: any text on acoustics, e.g. Kinsler et al. (from memory). End corrections are left
 * out: it says only how closely to look first.
 */
import type { EngineSpecification } from '../specification.ts';

/** Speeds a ripple that tell it from a smooth curve [-]; what is left open is found by refinement. */
const SPEEDS_A_RIPPLE = 4;

/** Distance of neighbouring waves on the curve at a speed [rpm]. */
export function rippleSpacing({ intake }: EngineSpecification, speed: number): number {
  const { trumpet, throttle, runner, port, feed } = intake;
  const length = trumpet.length + throttle.length + runner.length + port.length;
  const quarterWave = Math.sqrt(1.4 * 287 * feed.temperature) / (4 * length);
  return (speed * speed) / (120 * quarterWave);
}

/** Widest distance of speeds that sees the ripple at all [rpm]. */
export function widestStep(engine: EngineSpecification, speed: number): number {
  return rippleSpacing(engine, speed) / SPEEDS_A_RIPPLE;
}
