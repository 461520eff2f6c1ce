/** The throttle body with its plate; the trumpet's face at the right. */
import type { Sketch } from './sketch.ts';

export const body: Sketch = {
  name: 'throttle body, trumpet side right',
  walls:
    'M60 22 H180 M60 58 H180 M60 12 V22 M60 58 V68 M180 12 V22 M180 58 V68 M92 41.5 L148 38.5 M115 40 a5 5 0 1 0 10 0 a5 5 0 1 0 -10 0',
  faint: 'M46 40 H194 M120 45 V78',
  measures: {
    bore: [[78, 22, 78, 58]],
    length: [[60, 86, 180, 86]],
    shaftPosition: [[120, 76, 180, 76]],
    shaftDiameter: [[130, 34, 130, 46]],
  },
};
