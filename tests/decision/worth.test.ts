/** The first sentence of `worth` turns with what was found, and with nothing else. */
import { expect, it } from 'vitest';
import { worthSentences } from '../../sim/study/worth/tell.ts';
import { demo } from '../scenario.ts';

const { engine, plenum, target } = demo('hill-climb');
const outcome = (speed: number, indicatedTorque: number) => ({ speed, indicatedTorque });

const opened = (to: number) => ({
  question: { speed: 3000, from: 8, to, seconds: 0.05, lag: 0.02 },
  ways: [
    { name: 'bodies', ready: 0.056, charges: [{ lean: { pressure: 1.2, angle: 1 } }] },
    { name: 'plenum', ready: Number.NaN, charges: [{ lean: { pressure: 1, angle: 1.05 } }] },
  ],
});

function sentencesOf(gainPercent: number, worstLossPercent: number, given = true): string[] {
  const curve = (torque: number) => ({
    engine,
    outcomes: [outcome(6000, torque), outcome(7000, torque)],
  });
  const study = {
    length: { baseline: { length: 0.09 }, recommended: { length: 0.09 } },
    fitted: { gainPercent },
    plenum: {
      ...{ target, lengthUnit: 'mm', speeds: [6000, 7000], part: [] },
      plenum: { ...plenum, given },
      bodies: curve(220),
      onPlenum: curve(200),
      weighed: { gainPercent, worstLossPercent, bandMean: 1, stretches: [] },
      turns: { port: 1, plenum: 4 },
    },
    effects: [],
    response: { little: opened(11), wide: opened(82) },
    meter: { points: [] },
  };
  return worthSentences(study as never);
}

const firstSentence = (...of: Parameters<typeof sentencesOf>) => sentencesOf(...of)[0];

it.each([
  [
    6,
    0.2,
    /^Worth it for power: .* give 6\.0 % more .*, and lose nothing that is felt outside the band\.$/,
  ],
  [6, 3, /^Worth it for power: .*, and at worst 3\.0 % less outside the band\.$/],
  [
    2,
    9,
    /^Worth it in the band alone: .* give 2\.0 % more .*, and at worst 9\.0 % less outside the band\.$/,
  ],
  [0.3, 0, /^Not worth it for power alone: nothing is felt; .* give 0\.3 % more/],
  [-0.4, 2, /^Not worth it for power alone: .* give 0\.4 % less/],
  [-4, 2, /^Not worth it for power: .* give 4\.0 % less/],
  [Number.NaN, Number.NaN, /^Not to be told: points failed/],
])('a gain of %d %% and a loss of %d %%', (gain, loss, said) => {
  expect(firstSentence(gain, loss)).toMatch(said);
});

it('says where the plenum was not measured', () => {
  expect(firstSentence(6, 0, false)).toMatch(/a plenum that nobody measured, and lose nothing/);
});

it('says when torque is there and what comes lean, bodies before the plenum', () => {
  expect(sentencesOf(6, 0).find((one) => one.startsWith('Response:'))).toBe(
    'Response: from plates 8 deg above their stop at 3000 rpm nine tenths of the new torque are there 56 ms on when opened by 3 deg (plenum more than 10 cycles), ' +
      '56 ms on when opened wide in 50 ms (plenum more than 10 cycles). Opened wide, 1 charge comes more than a tenth lean by a pressure signal 20 ms behind (plenum 0), ' +
      '0 by plate angle (0): enrichment to set. Nearly shut a port fills in 1.00 turns of the crank, the plenum with its runners in 4.0 (response).',
  );
});
