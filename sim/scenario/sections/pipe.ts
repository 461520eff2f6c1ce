/** What every pipe of the scenario has in common: length, diameters, wall. */
import type { PipeSpecification } from '../../specification.ts';
import { type Absent, maybe, quantity } from '../leaf.ts';
import type { Reading } from '../reading.ts';

/** Diameters that a pipe may have. */
const DIAMETER = { limits: ['5 mm', '300 mm'], optional: true } as const;

/** Keys of a pipe, to spread into a section. */
export function pipeShape(
  length: string,
  defaults: { longest: string; wallTemperature: Absent; roughness: Absent },
) {
  return {
    length: quantity('length', length, { limits: ['1 mm', defaults.longest] }),
    diameter: maybe(
      'length',
      'Inside diameter of a straight pipe; instead of the two ends.',
      DIAMETER,
    ),
    diameterAirEnd: maybe(
      'length',
      'Inside diameter at the end nearer the open air; with diameterValveEnd, for a taper.',
      DIAMETER,
    ),
    diameterValveEnd: maybe(
      'length',
      'Inside diameter at the end nearer the valve; with diameterAirEnd, for a taper.',
      DIAMETER,
    ),
    wallTemperature: maybe('temperature', 'Temperature of the wall.', {
      limits: ['220 K', '1300 K'],
      absent: defaults.wallTemperature,
    }),
    roughness: maybe('length', 'Equivalent sand roughness of the wall.', {
      limits: ['0 mm', '2 mm'],
      absent: defaults.roughness,
    }),
    bendLoss: maybe('ratio', 'Loss of all bends together, in dynamic heads.', {
      limits: ['0', '5'],
      usual: ['0', '1.5'],
      absent: { value: '0', why: 'no bend given' },
    }),
  };
}

export function checkPipe(reading: Reading, path: string): void {
  if (!reading.hasSection(path)) return;
  const straight = reading.has(`${path}.diameter`);
  const ends = [`${path}.diameterAirEnd`, `${path}.diameterValveEnd`];
  const tapered = ends.filter((end) => reading.has(end)).length;
  if (straight && tapered > 0) {
    reading.problem(
      `${path}.diameter`,
      'the diameter is given twice',
      'give diameter for a straight pipe, or diameterAirEnd and diameterValveEnd for a taper',
    );
  } else if (!straight && tapered < 2) {
    reading.problem(
      path,
      tapered === 0 ? 'the diameter is missing' : 'only one end of the taper is given',
      'give diameter for a straight pipe, or diameterAirEnd and diameterValveEnd for a taper',
    );
  }
}

/** Diameter of a pipe at one end [m], or undefined where it is not given. */
export function diameterAt(reading: Reading, path: string, end: 'AirEnd' | 'ValveEnd') {
  return reading.given(`${path}.diameter`) ?? reading.given(`${path}.diameter${end}`);
}

export function resolvePipe(
  reading: Reading,
  path: string,
  wallTemperature?: () => number,
): PipeSpecification {
  return {
    length: reading.take(`${path}.length`),
    outerDiameter: diameterAt(reading, path, 'AirEnd')!,
    innerDiameter: diameterAt(reading, path, 'ValveEnd')!,
    wallTemperature: reading.take(`${path}.wallTemperature`, wallTemperature),
    roughness: reading.take(`${path}.roughness`),
    bendLoss: reading.take(`${path}.bendLoss`),
  };
}
