/** Where the mouths stand, for what is heard of them. */
import { CYCLE } from '../../crankAngle.ts';
import { firings } from '../../firings.ts';
import type { Mouth, Row } from '../../sound/monopoles.ts';
import type { EngineSpecification } from '../../specification.ts';
import { maybe, optional, section } from '../key.ts';
import type { ScenarioView } from '../schema.ts';
import type { LeafPlace } from '../view.ts';
import { standingIn } from './banks.ts';
import { orderOf, usualOrder } from './firing.ts';

/** From mouth to mouth, and from bank to bank, in bores of the cylinder [-]. */
const PITCH_SHARE = 1.15;
const BANKS_SHARE = 2;
const USUAL_HEIGHT = '0.8 m';

export const soundSection = optional(
  section('Where the mouths stand. Only the study of what is heard computes with it.', {
    mouthHeight: maybe('length', 'Mouths above the ground.', {
      limits: ['0 m', '3 m'],
      usual: ['0.3 m', '1.5 m'],
      example: USUAL_HEIGHT,
      absent: { value: USUAL_HEIGHT, why: 'common practice, no source' },
    }),
    pitch: maybe('length', 'From one mouth to the next.', {
      limits: ['0 mm', '500 mm'],
      usual: ['60 mm', '150 mm'],
      example: '95 mm',
      absent: { rule: '1.15 of the bore of the cylinder', why: 'common practice, no source' },
    }),
    bankApart: maybe('length', 'From the mouths of one bank to those of the other.', {
      limits: ['0 mm', '1.5 m'],
      usual: ['80 mm', '700 mm'],
      example: '200 mm',
      absent: { rule: '2 of the bore of the cylinder', why: 'common practice, no source' },
    }),
  }),
);

/** The row, or one a bank, as the file has it; with no section as is usual. */
export function resolveSound(view: ScenarioView, engine: EngineSpecification): Row {
  const { sound } = view;
  const { count, bore } = engine.cylinder;
  const given = sound.here.present;
  const taken = (place: LeafPlace<'rule'>, usual: number) =>
    given ? place.take(() => usual) : usual;
  const pitch = taken(sound.pitch, PITCH_SHARE * bore);
  const height = given ? sound.mouthHeight.take() : sound.mouthHeight.assumed;
  const standing = standingIn(view);
  const across = standing ? taken(sound.bankApart, BANKS_SHARE * bore) : 0;
  const mouths = turnsOf(view, engine, given).map(({ number, lag }): Mouth => {
    if (!standing) return { place: (number - (count + 1) / 2) * pitch, lag };
    const { place, bank, longest } = standing(number);
    const own = { place: (place - (longest - 1) / 2) * pitch, lag };
    return { ...own, bank, across: (bank - 1 / 2) * across };
  });
  return { mouths, height };
}

/** Numbers of the cylinders in the order they fire, and by what share of a cycle each is behind the first. */
function turnsOf(
  { engine: { firing } }: ScenarioView,
  engine: EngineSpecification,
  given: boolean,
) {
  const { count } = engine.cylinder;
  if (engine.firing) {
    return firings(engine).map(({ number, angle }) => ({ number, lag: angle / CYCLE }));
  }
  const order = given ? orderOf(firing, count) : usualOrder(count);
  return order.map((number, i) => ({ number, lag: i / count }));
}
