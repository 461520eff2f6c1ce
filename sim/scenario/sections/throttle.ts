/** The throttle body with its butterfly plate. */
import type { ThrottleSpecification } from '../../specification.ts';
import { maybe, quantity, section } from '../leaf.ts';
import { quantityToText } from '../quantity.ts';
import type { Reading } from '../reading.ts';

const THROTTLE = 'intake.throttle';

export const throttleSection = section('The throttle body: one butterfly plate a cylinder.', {
  bore: quantity('length', 'Bore at the plate.', {
    limits: ['10 mm', '150 mm'],
    usual: ['20 mm', '70 mm'],
  }),
  length: quantity('length', 'Length of the body, face to face.', {
    limits: ['5 mm', '300 mm'],
    usual: ['20 mm', '120 mm'],
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
  }),
  dischargeCoefficient: maybe('ratio', 'Discharge coefficient of the opening beside the plate.', {
    limits: ['0.3', '1'],
    usual: ['0.6', '0.95'],
    absent: { value: '0.75', why: 'common practice, no source; measured values run 0.6 to 0.9' },
  }),
});

export function checkThrottle(reading: Reading): void {
  const bore = reading.given(`${THROTTLE}.bore`);
  const shaft = reading.given(`${THROTTLE}.shaftDiameter`);
  if (bore !== undefined && shaft !== undefined && shaft >= bore / 2) {
    reading.problem(
      `${THROTTLE}.shaftDiameter`,
      'the shaft fills half the bore or more',
      'measure the shaft with a vernier; give its diameter, not its length',
      `less than ${quantityToText(bore / 2, 'length')}`,
    );
  }
  const length = reading.given(`${THROTTLE}.length`);
  const position = reading.given(`${THROTTLE}.shaftPosition`);
  if (length !== undefined && position !== undefined && position > length) {
    reading.problem(
      `${THROTTLE}.shaftPosition`,
      'the shaft lies outside the body',
      'measure from the outer face of the body, where the trumpet bolts on',
      `at most ${quantityToText(length, 'length')}`,
    );
  }
  checkAngles(reading);
}

function checkAngles(reading: Reading): void {
  const closed = reading.given(`${THROTTLE}.closedAngle`);
  const angle = reading.given(`${THROTTLE}.angle`);
  if (closed === undefined || angle === undefined || angle > closed) return;
  reading.problem(
    `${THROTTLE}.angle`,
    'the plate is shut',
    'open it: 90 deg is wide open',
    `more than ${closed} deg`,
  );
}

export function resolveThrottle(reading: Reading): ThrottleSpecification {
  const bore = reading.take(`${THROTTLE}.bore`);
  const length = reading.take(`${THROTTLE}.length`);
  const shaftDiameter = reading.take(`${THROTTLE}.shaftDiameter`, () => 0.18 * bore);
  return {
    bore,
    length,
    shaftPosition: reading.take(`${THROTTLE}.shaftPosition`, () => length / 2),
    shaftDiameter,
    closedAngle: reading.take(`${THROTTLE}.closedAngle`),
    angle: reading.take(`${THROTTLE}.angle`),
    openLoss: reading.take(`${THROTTLE}.openLoss`, () => shaftLoss(shaftDiameter / bore)),
    dischargeCoefficient: reading.take(`${THROTTLE}.dischargeCoefficient`),
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
  const free = 1 - (2 / Math.PI) * (Math.asin(k) + k * Math.sqrt(1 - k * k));
  return (1 / free - 1) ** 2;
}
