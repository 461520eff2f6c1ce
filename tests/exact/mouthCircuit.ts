/**
 * The circuit of a mouth (sim/loss/mouthRadiation.ts) alone in steps of time, without gas dynamics: backward
 * difference of C, trapezoidal rule of w, as sim/step/mouth.ts takes them.
 */
import type { MouthImpedance } from '../../sim/loss/mouthRadiation.ts';

/** What a mouth remembers from step to step; all 0 at rest. */
export interface MouthState {
  /** p [Pa]. */
  pressure: number;
  /** w [m/s]. */
  velocity: number;
}

/** Pressure at the end of a step against velocity there: p = slope u + offset [Pa s/m], [Pa]. */
export function mouthResponse(
  { inertance, resistance, compliance }: MouthImpedance,
  { pressure, velocity }: MouthState,
  dt: number,
): { slope: number; offset: number } {
  const stored = compliance / dt;
  const moved = dt / (2 * inertance);
  const slope = 1 / (stored + 1 / resistance + moved);
  return { slope, offset: slope * ((stored - moved) * pressure - velocity) };
}

/** Takes the pressure found at the end of the step into the state. */
export function advanceMouth(
  { inertance }: MouthImpedance,
  state: MouthState,
  pressure: number,
  dt: number,
): void {
  state.velocity += (dt / (2 * inertance)) * (state.pressure + pressure);
  state.pressure = pressure;
}
