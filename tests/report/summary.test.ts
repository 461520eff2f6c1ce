/** The decision in words, case by case, from runners that know the answer. */
import { describe, expect, test } from 'vitest';
import { reportText } from '../../sim/report/report.ts';
import { checkReport } from '../../sim/study/check/tell.ts';
import { curveSentences } from '../../sim/study/curve/tell.ts';
import { type LengthStudy, lengthStudy } from '../../sim/study/length/compute.ts';
import { sweepReport } from '../../sim/study/length/report.ts';
import { decisionSentences } from '../../sim/study/length/tell.ts';
import type { PointRunner } from '../../sim/sweep/runner.ts';
import { readDemo, type ToyInput, toyPoint, toyRunner } from '../toy.ts';

const scenario = readDemo('hill-climb');
const { engine, speeds, target } = scenario;
const LENGTHS = [0.06, 0.09, 0.12, 0.15, 0.18];

const studyOf = (runner: PointRunner, lengths = LENGTHS, band = target): Promise<LengthStudy> =>
  lengthStudy({ engine, lengths, speeds, target: band }, runner);

/** Best at the given length in the band; each millimetre off costs; longer pays above 7400 rpm. */
const peakAt =
  (best: number) =>
  ({ length, speed }: ToyInput) =>
    (1 - 20 * (length - best) ** 2) * (speed > 7400 ? 1 - length : 1);

describe('a length between those tried', async () => {
  const sentences = decisionSentences(await studyOf(toyRunner(peakAt(0.131))));

  test('what to cut, what it gains, what it costs, how it was found', () => {
    expect(sentences).toEqual([
      'Make the trumpets longer: 130 mm, in place of the 90 mm fitted now.',
      'In the band from 5400 to 7400 rpm the trumpets give 3.5 % more: mean volumetric efficiency 1.000 instead of 0.966.',
      'At the flywheel, less friction by a correlation: mean torque in the band 67.7 Nm instead of 64.4 Nm (+5.2 %), greatest power 48.8 kW instead of 46.2 kW, at 7400 rpm.',
      'The price is paid outside the band: at worst 1.1 % less, at 7800 rpm (1.1 % over +-50 rpm).',
      'No speed in the band loses by it; the least in the band is 1.000, at 5400 rpm. Over all speeds it wins from 3000 to 7710 rpm and loses from 7710 to 8600 rpm.',
      'The trend of the lengths tried peaks between 120 mm and 150 mm; a run at this very length confirms it. Any length from 118 to 143 mm gives within 0.5 % of the same in the band.',
      'With the band 400 rpm lower or higher 130 mm stays the best, or within 0.5 %.',
      'Computed at the 15 speeds listed alone, 6 of them in the band: between them the curve ripples, and losses can hide there. Give speeds as a range to have it resolved.',
    ]);
  });
});

test('no length is better: keep what is fitted', async () => {
  const [answer, gain, flywheel, inside, found] = decisionSentences(
    await studyOf(toyRunner(peakAt(0.09))),
  );
  expect(answer).toBe('Keep the trumpets fitted now, 90 mm long.');
  expect(gain).toBe(
    'In the band from 5400 to 7400 rpm the trumpets give a mean volumetric efficiency 1.000.',
  );
  expect(flywheel).toMatch(/mean torque in the band \d+\.\d Nm, greatest power \d+\.\d kW, at/);
  expect(inside).toBe('The least in the band is 1.000, at 5400 rpm.');
  expect(found).toMatch(/^No other length computed is better there\./);
});

test('the best at the end of the range: widen it', async () => {
  const text = decisionSentences(await studyOf(toyRunner(peakAt(0.3)))).join(' ');
  expect(text).toContain('Make the trumpets longer: 180 mm');
  expect(text).toContain(
    'This is the longest length computed, so a longer one may be better still',
  );
  const short = decisionSentences(await studyOf(toyRunner(peakAt(0.03)))).join(' ');
  expect(short).toContain('This is the shortest length computed, so a shorter one may be');
});

test('a gain that no one can measure is said to be one', async () => {
  const flat = toyRunner(({ length }) => 1 + 0.01 * length);
  const text = decisionSentences(await studyOf(flat)).join(' ');
  expect(text).toContain('less than a dynamometer shows from one run to the next');
});

