/** Where the mouths stand, for what is heard of them. */
import { CYCLE } from '../../crankAngle.ts';
import { firings } from '../../firings.ts';
import type { Row } from '../../sound/monopoles.ts';
import type { EngineSpecification } from '../../specification.ts';
import { maybe, optional, section } from '../key.ts';
import type { ScenarioView } from '../schema.ts';
import { orderOf, usualOrder } from './firing.ts';

const PITCH_SHARE = 1.15;
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
  }),
);

/** The row as the file has it; with no section as is usual. */
export function resolveSound(
  { sound, engine: { firing } }: ScenarioView,
  engine: EngineSpecification,
): Row {
  const { count, bore } = engine.cylinder;
  const pitch = PITCH_SHARE * bore;
  const given = sound.here.present;
  const turns = firings(engine);
  const order = engine.firing
    ? turns.map(({ number }) => number)
    : given
      ? orderOf(firing, count)
      : usualOrder(count);
  const place = given ? sound.pitch.take(() => pitch) : pitch;
  const height = given ? sound.mouthHeight.take() : sound.mouthHeight.assumed;
  const middle = (count + 1) / 2;
  const mouths = order.map((number, i) => ({
    place: (number - middle) * place,
    lag: engine.firing ? turns[i]!.angle / CYCLE : i / count,
  }));
  return { mouths, height };
}
