/** Where the parts of the intake lie along its drawing, valve left, mouth right. */
import { handRange } from '../state/hand.ts';
import type { Picture } from '../state/picture.ts';

/** Room at both ends [mm]. */
const EDGE = 12;

/** Places along the drawing [mm]; `width` holds the longest trumpet that may be tried. */
export function pipeSpan({ scenario }: Picture) {
  const { intake } = scenario.engine;
  const seat = EDGE;
  const flange = seat + (intake.runner.length + intake.port.length) * 1e3;
  const face = flange + intake.throttle.length * 1e3;
  return { seat, flange, face, edge: EDGE, width: face + handRange.value.most * 1e3 + EDGE };
}
