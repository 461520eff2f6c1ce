/** Banks in a file: where mouths stand and which chamber they breathe from, and what is said of what cannot be. */
import { describe, expect, it } from 'vitest';
import type { ScenarioError } from '../../sim/errors.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { demoText } from '../toy.ts';

const SIX = demoText('endurance-six');

/** The endurance six as a V, sections besides. */
const vee = (banks: string, besides = '') =>
  `${SIX.replace(/^ {2}bore:.*$/m, (line) => `${banks && `  banks: ${banks}\n`}${line}`)}\n${besides}`;
const read = (...asked: Parameters<typeof vee>) => readScenario(vee(...asked), 'engine.yaml');

function problemsOf(...asked: Parameters<typeof vee>): string[] {
  try {
    read(...asked);
  } catch (error) {
    return (error as ScenarioError).issues.map(({ path, message }) => `${path}: ${message}`);
  }
  return [];
}

describe('a V six of usual order 1-5-3-6-2-4', () => {
  it('has two rows of three, their mouths apart by two bores', () => {
    const { mouths, engine } = read('[1-3-5, 2-4-6]');
    expect(engine.firing!.map(({ cylinder }) => cylinder)).toEqual([1, 5, 3, 6, 2, 4]);
    const { bore } = engine.cylinder;
    const pitch = 1.15 * bore;
    expect(mouths.mouths.map(({ bank }) => bank)).toEqual([0, 0, 0, 1, 1, 1]);
    const along = [-pitch, pitch, 0, pitch, -pitch, 0];
    mouths.mouths.forEach(({ place, across }, i) => {
      expect(place).toBeCloseTo(along[i]!, 12);
      expect(across).toBeCloseTo(i < 3 ? -bore : bore, 12);
    });
  });

  it('stands side by side in one chamber, and in two where each bank has its own', () => {
    const own = 'airbox:\n  volume: 12 L\nplenum:\n  chambers: each-bank\n  crossDiameter: 40 mm\n';
    const { airbox, plenum } = read('[1-3-5, 2-4-6]', own);
    expect(airbox).not.toHaveProperty('banks');
    expect(airbox.row).toMatchObject({ places: [0, 2, 1, 2, 0, 1], inlet: 0 });
    expect(plenum.row).toEqual(airbox.row);
    expect(plenum.banks).toEqual([0, 0, 0, 1, 1, 1]);
    expect(plenum.cross).toEqual({ diameter: 0.04, length: expect.closeTo(0.3, 12) });
  });

  it('has pipes of each bank as wide as its own flow asks, fewer than four cylinders as four', () => {
    const [one, two] = ['', 'plenum:\n  chambers: each-bank\n'].map(
      (own) => read('[1-3-5, 2-4-6]', own).plenum.throttle.bore,
    );
    expect(two! / one!).toBeCloseTo(Math.sqrt(4 / 6), 9);
  });

  it('leaves a file without banks one row', () => {
    const { mouths, airbox } = read('');
    expect(mouths.mouths[0]).not.toHaveProperty('bank');
    expect(airbox.row!.places).toEqual([0, 4, 2, 5, 1, 3]);
  });
});

describe('refuses', () => {
  it.each([
    ['[1-3-5, 2-4]', '', /engine\.banks: the list of banks misses 6/],
    ['[1-3-5, 2-4-5-6]', '', /engine\.banks: the list of banks names 5 twice/],
    ['[1-3-5, a-b]', '', /engine\.banks: the list of banks is not numbers/],
    ['', 'airbox:\n  chambers: each-bank\n', /airbox\.chambers: the file names no banks/],
    ['[1-3-5, 2-4-6]', 'plenum:\n  crossDiameter: 40 mm\n', /crossDiameter: there is one chamber/],
    [
      '[1-3-5, 2-4-6]',
      'plenum:\n  chambers: each-bank\n  crossLength: 40 mm\n',
      /crossLength: the pipe has no bore/,
    ],
  ])('banks %s with %j', (banks, besides, said) => {
    expect(problemsOf(banks, besides)).toEqual([expect.stringMatching(said)]);
  });
});
