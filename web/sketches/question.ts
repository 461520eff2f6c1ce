/** What is asked: the day and the mixture, band and floors, the lengths to try and the room for them. */
import type { Sketch } from './sketch.ts';

export const day: Sketch = {
  name: 'air at the mouth, and the mixture',
  walls:
    'M24 14 a4 4 0 0 1 8 0 V54 a8 8 0 1 1 -8 0 Z M64 40 a18 18 0 1 0 36 0 a18 18 0 1 0 -36 0 M82 40 L94 30 M134 48 H226 M134 44 V52 M180 42 V54 M226 44 V52',
  faint: 'M40 24 h5 M40 36 h5 M40 48 h5 M60 76 L72 66 L84 74 L100 62 L116 76',
  measures: {
    temperature: [[28, 18, 28, 60]],
    pressure: [[66, 40, 98, 40]],
    altitude: [[104, 62, 104, 76]],
    humidity: [[52, 16, 52, 32]],
    lambda: [[160, 38, 180, 38]],
  },
  words: [
    { x: 134, y: 64, text: 'rich' },
    { x: 180, y: 64, text: '1' },
    { x: 226, y: 64, text: 'lean' },
  ],
};

export const band: Sketch = {
  name: 'the band on the axis of speed',
  walls: 'M20 8 V72 H226 M28 60 C70 52 84 24 130 18 C170 14 190 30 216 40',
  faint: 'M98 12 V72 M178 12 V72 M48 56 h20',
  measures: {
    from: [[98, 14, 98, 72]],
    to: [[178, 14, 178, 72]],
    lowest: [[28, 66, 28, 78]],
    highest: [[216, 66, 216, 78]],
    step: [[28, 82, 48, 82]],
    speed: [[58, 56, 58, 72]],
    leastEfficiency: [[48, 56, 68, 56]],
    leastTorque: [[48, 56, 68, 56]],
    mostLoss: [[72, 46, 72, 56]],
  },
  words: [
    { x: 138, y: 86, text: 'your band' },
    { x: 46, y: 46, text: 'floor' },
  ],
};

export const lengths: Sketch = {
  name: 'lengths to try, from the body face',
  walls: 'M24 20 V54 M24 28 H190 q8 0 8 -8 M24 46 H190 q8 0 8 8 M230 8 V66',
  faint: 'M80 20 V54 M118 20 V54 M156 20 V54',
  measures: {
    from: [[24, 62, 80, 62]],
    to: [[24, 72, 198, 72]],
    step: [[80, 37, 118, 37]],
    longest: [[24, 82, 218, 82]],
    room: [[24, 12, 230, 12]],
    shelf: [
      [24, 62, 118, 62],
      [24, 67, 156, 67],
    ],
  },
};
