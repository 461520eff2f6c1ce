/** Where the mouths stand, for what is heard of them. */
import type { Row } from '../../sound/monopoles.ts';
import type { EngineSpecification } from '../../specification.ts';
import { list, maybe, optional, quantity, section } from '../key.ts';
import type { ScenarioView } from '../schema.ts';
import { numbers, type ViewOf } from '../view.ts';

const PITCH_SHARE = 1.15;
const USUAL_HEIGHT = '0.8 m';

const cylinder = quantity('ratio', 'Number of one cylinder, counted along the row.', {
  limits: ['1', '16'],
  whole: true,
  example: '1',
});

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
    firingOrder: optional(
      list(cylinder, 'Cylinders in the order they fire; all at even steps of the crank.', {
        most: 16,
      }),
    ),
  }),
);

/** Firing orders by number of cylinders; others count along the row. Common practice, no source. */
const USUAL_ORDERS: Record<number, readonly number[]> = {
  4: [1, 3, 4, 2],
  5: [1, 2, 4, 5, 3],
  6: [1, 5, 3, 6, 2, 4],
};

function usualOrder(count: number): readonly number[] {
  return USUAL_ORDERS[count] ?? Array.from({ length: count }, (_, i) => i + 1);
}

export function checkSound({ sound, engine }: ScenarioView): void {
  const count = engine.cylinders.given;
  const { firingOrder } = sound;
  if (count === undefined || firingOrder.rows.length === 0) return;
  const order = numbers(firingOrder.rows);
  const whole = order.toSorted((a, b) => a - b).every((number, i) => number === i + 1);
  if (whole && order.length === count) return;
  firingOrder.problem(
    'the firing order does not name every cylinder once',
    `write all of them, for example: [${usualOrder(count).join(', ')}]`,
    `the numbers 1 to ${count}`,
  );
}

/** The row as the file has it; with no section as is usual. */
export function resolveSound({ sound }: ScenarioView, engine: EngineSpecification): Row {
  const { cylinder: one } = engine;
  const pitch = PITCH_SHARE * one.bore;
  if (!sound.here.present) return rowOf(usualOrder(one.count), pitch, sound.mouthHeight.assumed);
  const order = orderOf(sound, one.count);
  return rowOf(
    order,
    sound.pitch.take(() => pitch),
    sound.mouthHeight.take(),
  );
}

function orderOf({ firingOrder }: ViewOf<typeof soundSection>, count: number): readonly number[] {
  if (firingOrder.rows.length > 0) return numbers(firingOrder.rows);
  const order = usualOrder(count);
  firingOrder.note(order.join('-'), 'common practice, no source');
  return order;
}

function rowOf(order: readonly number[], pitch: number, height: number): Row {
  const middle = (order.length + 1) / 2;
  const mouths = order.map((number, i) => ({
    place: (number - middle) * pitch,
    lag: i / order.length,
  }));
  return { mouths, height };
}
