/** Whether a boost leaves less between two ways to feed the engine. */
import * as q from '../report/quantities.ts';
import type { PointOutcome } from '../sweep/runner.ts';
import { gainOf } from './fed.ts';

/** Two curves over the same speeds. */
type Pair = readonly [ours: readonly PointOutcome[], theirs: readonly PointOutcome[]];

/** @param what lies between the two, as the subject of a sentence */
export function boostWords(what: string, boosted: Pair, free: Pair): string {
  const [here, open] = [boosted, free].map(([ours, theirs]) => {
    const gains = ours.flatMap((one, i) => gainOf(one, theirs[i]!) ?? []);
    return { least: Math.min(...gains), most: Math.max(...gains) };
  }) as [Range, Range];
  const verb = reach(here) < reach(open) ? 'shrinks' : 'does not shrink';
  return (
    `Boosted, ${what} ${verb}: ${told(here)} of filling over speed, where the same engine breathing the open air has ` +
    `${told(open)}.`
  );
}

interface Range {
  least: number;
  most: number;
}

const GAIN = q.signedShare('', '');
const reach = ({ least, most }: Range) => most - least;
const told = ({ least, most }: Range) => `${q.told(GAIN, least)} to ${q.told(GAIN, most)}`;