test('no speed outside the band: the price is not known', async () => {
  const whole = { from: speeds[0]!, to: speeds.at(-1)! };
  const text = decisionSentences(await studyOf(toyRunner(peakAt(0.131)), LENGTHS, whole)).join(' ');
  expect(text).toContain('the price there is not known');
});

test('nothing lost outside the band', async () => {
  const free = toyRunner(({ length }) => 1 - 20 * (length - 0.131) ** 2);
  expect(decisionSentences(await studyOf(free))).toContain(
    'No speed computed outside the band loses by it.',
  );
});

/** A runner whose points go wrong where told. */
function faulty(wrong: (input: ToyInput) => 'fails' | 'restless' | undefined): PointRunner {
  return {
    run: async ({ engine: variant, speed }) => {
      const input = { engine: variant, speed, length: variant.intake.trumpet.length };
      const what = wrong(input);
      if (what === 'fails') return { speed, failure: 'non-physical state in "runner" cell 4 of 9' };
      return { ...toyPoint(speed, peakAt(0.131)(input)), settled: what !== 'restless' };
    },
  };
}

test('points that fail are named and counted, and their length is not chosen', async () => {
  const study = await studyOf(
    faulty(({ length }) => (length > 0.1 && length < 0.14 ? 'fails' : undefined)),
  );
  const text = decisionSentences(study).join(' ');
  expect(text).toMatch(/^Make the trumpets longer: 150 mm/);
  expect(text).toContain(
    '15 points of 75 failed and count for nothing: 120 mm at 3000 rpm, 120 mm at 3400 rpm, ' +
      '120 mm at 3800 rpm, 120 mm at 4200 rpm and 11 more. The first: non-physical state in "runner" cell 4 of 9.',
  );
  expect(reportText(sweepReport(study, scenario)).join('\n')).toMatch(/120 +- +- +.*15 failed/);
});

test('points that do not settle are no answer', async () => {
  const study = await studyOf(faulty(({ speed }) => (speed === 3000 ? 'restless' : undefined)));
  expect(decisionSentences(study).join(' ')).toMatch(
    /\d points of 90 did not settle, so the figures there are no answer yet: 60 mm at 3000 rpm/,
  );
});

test('nothing could be computed: no answer, and no figure made up', async () => {
  const study = await studyOf(faulty(() => 'fails'));
  const [answer, ...rest] = decisionSentences(study);
  expect(answer).toBe(
    'No answer: no length could be computed at every speed from 5400 to 7400 rpm.',
  );
  expect(rest).toHaveLength(1);
  const text = reportText(sweepReport(study, scenario)).join('\n');
  expect(text).not.toMatch(/NaN|undefined|Infinity|Make the trumpets/);
  expect(curveSentences(study.baseline, { speeds, target })[0]).toBe('No speed could be computed.');
});

test('several bands, a floor, torque', async () => {
  const several = {
    ...target,
    score: 'indicated-torque' as const,
    bands: [
      { from: 3400, to: 4200 },
      { from: 5400, to: 7400, weight: 2 },
    ],
    floors: [{ speed: 8200, mostLossPercent: 1 }],
  };
  const text = decisionSentences(await studyOf(toyRunner(peakAt(0.131)), LENGTHS, several)).join(
    ' ',
  );
  expect(text).toMatch(
    /In the band from 3400 to 4200 rpm and 5400 to 7400 rpm, weighted as asked, the trumpets/,
  );
  expect(text).toMatch(/mean indicated torque \d+\.\d Nm instead of \d+\.\d/);
  expect(text).toMatch(
    /The floor at 8200 rpm holds with \d\.\d % to spare \(\d\.\d % to spare over \+-50 rpm\)\./,
  );
});

test.each(['hill-climb', 'sprint-single', 'endurance-six', 'boosted-four'])(
  '%s in words',
  (name) => {
    const text = reportText(checkReport(readDemo(name))).join('\n');
    expect(text).not.toMatch(/NaN|undefined|Infinity|\[object/);
    expect(text).not.toMatch(/ $/m);
  },
);
