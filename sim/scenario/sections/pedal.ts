/** The way from the foot to the plates: pedal, cable, shafts with plates, links and springs. */
import type { Linkage, Shaft } from '../../linkage/linkage.ts';
import type { EngineSpecification } from '../../specification.ts';
import { list, maybe, optional, quantity, section, text } from '../key.ts';
import type { ScenarioView } from '../schema.ts';
import type { ViewOf } from '../view.ts';
import {
  checkSpring,
  radians,
  resolveLever,
  resolveSpring,
  springsList,
  squareAt,
} from './spring.ts';

const cableSection = section('The cable between pedal and first shaft.', {
  lever: quantity('length', 'From the centre of the first shaft to the cable.', {
    limits: ['5 mm', '200 mm'],
    usual: ['15 mm', '60 mm'],
    example: '30 mm',
  }),
  squareAt,
  bends: maybe('angle', 'All bends of the sheath together.', {
    limits: ['0 deg', '1440 deg'],
    usual: ['0 deg', '540 deg'],
    example: '180 deg',
    absent: { value: '180 deg', why: 'common practice, no source' },
  }),
  friction: maybe('ratio', 'Coefficient of friction in the sheath.', {
    limits: ['0', '0.6'],
    usual: ['0.05', '0.25'],
    absent: { value: '0.15', why: 'a lined sheath, 0.1 to 0.2; common practice, no source' },
  }),
});

const shaftSection = section('One shaft; without plates it is a cross shaft.', {
  name: text('What you call it.', 60),
  plates: quantity('ratio', 'Plates on it.', {
    limits: ['0', '16'],
    whole: true,
    example: '2',
  }),
  drivenBy: optional(
    text(
      'Name of the shaft, further up in the list, that a link joins it to; the one above if left out.',
      60,
    ),
  ),
  springs: springsList('Its own return springs.'),
});

export const pedalSection = optional(
  section('From the foot to the plates. Only the study of the pedal computes with it.', {
    length: quantity('length', 'From the pivot of the pedal to the middle of the pad.', {
      limits: ['30 mm', '600 mm'],
      usual: ['120 mm', '350 mm'],
      example: '220 mm',
    }),
    arm: quantity('length', 'From the pivot of the pedal to the cable.', {
      limits: ['5 mm', '400 mm'],
      usual: ['25 mm', '150 mm'],
      example: '70 mm',
    }),
    travel: maybe('length', 'Way of the pad to the floor or to a stop.', {
      limits: ['10 mm', '300 mm'],
      usual: ['40 mm', '120 mm'],
      example: '70 mm',
    }),
    friction: maybe('force', "Friction of the pedal's pivot, felt at the pad.", {
      limits: ['0 N', '100 N'],
      usual: ['0 N', '10 N'],
      absent: { value: '2 N', why: 'common practice, no source' },
    }),
    springs: springsList(
      'Springs on the pedal itself; they draw no plate shut, since a cable only pulls.',
    ),
    cable: cableSection,
    shafts: list(
      shaftSection,
      'Every shaft, the one that the cable pulls first; links turn all by equal angles.',
      { most: 16 },
    ),
    plateFriction: maybe('torque', 'Friction of bearings and seals, each plate.', {
      limits: ['0 Nm', '5 Nm'],
      usual: ['0 Nm', '0.1 Nm'],
      absent: { value: '0.02 Nm', why: 'common practice, no source' },
    }),
  }),
);

type PedalView = ScenarioView['pedal'];
type ShaftView = ViewOf<typeof shaftSection>;

export function checkPedal({ pedal, engine, intake }: ScenarioView): void {
  if (!pedal.here.present) return;
  const { rows } = pedal.shafts;
  for (const row of [pedal, ...rows]) row.springs.rows.forEach(checkSpring);
  rows.forEach((row, i) => {
    checkName(row, rows.slice(0, i));
    checkDriver(row, rows.slice(0, i));
  });
  checkPlates(rows, engine.cylinders.given);
  checkCentre(pedal, 90 - intake.throttle.closedAngle.assumed);
}

const named = (rows: readonly ShaftView[], name: string | undefined) =>
  rows.findIndex((row) => row.name.given === name);

function checkName({ name }: ShaftView, above: readonly ShaftView[]): void {
  if (name.given === undefined || named(above, name.given) < 0) return;
  name.problem('two shafts have this name', 'give each its own');
}

function checkDriver({ drivenBy }: ShaftView, above: readonly ShaftView[]): void {
  if (!drivenBy.present) return;
  if (above.length === 0) {
    drivenBy.problem('the cable pulls the first shaft', 'leave drivenBy away here');
  } else if (named(above, drivenBy.given) < 0) {
    const names = above.map(({ name }) => name.given).join(', ');
    drivenBy.problem('there is no such shaft above', 'name one further up in the list', names);
  }
}

function checkPlates(rows: readonly ShaftView[], cylinders: number | undefined): void {
  const plates = rows.reduce((sum, row) => sum + (row.plates.given ?? Number.NaN), 0);
  if (cylinders === undefined || !Number.isFinite(plates) || plates === cylinders) return;
  rows[0]!.plates.problem(
    `all shafts together carry ${plates} plates`,
    'a cylinder has one plate: count them shaft by shaft',
    `${cylinders}, as engine.cylinders`,
  );
}

/** How far from square the cable may pull [deg]; beyond it little arm is left. */
const MOST_SLANT = 75;

function checkCentre({ cable }: PedalView, opening: number): void {
  const at = cable.squareAt.given;
  if (at === undefined || (at <= MOST_SLANT && opening - at <= MOST_SLANT)) return;
  cable.squareAt.problem(
    'the lever of the cable comes near its dead centre',
    'turn the lever on its shaft so that the cable stands square to it near half travel',
    `${opening - MOST_SLANT} deg to ${MOST_SLANT} deg`,
  );
}

/** Pedal to plates as data, or undefined where the file says nothing of them. */
export function resolvePedal(
  { pedal }: ScenarioView,
  { intake }: EngineSpecification,
): Linkage | undefined {
  if (!pedal.here.present) return undefined;
  const { cable, travel, shafts } = pedal;
  const plateFriction = pedal.plateFriction.take();
  return {
    pedal: {
      length: pedal.length.given!,
      arm: pedal.arm.given!,
      ...(travel.given !== undefined && { travel: travel.given }),
      friction: pedal.friction.take(),
      springs: pedal.springs.rows.map(resolveSpring),
    },
    cable: {
      lever: resolveLever(cable.lever, cable.squareAt),
      bends: radians(cable.bends.take()),
      friction: cable.friction.take(),
    },
    shafts: shafts.rows.map((row, i) => resolveShaft(row, i, shafts.rows, plateFriction)),
    opening: radians(90 - intake.throttle.closedAngle),
  };
}

function resolveShaft(
  { name, plates, drivenBy, springs }: ShaftView,
  place: number,
  rows: readonly ShaftView[],
  plateFriction: number,
): Shaft {
  const driver = drivenBy.present ? named(rows, drivenBy.given) : place - 1;
  if (place > 0 && !drivenBy.present) drivenBy.note(rows[driver]!.name.given!, 'the shaft above');
  return {
    name: name.given!,
    plates: plates.given!,
    ...(place > 0 && { drivenBy: driver }),
    friction: plates.given! * plateFriction,
    springs: springs.rows.map(resolveSpring),
  };
}
