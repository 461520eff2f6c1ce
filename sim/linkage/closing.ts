/**
 * Whether every plate is still drawn shut with any single part gone: one spring, one link, the cable.
 *
 * Shafts that links still join share their springs and their friction. With the cable whole, the first of
 * them also draws the pedal up where its own springs do not: the drag at the cable grows through the
 * bends by e^(mu theta). Springs of the pedal draw no plate shut, for a cable only pulls. The least of
 * the torque that is left counts, wherever in the travel it lies.
 */
import { anglesOf, frictionOf, pedalAngle, sheathFactor } from './effort.ts';
import type { Linkage, Shaft, Spring } from './linkage.ts';
import { armAt, torqueOf } from './torque.ts';

/** One shaft with one part gone. */
export interface Closing {
  /** What is gone, in words; '' with everything whole. */
  without: string;
  shaft: string;
  /** Where in the travel least is left [rad from shut]. */
  angle: number;
  /** There: torque of the springs that still reach the shaft, and what resists them [N m]. */
  springs: number;
  resistance: number;
  /** What is left [N m]; the plate is drawn shut where it is above 0. */
  left: number;
}

/** A linkage as it is without some part. */
interface Broken {
  without: string;
  linkage: Linkage;
  /** Place of the shaft whose link is gone. */
  link?: number;
  cable: boolean;
}

/** Every shaft whole, then with each single part gone. */
export function closings(linkage: Linkage): Closing[] {
  return [{ without: '', linkage, cable: true }, ...brokenOnce(linkage)].flatMap(closingsOf);
}

function brokenOnce(linkage: Linkage): Broken[] {
  const { shafts, pedal } = linkage;
  const onShafts = shafts.flatMap((shaft, i) =>
    lessOne(shaft.springs, shaft.name).map(({ without, springs }) => ({
      without,
      linkage: { ...linkage, shafts: shafts.with(i, { ...shaft, springs }) },
      cable: true,
    })),
  );
  const onPedal = lessOne(pedal.springs, 'pedal').map(({ without, springs }) => ({
    without,
    linkage: { ...linkage, pedal: { ...pedal, springs } },
    cable: true,
  }));
  const links = shafts.flatMap(({ name, drivenBy }, link) => {
    if (drivenBy === undefined) return [];
    return [{ without: `link ${shafts[drivenBy]!.name} - ${name}`, linkage, link, cable: true }];
  });
  return [...onShafts, ...onPedal, ...links, { without: 'cable', linkage, cable: false }];
}

/** The springs of a place with one of them gone, each in turn. */
function lessOne(springs: readonly Spring[], place: string) {
  return springs.map((spring, i) => ({
    without: `${spring.name}${spring.count > 1 ? `, one of ${spring.count}` : ''} (${place})`,
    springs: springs.with(i, { ...spring, count: spring.count - 1 }),
  }));
}

function closingsOf(broken: Broken): Closing[] {
  const { without, linkage } = broken;
  return linkage.shafts.map(({ name }, i) => {
    const joined = joinedTo(broken, i);
    const pulled = broken.cable && joined.includes(linkage.shafts[0]!);
    const all = anglesOf(linkage).map((angle) => {
      const springs = torqueOf(
        joined.flatMap((shaft) => shaft.springs),
        angle,
      );
      const resistance = frictionOf(joined) + (pulled ? pedalDrag(linkage, angle) : 0);
      return { without, shaft: name, angle, springs, resistance, left: springs - resistance };
    });
    return all.reduce((least, one) => (one.left < least.left ? one : least));
  });
}

/** Shafts that whole links join to one, itself among them. */
function joinedTo({ linkage: { shafts }, link }: Broken, start: number): Shaft[] {
  const piece = (i: number): number => {
    const above = i === link ? undefined : shafts[i]!.drivenBy;
    return above === undefined ? i : piece(above);
  };
  return shafts.filter((_, i) => piece(i) === piece(start));
}

/** Torque that it takes at the first shaft to draw the pedal up [N m]. */
function pedalDrag(linkage: Linkage, angle: number): number {
  const { pedal, cable } = linkage;
  const own = torqueOf(pedal.springs, pedalAngle(linkage, angle));
  const drag = Math.max(pedal.friction * pedal.length - own, 0) / pedal.arm;
  return drag * sheathFactor(cable) * armAt(cable.lever, angle);
}
