/** Sections that a file may leave out altogether: what they hold is then as is usual, and told by the study. */
import { sweptVolume } from '../../cylinder/crank.ts';
import type { Row } from '../../sound/monopoles.ts';
import type { ChamberSpecification, EngineSpecification } from '../../specification.ts';
import { choice } from '../key.ts';
import type { ChoicePlace, LeafPlace, Place } from '../view.ts';

/** Takes values of a section; of one that is absent nothing is listed as a default of the file. */
export function usualTaker({ present }: Place) {
  return {
    value: (place: LeafPlace<'value'>) => (present ? place.take() : place.assumed),
    rule: (place: LeafPlace<'rule'>, rule: () => number) => (present ? place.take(rule) : rule()),
    word: <W extends string>(place: ChoicePlace<W>): W =>
      present ? place.take() : place.key.absent!.value,
  };
}

/**
 * Mean air of an engine at its highest speed [m^3/s], at a filling of 1; of fewer than four cylinders, whose
 * inductions leave gaps, as if they filled them.
 *
 * @param count cylinders that share the pipe
 */
export function mostFlow(
  { cylinder }: EngineSpecification,
  highest: number,
  count = cylinder.count,
): number {
  return (Math.max(count, GAPLESS) * sweptVolume(cylinder) * highest) / 120;
}

/** Cylinders whose inductions leave no gap. */
const GAPLESS = 4;

/** Bore of a pipe that passes a flow [m^3/s] at a mean speed [m/s]. */
export const boreFor = (flow: number, speed: number) => Math.sqrt((4 * flow) / (Math.PI * speed));

/** Angles above the stop of a plate, and wide open [deg]. */
export const anglesAbove = (stop: number, above: readonly number[]): number[] => [
  ...above.map((one) => stop + one).filter((angle) => angle < 85),
  90,
];

/** Where along the row of mouths a chamber is fed. */
export const inletAt = () =>
  choice(['end', 'middle'], 'Where along the row of mouths its inlet opens.', {
    value: 'end',
    why: 'common practice, no source',
  });

/** The mouths along a chamber, or along one a bank; none where they stand in one place. */
export function rowAlong(
  { mouths }: Row,
  at: 'end' | 'middle',
): { row?: NonNullable<ChamberSpecification['row']> } {
  const along = [...new Set(mouths.map(({ place }) => place))].sort((a, b) => a - b);
  if (along.length < 2) return {};
  const places = mouths.map(({ place }) => along.indexOf(place));
  const inlet = at === 'end' ? 0 : Math.floor(along.length / 2);
  return { row: { pitch: along[1]! - along[0]!, places, inlet } };
}
