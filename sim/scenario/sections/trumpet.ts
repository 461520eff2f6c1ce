/** The trumpet and the bellmouth at its mouth. */
import { entryLossProjecting, entryLossRounded } from '../../loss/entryLoss.ts';
import { rimCorrection } from '../../loss/mouthLength.ts';
import type { BellmouthSpecification, TrumpetSpecification } from '../../specification.ts';
import { maybe, oneOf, optional, section } from '../key.ts';
import { quantityToText } from '../quantity.ts';
import type { LeafPlace, ViewOf } from '../view.ts';
import { diameterAt, PIPE_DIAMETER, pipeKeys, resolvePipe } from './pipe.ts';

/** Wall that a plain cut end is taken to have [m]; common practice, no source. */
const PLAIN_WALL = 0.0015;

/** Straight pipe that must remain below the flare [m]. */
export const LEAST_STRAIGHT = 0.005;

const FLARE = { limits: ['0 mm', '100 mm'] } as const;
const DRAWN = { ...FLARE, doubt: { half: '1 mm', why: 'drawing against the part' } } as const;

const bellmouthSection = section(
  'The flare at the mouth; without it the mouth is a plain cut end. Give radius for a quarter round, or depth and overhang for a quarter ellipse.',
  {
    radius: maybe('length', 'Radius of a quarter-round lip: depth and overhang alike.', {
      ...FLARE,
      doubt: { half: '1 mm', why: 'radius gauge at a lip' },
      form: { group: 'Intake', label: 'Bellmouth radius' },
    }),
    depth: maybe('length', 'Depth of the flare along the axis.', DRAWN),
    overhang: maybe('length', 'How far the rim stands out beyond the bore.', DRAWN),
    entryLoss: maybe('ratio', 'Entry loss, in dynamic heads of the bore below the flare.', {
      limits: ['0', '1'],
      absent: {
        rule: 'from the smaller of depth and overhang over the bore; for a plain end, from a wall of 1.5 mm',
        why: 'Idelchik, Handbook of Hydraulic Resistance, diagrams 3-1 and 3-3',
      },
      doubt: { half: '70 %', why: 'handbooks differ two to four times' },
    }),
    endCorrection: maybe(
      'ratio',
      'Acoustic end correction beyond plane waves in the flare, in radii of the rim.',
      {
        limits: ['0', '3'],
        usual: ['0.5', '1.5'],
        absent: {
          rule: 'from depth and overhang of the flare over the bore',
          why: 'potential flow of flare and outside air, tests/exact/mouthLength.test.ts',
        },
        doubt: {
          half: '0.05',
          why: 'a rim rolled back adds up to 0.045 bore radii, loss/mouthLength.ts',
        },
      },
    ),
  },
  oneOf(
    'the flare',
    [['depth', 'overhang'], ['radius']],
    'give radius alone for a quarter round, or depth and overhang for an ellipse',
    true,
  ),
);

export const trumpetSection = section(
  'The trumpet. Its length runs from the plane of the rim of the mouth to the face of the throttle body, bellmouth included; its diameter at the air end is the bore just below the flare.',
  {
    ...pipeKeys('Length of the trumpet fitted now: the baseline. Rim plane to body face.', {
      longest: '2 m',
      usual: { length: ['20 mm', '800 mm'], wall: ['-20 degC', '100 degC'] },
      wallTemperature: {
        rule: 'ambient temperature',
        why: 'the trumpet stands in the air stream; common practice, no source',
      },
      roughness: { value: '0.0015 mm', why: 'drawn tube, Moody 1944, from memory' },
      doubt: { diameter: { half: '0.2 mm', why: 'vernier in a spun tube' } },
      form: { group: 'Intake', length: 'Trumpet fitted now', bore: 'Trumpet bore' },
    }),
    bellmouth: optional(bellmouthSection),
  },
  PIPE_DIAMETER,
);

export type TrumpetView = ViewOf<typeof trumpetSection>;

/** Shortest trumpet that leaves a piece of straight pipe below the flare [m]. */
export function shortestTrumpet({ bellmouth: { radius, depth } }: TrumpetView): number {
  return (radius.given ?? depth.given ?? 0) + LEAST_STRAIGHT;
}

export function checkTrumpet(trumpet: TrumpetView): void {
  checkTrumpetLength(trumpet, trumpet.length);
}

/** A trumpet must be longer than its own flare. */
export function checkTrumpetLength(trumpet: TrumpetView, length: LeafPlace): void {
  const shortest = shortestTrumpet(trumpet);
  if (length.given === undefined || length.given >= shortest) return;
  length.problem(
    'the trumpet is shorter than its bellmouth',
    'lengths count from the rim plane to the body face, bellmouth included: make it longer or the flare less deep',
    `at least ${quantityToText(shortest, 'length')}`,
  );
}

export function resolveTrumpet(
  trumpet: TrumpetView,
  ambientTemperature: number,
): TrumpetSpecification {
  const wall = trumpet.wallTemperature.take(() => ambientTemperature);
  return { ...resolvePipe(trumpet, wall), bellmouth: resolveBellmouth(trumpet) };
}

function resolveBellmouth(trumpet: TrumpetView): BellmouthSpecification {
  const { here, radius, depth: deep, overhang: wide, ...rest } = trumpet.bellmouth;
  const depth = radius.given ?? deep.given ?? 0;
  const overhang = radius.given ?? wide.given ?? 0;
  if (depth === 0) here.note('plain cut end', 'no bellmouth given');
  const bore = diameterAt(trumpet, 'AirEnd')!;
  const rounding = Math.min(depth, overhang) / bore;
  const entryLoss = () =>
    rounding > 0 ? entryLossRounded(rounding) : entryLossProjecting(PLAIN_WALL / bore);
  return {
    depth,
    overhang,
    entryLoss: rest.entryLoss.take(entryLoss),
    endCorrection: rest.endCorrection.take(() => rimCorrection({ bore, depth, overhang })),
  };
}
