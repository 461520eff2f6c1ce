/** The throttle body with its butterfly plate. */
import { asin } from '../../elementary/angles.ts';
import { square } from '../../elementary/powers.ts';
import type { ThrottleSpecification } from '../../specification.ts';
import { maybe, optional, quantity, section } from '../key.ts';
import { quantityToText } from '../quantity.ts';
import type { ViewOf } from '../view.ts';

const bleedSection = section('A drilling past the plate, shut more or less by a screw.', {
  bore: quantity('length', 'Bore of the drilling.', {
    limits: ['0.2 mm', '15 mm'],
    usual: ['0.5 mm', '6 mm'],
  }),
  open: maybe('ratio', 'Share of its area that the screw leaves open.', {
    limits: ['0', '1'],
    absent: { value: '1', why: 'no screw given' },
  }),
});

export const throttleSection = section('The throttle body: one butterfly plate a cylinder.', {
  bore: quantity('length', 'Bore at the plate.', {
    limits: ['10 mm', '150 mm'],
    usual: ['20 mm', '70 mm'],
    doubt: { half: '0.1 mm', why: 'vernier' },
    form: { group: 'Throttle body', label: 'Bore at the plate' },
  }),
  length: quantity('length', 'Length of the body, face to face.', {
    limits: ['5 mm', '300 mm'],
    usual: ['20 mm', '120 mm'],
    doubt: { half: '0.5 mm', why: 'vernier' },
    form: { group: 'Throttle body', label: 'Body length' },
  }),
  shaftPosition: maybe('length', 'From the outer face of the body to the centre of the shaft.', {
    limits: ['0 mm', '300 mm'],
    absent: { rule: 'half the length of the body', why: 'common practice, no source' },
    form: { group: 'Throttle body', label: 'Outer face to shaft' },
  }),
  shaftDiameter: maybe('length', 'Diameter of the shaft that carries the plate.', {
    limits: ['1 mm', '50 mm'],
    absent: { rule: '0.18 of the bore', why: 'common practice, no source' },
    form: { group: 'Throttle body', label: 'Shaft diameter' },
  }),
  closedAngle: maybe('angle', 'Angle from the plane across the bore at which the plate seals.', {
    limits: ['0 deg', '40 deg'],
    usual: ['0 deg', '20 deg'],
    absent: { value: '7 deg', why: 'common practice, no source' },
  }),
  angle: maybe('angle', 'Angle of the plate from the plane across the bore; 90 deg is wide open.', {
    limits: ['0 deg', '90 deg'],
    absent: { value: '90 deg', why: 'wide open' },
  }),
  rimGap: maybe('length', 'Gap all round the rim of the shut plate: what leaks past it.', {
    limits: ['0 mm', '0.5 mm'],
    usual: ['0 mm', '0.1 mm'],
    absent: {
      value: '0 mm',
      why: 'a plate that seals; 0.01 to 0.03 mm is as much as an idle opening: common practice, no source',
    },
  }),
  bleed: optional(bleedSection),
  openLoss: maybe('ratio', 'Loss wide open, in dynamic heads of the bore.', {
    limits: ['0', '5'],
    usual: ['0', '1'],
    absent: {
      rule: '0.2 for the plate and (1/s - 1)^2 for the widening behind the shaft, s the share of the bore left free',
      why: 'plate fitted to measured valves at 5 and 10 deg from open, Weisbach, from memory; Borda-Carnot',
    },
    doubt: { half: '40 %', why: 'shaft and plate by handbook' },
  }),
});

type ThrottleView = ViewOf<typeof throttleSection>;

export function checkThrottle({ bore, shaftDiameter, length, ...rest }: ThrottleView): void {
  const { shaftPosition, closedAngle, angle, rimGap, bleed } = rest;
  if (shaftDiameter.given! >= bore.given! / 2) {
    shaftDiameter.problem(
      'the shaft fills half the bore or more',
      'measure the shaft with a vernier; give its diameter, not its length',
      `less than ${quantityToText(bore.given! / 2, 'length')}`,
    );
  }
  if (shaftPosition.given! > length.given!) {
    shaftPosition.problem(
      'the shaft lies outside the body',
      'measure from the outer face of the body, where the trumpet bolts on',
      `at most ${quantityToText(length.given!, 'length')}`,
    );
  }
  const leaks = rimGap.assumed > 0 || (bleed.here.present && bleed.open.assumed > 0);
  const low = closedAngle.assumed;
  if (leaks ? angle.assumed < low : angle.assumed <= low) {
    const limit = `${leaks ? 'at least' : 'more than'} ${low} deg`;
    angle.problem('the plate is shut', 'open it: 90 deg is wide open', limit);
  }
  if (bleed.bore.given! >= bore.given! / 2) {
    bleed.bore.problem(
      'the drilling is half the bore of the body or more',
      'give the drilling past the plate, in mm',
      `less than ${quantityToText(bore.given! / 2, 'length')}`,
    );
  }
}

export function resolveThrottle(throttle: ThrottleView): ThrottleSpecification {
  const bore = throttle.bore.take();
  const length = throttle.length.take();
  const shaftDiameter = throttle.shaftDiameter.take(() => 0.18 * bore);
  return {
    bore,
    length,
    shaftPosition: throttle.shaftPosition.take(() => length / 2),
    shaftDiameter,
    closedAngle: throttle.closedAngle.take(),
    angle: throttle.angle.take(),
    rimGap: throttle.rimGap.take(),
    openLoss: throttle.openLoss.take(() => openPlateLoss(shaftDiameter / bore)),
    ...resolveBleed(throttle.bleed),
  };
}

function resolveBleed(bleed: ThrottleView['bleed']): Pick<ThrottleSpecification, 'bleed'> {
  if (!bleed.here.present) return {};
  return { bleed: { bore: bleed.bore.take(), open: bleed.open.take() } };
}

/** Loss of plate and shaft wide open [dynamic heads], shaft diameter `k` bores. */
export const openPlateLoss = (k: number) => PLATE_DRAG + shaftLoss(k);

/** Loss of a thin plate wide open [dynamic heads], fitted to Weisbach's valves at 5 and 10 deg from open. */
const PLATE_DRAG = 0.2;

/**
 * Loss of the open plate's shaft [dynamic heads]: Borda-Carnot from the free area to the full bore.
 *
 * The area of a strip of width d across a circle of diameter D is exact:
 * covered = (2/pi) (asin(k) + k sqrt(1 - k^2)) with k = d/D.
 *
 * @param k shaft diameter over bore [-]
 */
function shaftLoss(k: number): number {
  const free = 1 - (2 / Math.PI) * (asin(k) + k * Math.sqrt(1 - k * k));
  return square(1 / free - 1);
}
