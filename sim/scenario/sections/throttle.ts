/** The throttle body with its butterfly plate. */
import { asin } from '../../elementary/angles.ts';
import { square } from '../../elementary/powers.ts';
import type { ThrottleSpecification } from '../../specification.ts';
import { maybe, quantity, section } from '../key.ts';
import { quantityToText } from '../quantity.ts';
import type { ViewOf } from '../view.ts';

export const throttleSection = section('The throttle body: one butterfly plate a cylinder.', {
  bore: quantity('length', 'Bore at the plate.', {
    limits: ['10 mm', '150 mm'],
    usual: ['20 mm', '70 mm'],
    doubt: { half: '0.1 mm', why: 'vernier' },
  }),
  length: quantity('length', 'Length of the body, face to face.', {
    limits: ['5 mm', '300 mm'],
    usual: ['20 mm', '120 mm'],
    doubt: { half: '0.5 mm', why: 'vernier' },
  }),
  shaftPosition: maybe('length', 'From the outer face of the body to the centre of the shaft.', {
    limits: ['0 mm', '300 mm'],
    absent: { rule: 'half the length of the body', why: 'common practice, no source' },
  }),
  shaftDiameter: maybe('length', 'Diameter of the shaft that carries the plate.', {
    limits: ['1 mm', '50 mm'],
    absent: { rule: '0.18 of the bore', why: 'common practice, no source' },
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
  openLoss: maybe('ratio', 'Loss wide open, in dynamic heads of the bore.', {
    limits: ['0', '5'],
    usual: ['0', '1'],
    absent: {
      rule: 'sudden widening behind the open shaft, (1/s - 1)^2 with s the share of the bore left free',
      why: 'Borda-Carnot; the plate itself taken as thin',
    },
    doubt: { half: '40 %', why: 'shaft and plate by handbook' },
  }),
  dischargeCoefficient: maybe('ratio', 'Discharge coefficient of the opening beside the plate.', {
    limits: ['0.3', '1'],
    usual: ['0.6', '0.95'],
    absent: { value: '0.75', why: 'common practice, no source; measured values run 0.6 to 0.9' },
  }),
});

type ThrottleView = ViewOf<typeof throttleSection>;

export function checkThrottle({ bore, shaftDiameter, length, ...rest }: ThrottleView): void {
  const { shaftPosition, closedAngle, angle } = rest;
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
  if (angle.assumed <= closedAngle.assumed) {
    const limit = `more than ${closedAngle.assumed} deg`;
    angle.problem('the plate is shut', 'open it: 90 deg is wide open', limit);
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
    openLoss: throttle.openLoss.take(() => shaftLoss(shaftDiameter / bore)),
    dischargeCoefficient: throttle.dischargeCoefficient.take(),
  };
}

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
