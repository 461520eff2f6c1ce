/** The trumpet and the bellmouth at its mouth. */
import { entryLossProjecting, entryLossRounded } from '../../loss/entryLoss.ts';
import { rimCorrection } from '../../loss/mouthLength.ts';
import type { BellmouthSpecification, TrumpetSpecification } from '../../specification.ts';
import { maybe, section } from '../leaf.ts';
import { quantityToText } from '../quantity.ts';
import type { Reading } from '../reading.ts';
import { checkPipe, diameterAt, pipeShape, resolvePipe } from './pipe.ts';

const TRUMPET = 'intake.trumpet';
const BELLMOUTH = `${TRUMPET}.bellmouth`;

/** Wall that a plain cut end is taken to have [m]; common practice, no source. */
const PLAIN_WALL = 0.0015;

/** Straight pipe that must remain below the flare [m]. */
export const LEAST_STRAIGHT = 0.005;

const FLARE = { limits: ['0 mm', '100 mm'], optional: true } as const;

const bellmouthSection = section(
  'The flare at the mouth; without it the mouth is a plain cut end. Give radius for a quarter round, or depth and overhang for a quarter ellipse.',
  {
    radius: maybe('length', 'Radius of a quarter-round lip: depth and overhang alike.', FLARE),
    depth: maybe('length', 'Depth of the flare along the axis.', FLARE),
    overhang: maybe('length', 'How far the rim stands out beyond the bore.', FLARE),
    entryLoss: maybe('ratio', 'Entry loss, in dynamic heads of the bore below the flare.', {
      limits: ['0', '1'],
      absent: {
        rule: 'from the smaller of depth and overhang over the bore; for a plain end, from a wall of 1.5 mm',
        why: 'Idelchik, Handbook of Hydraulic Resistance, diagrams 3-1 and 3-3',
      },
    }),
    endCorrection: maybe('ratio', 'Acoustic end correction beyond plane waves in the flare, in radii of the rim.', {
      limits: ['0', '3'],
      usual: ['0.5', '1.5'],
      absent: {
        rule: 'from depth and overhang of the flare over the bore',
        why: 'potential flow of flare and outside air, tests/exact/mouthLength.test.ts',
      },
    }),
  },
).optional();

export const trumpetSection = section(
  'The trumpet. Its length runs from the plane of the rim of the mouth to the face of the throttle body, bellmouth included; its diameter at the air end is the bore just below the flare.',
  {
    ...pipeShape('Length of the trumpet fitted now: the baseline. Rim plane to body face.', {
      longest: '2 m',
      wallTemperature: {
        rule: 'ambient temperature',
        why: 'the trumpet stands in the air stream; common practice, no source',
      },
      roughness: { value: '0.0015 mm', why: 'drawn tube, Moody 1944, from memory' },
    }),
    bellmouth: bellmouthSection,
  },
);

/** Depth of the flare [m]; 0 for a plain cut end. */
export function flareDepth(reading: Reading): number {
  return reading.given(`${BELLMOUTH}.radius`) ?? reading.given(`${BELLMOUTH}.depth`) ?? 0;
}

function flareOverhang(reading: Reading): number {
  return reading.given(`${BELLMOUTH}.radius`) ?? reading.given(`${BELLMOUTH}.overhang`) ?? 0;
}

/** Shortest trumpet that leaves a piece of straight pipe below the flare [m]. */
export function shortestTrumpet(reading: Reading): number {
  return flareDepth(reading) + LEAST_STRAIGHT;
}

export function checkTrumpet(reading: Reading): void {
  checkPipe(reading, TRUMPET);
  checkFlare(reading);
  checkTrumpetLength(reading, `${TRUMPET}.length`);
}

/** A trumpet must be longer than its own flare. */
export function checkTrumpetLength(reading: Reading, path: string): void {
  const length = reading.given(path);
  const shortest = shortestTrumpet(reading);
  if (length === undefined || length >= shortest) return;
  reading.problem(
    path,
    'the trumpet is shorter than its bellmouth',
    'lengths count from the rim plane to the body face, bellmouth included: make it longer or the flare less deep',
    `at least ${quantityToText(shortest, 'length')}`,
  );
}

function checkFlare(reading: Reading): void {
  if (!reading.hasSection(BELLMOUTH)) return;
  const round = reading.has(`${BELLMOUTH}.radius`);
  const sides = ['depth', 'overhang'].filter((key) => reading.has(`${BELLMOUTH}.${key}`)).length;
  const remedy = 'give radius alone for a quarter round, or depth and overhang for an ellipse';
  if (round && sides > 0) {
    reading.problem(`${BELLMOUTH}.radius`, 'the flare is described twice', remedy);
  } else if (!round && sides === 1) {
    reading.problem(BELLMOUTH, 'only one side of the flare is given', remedy);
  }
}

export function resolveTrumpet(reading: Reading, ambientTemperature: number): TrumpetSpecification {
  const pipe = resolvePipe(reading, TRUMPET, () => ambientTemperature);
  return { ...pipe, bellmouth: resolveBellmouth(reading) };
}

function resolveBellmouth(reading: Reading): BellmouthSpecification {
  const depth = flareDepth(reading);
  const overhang = flareOverhang(reading);
  if (depth === 0) reading.note(BELLMOUTH, 'plain cut end', 'no bellmouth given');
  const bore = diameterAt(reading, TRUMPET, 'AirEnd')!;
  const rounding = Math.min(depth, overhang) / bore;
  const entryLoss = () =>
    rounding > 0 ? entryLossRounded(rounding) : entryLossProjecting(PLAIN_WALL / bore);
  return {
    depth,
    overhang,
    entryLoss: reading.take(`${BELLMOUTH}.entryLoss`, entryLoss),
    endCorrection: reading.take(`${BELLMOUTH}.endCorrection`, () =>
      rimCorrection({ bore, depth, overhang }),
    ),
  };
}
