/** The cylinder with its crank. */
import type { Sketch } from './sketch.ts';

export const cylinder: Sketch = {
  name: 'cylinder, piston at both dead centres',
  walls:
    'M92 8 H148 V52 M92 8 V52 M94 24 H146 V33 H94 Z M120 28 L131 66 M120 74 L131 66 M106 74 a14 14 0 1 0 28 0 a14 14 0 1 0 -28 0 M20 24 a5 5 0 1 0 10 0 a5 5 0 1 0 -10 0 M35 24 a5 5 0 1 0 10 0 a5 5 0 1 0 -10 0 M50 24 a5 5 0 1 0 10 0 a5 5 0 1 0 -10 0',
  faint: 'M94 44 H146 V53 H94 Z',
  measures: {
    bore: [[92, 3, 148, 3]],
    stroke: [[156, 24, 156, 44]],
    rod: [[114, 30, 125, 68]],
    compressionRatio: [
      [84, 8, 84, 24],
      [76, 8, 76, 44],
    ],
    cylinders: [[20, 38, 60, 38]],
  },
  words: [
    { x: 178, y: 37, text: 'stroke' },
    { x: 40, y: 14, text: 'cylinders' },
  ],
};
