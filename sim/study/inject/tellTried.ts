/** Values of a key of the injectors that were tried: in a sentence and as tables. */
import { difference } from '../../decision/placementEffects.ts';
import { share } from '../../report/figures.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { asObjects, column, type Table, tableOf, within, words } from '../../report/table.ts';
import type { PointOutcome } from '../../sweep/runner.ts';
import { remarkOf } from '../points.ts';
import type { PlacementStudy } from './compute.ts';
import { SPRAYED } from './tables.ts';
import { bestTried, type Tried, type TriedValue } from './tried.ts';

const volumetric = (value: number) => q.told(q.fillingChange('', ''), value);

/** Which value fills best, whether that can be told, and what fuel it costs. */
export function triedWords(study: PlacementStudy, found: Tried): string {
  const { path, values } = found;
  const top = bestTried(found);
  if (!top) return `Of the values of ${path} none is told apart: too few speeds were computed.`;
  const { best, stands } = top;
  const { mean, open } = best.change!;
  const gain = `${volumetric(mean)} of a full cylinder on the mean of ${study.speeds.length} speeds`;
  const doubt = `single speeds leave ${share(open, 2)} open`;
  const verdict = stands
    ? `${best.text} fills best: ${gain} against what the file has, where ${doubt}.`
    : `none fills better than what the file has by more than chance: the best, ${best.text}, gives ${gain}, and ${doubt}.`;
  return `Of ${values.length} values of ${path}, ${fuelOf(study, found)}, ${verdict}${lostWords(found, best)}`;
}

function lostWords({ lostAsFiled }: Tried, { text, lost }: TriedValue): string {
  if (lost === undefined || lostAsFiled === undefined) return '';
  return ` With ${text} ${share(lost.mean, 0)} of the fuel is lost on the mean, ${share(lostAsFiled, 0)} as the file has it.`;
}

function fuelOf({ near, above }: PlacementStudy, { placement }: Tried): string {
  if (placement === 'both') return 'staged as in the file';
  return placement === 'above'
    ? `all fuel from "${above}"`
    : `no fuel from "${above}", all from "${near}"`;
}

export const TRIED_NOTES = [
  'Change: of filling against what the file has, at full load, on the mean of all speeds, in per cent of a full cylinder. ' +
    'Left open: the mean lies within so much of it at 95 %. Lost: of the fuel injected, on the mean and at most.',
];

/** One row a value. */
export function triedTable({ path, values }: Tried): Table {
  return tableOf<TriedValue>(
    `Values of ${path}`,
    [
      words('value', 'value', ({ text }) => text),
      column(q.fillingChange('change_of_filling', 'change'), ({ change }) => change?.mean),
      column(q.FILLING_OPEN, ({ change }) => change?.open),
      column(
        { ...q.LOST, key: 'lost_fuel_fraction_mean', name: 'lost on the mean' },
        ({ lost }) => lost?.mean,
      ),
      column(
        { ...q.LOST, key: 'lost_fuel_fraction_most', head: 'at most', name: 'lost at most' },
        ({ lost }) => lost?.most,
      ),
      words('points_with_remark', '', ({ outcomes }) => remarksIn(outcomes).length, {
        only: 'files',
      }),
      words('remark', '', ({ outcomes }) => counted(remarksIn(outcomes)), {
        name: 'remark',
        only: 'people',
      }),
    ],
    values,
  );
}

const remarksIn = (outcomes: readonly PointOutcome[]) =>
  outcomes.map(remarkOf).filter((remark) => remark !== '');

/** Each remark once, with how often it stands. */
function counted(remarks: readonly string[]): string {
  const often = (remark: string) => remarks.filter((one) => one === remark).length;
  return [...new Set(remarks)].map((remark) => `${often(remark)} ${remark}`).join(', ');
}

/** One row a value and speed, with all that is told of a point with injectors. */
export function triedPointsTable({ path, values }: Tried): Table {
  type Row = { text: string; outcome: PointOutcome };
  const rows = values.flatMap(({ text, outcomes }) =>
    outcomes.map((outcome): Row => ({ text, outcome })),
  );
  return tableOf<Row>(
    `Values of ${path}`,
    [
      words('value', 'value', ({ text }) => text),
      column(q.SPEED, ({ outcome }) => outcome.speed),
      ...within(SPRAYED, ({ outcome }: Row) => outcome),
    ],
    rows,
  );
}

/** As part of the JSON document. */
export function triedDocument(found: Tried, filed: readonly PointOutcome[]) {
  const best = bestTried(found);
  return {
    key: found.path,
    fuel: found.placement,
    values: asObjects(triedTable(found)).map((row, k) => ({
      ...row,
      change_of_filling_at_speeds: found.values[k]!.outcomes.map((outcome, i) =>
        plain(difference(outcome, filed[i]!)),
      ),
    })),
    best: best?.best.text ?? null,
    stands: best?.stands ?? null,
  };
}
