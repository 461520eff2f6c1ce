/** A valve in its seat, and its lift over the crank. */
import type { Sketch } from './sketch.ts';

/** The valve from above: head below, stem up; the curve beside it. */
const VALVE =
  'M8 34 H20 L26 46 M92 34 H80 L74 46 M20 56 H80 L72 48 Q54 44 53 30 V6 M20 56 L28 48 Q46 44 47 30 V6';
const CURVE = 'M120 70 C140 70 146 22 168 22 C190 22 196 70 216 70';

export function valve(kind: 'intake' | 'exhaust'): Sketch {
  const intake = kind === 'intake';
  return {
    name: `${kind} valve and its lift over the crank`,
    walls: `${VALVE} ${CURVE}`,
    faint: `M112 70 H228 M124 61 H212 M${intake ? 138 : 198} 12 V76 M${intake ? 196 : 140} 12 V76`,
    measures: {
      headDiameter: [[20, 64, 80, 64]],
      seatDiameter: [[26, 42, 74, 42]],
      count: [[8, 78, 92, 78]],
      maximum: [[168, 22, 168, 70]],
      checkLift: [[224, 61, 224, 70]],
      duration: [[132, 61, 205, 61]],
      open: [[132, 66, intake ? 138 : 140, 66]],
      close: [[intake ? 196 : 198, 66, 205, 66]],
      centre: [[intake ? 138 : 168, 16, intake ? 168 : 198, 16]],
    },
    words: [
      { x: intake ? 138 : 198, y: 86, text: 'TDC' },
      { x: intake ? 196 : 140, y: 86, text: 'BDC' },
    ],
  };
}
