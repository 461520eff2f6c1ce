/** The throttle body with its plate, slide or barrel. */
import { THROTTLE_KINDS, throttleOf, USUAL_BARREL } from '../../loss/throttles.ts';
import type { ThrottleSpecification } from '../../specification.ts';
import { choice, maybe, optional, quantity, section } from '../key.ts';
import { quantityToText } from '../quantity.ts';
import type { LeafPlace, ViewOf } from '../view.ts';

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

export const throttleSection = section(
  'The throttle body: one plate, slide or barrel a cylinder.',
  {
    kind: choice(
      THROTTLE_KINDS,
      'What throttles: a plate on a shaft, a plate with a hole that slides across the bore, or a barrel with a hole that turns across it.',
      { value: 'butterfly', why: 'what most bodies have; common practice, no source' },
    ),
    bore: quantity('length', 'Bore at the plate.', {
      limits: ['10 mm', '150 mm'],
      usual: ['20 mm', '70 mm'],
      doubt: { half: '0.1 mm', why: 'vernier' },
      form: { group: 'Throttle body', label: 'Bore at the throttle' },
    }),
    length: quantity('length', 'Length of the body, face to face.', {
      limits: ['5 mm', '300 mm'],
      usual: ['20 mm', '120 mm'],
      doubt: { half: '0.5 mm', why: 'vernier' },
      form: { group: 'Throttle body', label: 'Body length' },
    }),
    shaftPosition: maybe(
      'length',
      'From the outer face of the body to the centre of the shaft, slide or barrel.',
      {
        limits: ['0 mm', '300 mm'],
        absent: { rule: 'half the length of the body', why: 'common practice, no source' },
        form: { group: 'Throttle body', label: 'Outer face to throttle' },
      },
    ),
    shaftDiameter: maybe('length', 'Diameter of the shaft that carries the plate.', {
      limits: ['1 mm', '50 mm'],
      absent: { rule: '0.18 of the bore', why: 'common practice, no source' },
      form: { group: 'Throttle body', label: 'Shaft diameter' },
    }),
    barrelDiameter: maybe('length', 'Diameter of a barrel.', {
      limits: ['10 mm', '300 mm'],
      absent: { rule: '1.5 of the bore', why: 'common practice, no source' },
    }),
    closedAngle: maybe(
      'angle',
      'Angle at which it is shut: of the plate from the plane across the bore, of a slide or barrel by its lever.',
      {
        limits: ['0 deg', '40 deg'],
        usual: ['0 deg', '20 deg'],
        absent: { value: '7 deg', why: 'common practice, no source' },
      },
    ),
    angle: maybe(
      'angle',
      'Angle of the plate from the plane across the bore, or of the lever of a slide or barrel, whose travel is in proportion; 90 deg is wide open.',
      {
        limits: ['0 deg', '90 deg'],
        absent: { value: '90 deg', why: 'wide open' },
      },
    ),
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
        rule: 'butterfly: 0.2 for the plate and (1/s - 1)^2 for the widening behind the shaft, s the share of the bore left free; slide 0.17; barrel 0.05',
        why: 'plate fitted to measured valves at 5 and 10 deg from open, Weisbach, from memory; Borda-Carnot; gate and ball valves wide open by handbooks, from memory',
      },
      doubt: { half: '40 %', why: 'shaft and plate by handbook' },
    }),
  },
);

type ThrottleView = ViewOf<typeof throttleSection>;

export function checkThrottle(throttle: ThrottleView): void {
  const { bore, shaftDiameter, length, shaftPosition, closedAngle, angle, rimGap, bleed } =
    throttle;
  checkKind(throttle);
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
    angle.problem(`the ${nounOf(throttle)} is shut`, 'open it: 90 deg is wide open', limit);
  }
  if (bleed.bore.given! >= bore.given! / 2) {
    bleed.bore.problem(
      'the drilling is half the bore of the body or more',
      `give the drilling past the ${nounOf(throttle)}, in mm`,
      `less than ${quantityToText(bore.given! / 2, 'length')}`,
    );
  }
}

/** A butterfly where the file says nothing; that is not told among the defaults, for nearly all are. */
const kindOf = ({ kind }: Pick<ThrottleView, 'kind'>) => kind.given ?? 'butterfly';

function nounOf(throttle: Pick<ThrottleView, 'kind'>): string {
  const kind = kindOf(throttle);
  return throttleOf(kind === 'butterfly' ? {} : { kind }).noun;
}

/** Openings that a section asks for. */
export function checkOpen(angles: readonly LeafPlace[], throttle: ThrottleView): void {
  const shut = throttle.closedAngle.assumed;
  const noun = nounOf(throttle);
  const butterfly = kindOf(throttle) === 'butterfly';
  const from = butterfly ? 'from the plane across the bore' : `of the ${noun}'s lever`;
  for (const angle of angles) {
    if (!(angle.given! <= shut)) continue;
    const remedy = `give angles ${from}`;
    angle.problem(`the ${noun} is shut`, remedy, `more than ${shut} deg`);
  }
}

/** What one kind has and the others have not. */
function checkKind({ kind, bore, shaftDiameter, barrelDiameter }: ThrottleView): void {
  const word = kindOf({ kind });
  if (word !== 'butterfly' && shaftDiameter.present) {
    const remedy = 'leave it out, or say kind: butterfly';
    shaftDiameter.problem(`a ${word} has no shaft across the bore`, remedy);
  }
  if (word !== 'barrel' && barrelDiameter.present) {
    const remedy = 'leave it out, or say kind: barrel';
    barrelDiameter.problem(`a ${word} has no barrel`, remedy);
  }
  const least = LEAST_BARREL * bore.given!;
  if (barrelDiameter.given! < least) {
    const remedy = 'a hole of the bore goes through it: measure across the barrel';
    const limit = `at least ${quantityToText(least, 'length')}`;
    barrelDiameter.problem('the barrel is hardly wider than the bore', remedy, limit);
  }
}

/** Barrel over bore below which no wall is left beside the hole; common practice, no source. */
const LEAST_BARREL = 1.1;

export function resolveThrottle(throttle: ThrottleView): ThrottleSpecification {
  const bore = throttle.bore.take();
  const length = throttle.length.take();
  const kind = resolveKind(throttle, bore);
  return {
    ...kind,
    bore,
    length,
    shaftPosition: throttle.shaftPosition.take(() => length / 2),
    closedAngle: throttle.closedAngle.take(),
    angle: throttle.angle.take(),
    rimGap: throttle.rimGap.take(),
    openLoss: throttle.openLoss.take(() => throttleOf(kind).openLoss(kind.shaftDiameter / bore)),
    ...resolveBleed(throttle.bleed),
  };
}

function resolveKind(
  throttle: ThrottleView,
  bore: number,
): Pick<ThrottleSpecification, 'kind' | 'shaftDiameter' | 'barrelDiameter'> {
  const kind = kindOf(throttle);
  if (kind === 'butterfly')
    return { shaftDiameter: throttle.shaftDiameter.take(() => 0.18 * bore) };
  if (kind === 'slide') return { kind, shaftDiameter: 0 };
  const barrelDiameter = throttle.barrelDiameter.take(() => USUAL_BARREL * bore);
  return { kind, shaftDiameter: 0, barrelDiameter };
}

function resolveBleed(bleed: ThrottleView['bleed']): Pick<ThrottleSpecification, 'bleed'> {
  if (!bleed.here.present) return {};
  return { bleed: { bore: bleed.bore.take(), open: bleed.open.take() } };
}
