/** What stands beside the intake: plenum and box, hoses to a bar, injectors, the linkage, mouths over the ground. */
import type { Sketch } from './sketch.ts';

/** Pipes below, flared where they begin in the room above them; the one pipe that feeds it at the right. */
const ROOM =
  'M24 10 H188 V22 H230 M230 40 H188 V52 H162 q-8 0 -8 8 V88 M134 88 V60 q0 -8 -8 -8 H96 q-8 0 -8 8 V88 M68 88 V60 q0 -8 -8 -8 H24 V10';

/** A room with pipes. A plate stands in the pipe that feeds a plenum. */
export function room(name: 'plenum' | 'box over the mouths'): Sketch {
  const plate = name === 'plenum' ? ' M203 24 L211 38' : '';
  return {
    name,
    walls: ROOM + plate,
    faint: 'M111 6 V56',
    measures: {
      volume: [
        [30, 16, 182, 16],
        [36, 16, 36, 48],
      ],
      runnerLength: [[168, 52, 168, 88]],
      runnerDiameter: [[134, 80, 154, 80]],
      mouthRadius: [[126, 60, 134, 60]],
      plateBore: [[207, 22, 207, 40]],
      inletLength: [[188, 48, 230, 48]],
      inletDiameter: [[222, 22, 222, 40]],
      snorkelLength: [[188, 48, 230, 48]],
      snorkelDiameter: [[222, 22, 222, 40]],
    },
    words: [{ x: 90, y: 34, text: name === 'plenum' ? 'plenum' : 'box' }],
  };
}

/** From the runners to a bar, and from there to a sensor or a valve. */
export const hoses: Sketch = {
  name: 'hoses from the runners to a bar',
  walls:
    'M20 74 H120 M20 88 H120 M42 74 V30 M60 74 V30 M42 66 h5 M60 66 h-5 M92 74 V30 M110 74 V30 M92 66 h5 M110 66 h-5 M30 30 H160 V10 H30 Z M160 16 H204 M160 24 H204 M204 8 H226 V32 H204 Z',
  faint: 'M14 81 H126',
  measures: {
    hoseLength: [[76, 30, 76, 74]],
    hoseBore: [[42, 46, 60, 46]],
    nippleBore: [[47, 66, 55, 66]],
    jetBore: [[47, 66, 55, 66]],
    volume: [[36, 20, 154, 20]],
    barVolume: [[36, 20, 154, 20]],
    sensorHoseLength: [[160, 36, 204, 36]],
    sensorHoseBore: [[182, 14, 182, 26]],
    sensorVolume: [[207, 20, 223, 20]],
    valveBore: [[182, 14, 182, 26]],
  },
  words: [{ x: 150, y: 84, text: 'runners' }],
};

/** An injector over the centre line of the pipe; the valve at the left, the mouth at the right. */
export const injector: Sketch = {
  name: 'an injector at the pipe',
  walls:
    'M30 52 H110 M138 52 H178 q12 0 12 -12 M30 80 H178 q12 0 12 8 M27 48 Q34 66 27 84 M30 66 H48 M124 30 L136 12 L148 20 L134 38 Z',
  faint: 'M20 66 H214 M126 36 L58 58 M130 38 L66 76 M190 36 V20',
  measures: {
    fromValve: [[30, 88, 128, 88]],
    fromMouth: [[128, 44, 190, 44]],
    offset: [[156, 34, 156, 66]],
    tilt: [[90, 50, 90, 66]],
    cone: [[66, 57, 76, 71]],
  },
};

/** Pedal, cable and the first shaft. */
export const linkage: Sketch = {
  name: 'pedal, cable and shaft',
  walls:
    'M34 44 L14 82 M10 78 L22 86 M34 44 L46 22 M30 44 a4 4 0 1 0 8 0 a4 4 0 1 0 -8 0 M46 22 C90 10 130 10 178 26 M178 26 L186 50 M182 50 a4 4 0 1 0 8 0 a4 4 0 1 0 -8 0 M172 50 a14 14 0 1 0 28 0 a14 14 0 1 0 -28 0',
  faint: 'M34 44 L36 86 M148 50 H226',
  measures: {
    length: [[42, 48, 22, 86]],
    arm: [[26, 40, 38, 18]],
    travel: [[14, 90, 36, 90]],
    lever: [[188, 24, 196, 48]],
    bends: [[90, 20, 130, 20]],
    plates: [[206, 40, 206, 60]],
  },
  words: [{ x: 112, y: 34, text: 'cable' }],
};

/** Mouths in the open over the ground, from the front. */
export const mouths: Sketch = {
  name: 'mouths over the ground',
  walls:
    'M10 84 H230 M32 34 a10 10 0 1 0 20 0 a10 10 0 1 0 -20 0 M66 34 a10 10 0 1 0 20 0 a10 10 0 1 0 -20 0 M154 34 a10 10 0 1 0 20 0 a10 10 0 1 0 -20 0 M188 34 a10 10 0 1 0 20 0 a10 10 0 1 0 -20 0',
  faint: 'M20 84 l-6 6 M60 84 l-6 6 M100 84 l-6 6 M140 84 l-6 6 M180 84 l-6 6 M220 84 l-6 6',
  measures: {
    mouthHeight: [[110, 34, 110, 84]],
    pitch: [[42, 14, 76, 14]],
    bankApart: [[76, 54, 164, 54]],
  },
};
