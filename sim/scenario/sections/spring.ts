/** One spring of the throttle linkage, on a shaft or on the pedal. */
import { type Coil, forceRate, INDEX_RANGE, momentRate } from '../../linkage/coil.ts';
import type { Lever, Spring } from '../../linkage/linkage.ts';
import { choice, list, maybe, oneOf, optional, section, text } from '../key.ts';
import { quantityToText } from '../quantity.ts';
import type { LeafPlace, Place, ViewOf } from '../view.ts';

const ANGLE = { limits: ['-60 deg', '180 deg'], example: '40 deg' } as const;

/** Where a pull stands square to its lever. */
export const squareAt = maybe(
  'angle',
  'How far it has turned from rest when the pull stands square to the lever; without it the arm stays, as on a quadrant.',
  ANGLE,
);

const springSection = section(
  'One spring, or several alike side by side.',
  {
    name: text('What you call it.', 60),
    kind: choice(['compression', 'tension', 'torsion'], 'How it is loaded.'),
    count: maybe('ratio', 'How many alike; each can break alone.', {
      limits: ['1', '8'],
      whole: true,
      absent: { value: '1', why: 'one spring' },
    }),
    arm: maybe(
      'length',
      'From the centre of the shaft or pivot to where it pulls; of compression and tension springs.',
      { limits: ['2 mm', '400 mm'], usual: ['8 mm', '150 mm'], example: '25 mm' },
    ),
    squareAt,
    preload: maybe(
      'force',
      'Force of each at rest, plates shut; of compression and tension springs.',
      { limits: ['0 N', '2000 N'], usual: ['1 N', '300 N'], example: '15 N' },
    ),
    windUp: maybe('angle', 'How far it is wound up at rest, plates shut; of torsion springs.', {
      limits: ['0 deg', '3600 deg'],
      usual: ['0 deg', '1080 deg'],
      example: '90 deg',
    }),
    rate: maybe('stiffness', 'Rate of each as measured; or give wire, coil and coils.', {
      limits: ['0.01 N/mm', '500 N/mm'],
      usual: ['0.1 N/mm', '20 N/mm'],
    }),
    wire: maybe('length', 'Diameter of the wire.', {
      limits: ['0.2 mm', '12 mm'],
      usual: ['0.8 mm', '4 mm'],
      example: '1.6 mm',
    }),
    coil: maybe('length', 'Mean diameter of the coil: outside less one wire.', {
      limits: ['1 mm', '150 mm'],
      usual: ['6 mm', '40 mm'],
      example: '12 mm',
    }),
    coils: maybe('ratio', 'Active coils: all that are free to move.', {
      limits: ['0.5', '300'],
      usual: ['2', '60'],
      example: '9.5',
    }),
    legs: maybe('length', 'Free legs of a torsion spring, both together.', {
      limits: ['0 mm', '500 mm'],
      absent: { value: '0 mm', why: 'legs held close to the coil' },
    }),
    material: choice(
      ['drawn', 'tempered', 'stainless'],
      'Wire: drawn unalloyed (EN 10270-1), oil hardened and tempered (EN 10270-2), stainless 1.4310 (EN 10270-3).',
      { value: 'drawn', why: 'common practice, no source' },
    ),
  },
  oneOf(
    'the rate',
    [['rate'], ['wire', 'coil', 'coils']],
    'give rate as measured, or wire, coil and coils',
  ),
);

export const springsList = (description: string) =>
  optional(list(springSection, description, { most: 12 }));

export type SpringView = ViewOf<typeof springSection>;

/** Keys that a kind of spring needs, and those that mean nothing with it. */
const KEYS = {
  torsion: { needed: ['windUp'], idle: ['arm', 'squareAt', 'preload', 'rate'] },
  straight: { needed: ['arm', 'preload'], idle: ['windUp', 'legs'] },
} as const;

export function checkSpring(spring: SpringView): void {
  const kind = spring.kind.given;
  if (kind === undefined) return;
  const { needed, idle } = KEYS[kind === 'torsion' ? 'torsion' : 'straight'];
  for (const name of idle) checkIdle(spring[name], kind);
  for (const name of needed) {
    if (spring[name].present) continue;
    spring.here.problem(
      `${name} of a ${kind} spring is missing`,
      `add ${name}, for example: ${spring[name].key.example}`,
    );
  }
  checkIndex(spring);
}

function checkIdle(place: Place, kind: string): void {
  if (!place.present) return;
  const remedy = 'leave it away; a torsion spring has windUp and wire, the others arm and preload';
  place.problem(`a ${kind} spring has no such figure`, remedy);
}

/** Least spring index that can be wound at all; common practice, no source. */
const LEAST_INDEX = 2;

function checkIndex({ wire, coil }: SpringView): void {
  if (wire.given === undefined || coil.given === undefined) return;
  const index = coil.given / wire.given;
  const [low, high] = INDEX_RANGE;
  if (index < LEAST_INDEX) {
    coil.problem(
      'the coil is too narrow for its wire',
      'measure the coil outside and take one wire off',
      `at least ${quantityToText(LEAST_INDEX * wire.given, 'length')}`,
    );
  } else if (index < low || index > high) {
    coil.warn(
      `the coil is ${Number(index.toPrecision(3))} wires wide; the formulas hold from ${low} to ${high}`,
    );
  }
}

export function resolveSpring(spring: SpringView): Spring {
  const kind = spring.kind.given!;
  const coil = resolveCoil(spring);
  const torsion = kind === 'torsion';
  return {
    name: spring.name.given!,
    kind,
    count: spring.count.take(),
    rate: spring.rate.given ?? (torsion ? momentRate(coil!) : forceRate(coil!)),
    preload: torsion ? momentRate(coil!) * radians(spring.windUp.given!) : spring.preload.given!,
    ...(!torsion && { lever: resolveLever(spring.arm, spring.squareAt) }),
    ...(coil && { coil }),
  };
}

function resolveCoil({ wire, coil, coils, legs, material, kind }: SpringView): Coil | undefined {
  if (wire.given === undefined) return undefined;
  return {
    material: material.take(),
    wire: wire.given,
    diameter: coil.given!,
    coils: coils.given!,
    legs: kind.given === 'torsion' ? legs.take() : 0,
  };
}

export function resolveLever(radius: LeafPlace, square: LeafPlace): Lever {
  return {
    radius: radius.given!,
    ...(square.given !== undefined && { squareAt: radians(square.given) }),
  };
}

export const radians = (degrees: number): number => (degrees * Math.PI) / 180;
