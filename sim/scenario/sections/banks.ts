/** The two banks of a V, and the chambers of which each bank may have its own. */
import type { Row } from '../../sound/monopoles.ts';
import type { ChamberSpecification } from '../../specification.ts';
import { choice, list, maybe, optional, text } from '../key.ts';
import type { ScenarioView } from '../schema.ts';
import type { ChoicePlace, LeafPlace, Place } from '../view.ts';
import { checkLists, listsIn } from './cylinderLists.ts';
import { upTo } from './firing.ts';
import type { usualTaker } from './usual.ts';

const PRACTICE = 'common practice, no source';

/** Two, or else there is one row. */
const BANKS = 2;

export const banksKey = optional(
  list(
    text('Cylinders of one bank from the front: 1-3-5-7.', 40, 1),
    'Cylinders of each bank of a V or of a flat engine, from the front: [1-3-5-7, 2-4-6-8]. Left out: one row.',
    { least: BANKS, most: BANKS },
  ),
);

export function checkBanks({ engine, plenum, airbox }: ScenarioView): void {
  const count = engine.cylinders.given;
  if (count !== undefined) checkLists(engine.banks, 'list of banks', upTo(count), '[1-3-5, 2-4-6]');
  for (const chamber of [plenum, airbox]) checkOwn(chamber, engine.banks.present);
}

/** Keys of a chamber of which each bank may have its own. */
export const chamberKeys = () => ({
  chambers: choice(
    ['one', 'each-bank'],
    'One for all cylinders, or one for each bank of engine.banks, alike, with an inlet of its own; volumes are of all together, pipes and plates of each.',
    { value: 'one', why: PRACTICE },
  ),
  crossDiameter: maybe('length', 'Bore of a pipe that joins the two where their inlets open.', {
    limits: ['5 mm', '300 mm'],
    usual: ['15 mm', '120 mm'],
    example: '50 mm',
  }),
  crossLength: maybe('length', 'Length of that pipe.', {
    limits: ['20 mm', '2 m'],
    usual: ['50 mm', '800 mm'],
    absent: { value: '300 mm', why: PRACTICE },
  }),
});

interface ChamberView {
  here: Place;
  chambers: ChoicePlace<'one' | 'each-bank'>;
  crossDiameter: LeafPlace<'open'>;
  crossLength: LeafPlace<'value'>;
}

function checkOwn(view: ChamberView, banks: boolean): void {
  const { chambers, crossDiameter, crossLength } = view;
  const own = chambers.given === 'each-bank';
  if (own && !banks) {
    chambers.problem('the file names no banks', 'name the cylinders of each bank in engine.banks');
  }
  for (const pipe of [crossDiameter, crossLength]) {
    if (!pipe.present || own) continue;
    pipe.problem(
      'there is one chamber, and nothing to join',
      'write chambers: each-bank, or leave it out',
    );
  }
  if (crossLength.present && !crossDiameter.present) {
    crossLength.problem('the pipe has no bore', 'add crossDiameter');
  }
}

/** Where a cylinder stands, by its number; undefined where there is one row. */
export function standingIn({ engine: { banks } }: ScenarioView) {
  const lists = listsIn(banks);
  if (!lists) return undefined;
  const longest = Math.max(...lists.map((one) => one.length));
  return (number: number) => {
    const bank = lists.findIndex((one) => one.includes(number));
    return { bank, place: lists[bank]!.indexOf(number), longest };
  };
}

/** The chambers of a file by bank; nothing where there is one. */
export function chambersOf(
  { chambers, crossDiameter, crossLength }: ChamberView,
  { mouths }: Row,
  take: ReturnType<typeof usualTaker>,
): Pick<ChamberSpecification, 'banks' | 'cross'> {
  const inBanks = mouths.some(({ bank }) => bank !== undefined);
  if (!inBanks || take.word(chambers) === 'one') return {};
  const diameter = crossDiameter.given;
  const cross = diameter !== undefined && { diameter, length: take.value(crossLength) };
  return { banks: mouths.map(({ bank = 0 }) => bank), ...(cross && { cross }) };
}

/** Cylinders of the fullest chamber, whose pipes suit the others too. */
export function mostInOne({ banks }: Pick<ChamberSpecification, 'banks'>, count: number): number {
  if (!banks) return count;
  return Math.max(...[0, 1].map((bank) => banks.filter((one) => one === bank).length));
}
