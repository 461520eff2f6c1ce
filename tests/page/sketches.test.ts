/** Sketches of the form: every key that a form asks for has a dimension line, inside the frame. */
import { expect, test } from 'vitest';
import { FIGURE_GROUPS, OWN_FIGURES } from '../../sim/index.ts';
import { sketchOf } from '../../web/sketches/index.ts';
import { SIZE } from '../../web/sketches/sketch.ts';

/** What stands beside the intake, of which no group asks: the keys that say from where to where. */
const BESIDE = [
  ...['volume', 'runnerLength', 'runnerDiameter', 'mouthRadius', 'plateBore'].map(
    (name) => `plenum.${name}`,
  ),
  ...['inletLength', 'inletDiameter'].map((name) => `plenum.${name}`),
  ...['volume', 'snorkelLength', 'snorkelDiameter'].map((name) => `airbox.${name}`),
  ...['hoseLength', 'hoseBore', 'jetBore', 'volume', 'sensorHoseLength', 'sensorHoseBore'].map(
    (name) => `pressureBar.${name}`,
  ),
  ...['barVolume', 'hoseLength', 'hoseBore', 'nippleBore', 'valveBore'].map(
    (name) => `idle.${name}`,
  ),
  ...['fromValve', 'fromMouth', 'offset', 'tilt', 'cone'].map((name) => `injectors.each.0.${name}`),
  ...['length', 'arm', 'travel', 'cable.lever', 'cable.bends', 'shafts.0.plates'].map(
    (name) => `pedal.${name}`,
  ),
  ...['mouthHeight', 'pitch', 'bankApart'].map((name) => `sound.${name}`),
];

const paths = [
  ...[...FIGURE_GROUPS.flatMap(({ fields }) => fields), ...OWN_FIGURES].map(({ path }) => path),
  ...BESIDE,
];

test.each([...new Set(paths)])('%s has a line in its sketch', (path) => {
  const { sketch, line } = sketchOf(path)!;
  const lines = sketch.measures[line] ?? [];
  expect(lines.length).toBeGreaterThan(0);
  for (const [x1, y1, x2, y2] of lines) {
    expect(Math.hypot(x2 - x1, y2 - y1)).toBeGreaterThan(5);
    for (const x of [x1, x2]) expect(x >= 2 && x <= SIZE.width - 2).toBe(true);
    for (const y of [y1, y2]) expect(y >= 2 && y <= SIZE.height - 2).toBe(true);
  }
});
