/** A filling that no engine has is said with the answer. */
import { expect, it } from 'vitest';
import { fillingOf, strangeFillings } from '../../sim/decision/filling.ts';
import { fillingCautions } from '../../sim/study/cautions.ts';
import { readDemo, toyPoint } from '../toy.ts';

const { engine } = readDemo('hill-climb');
const boosted = readDemo('boosted-four').engine;
const at = (...fillings: number[]) => fillings.map((x, i) => toyPoint(3000 + 1000 * i, x));

it('is told against the air that the trumpets breathe', () => {
  expect(fillingOf(engine, 0.95)).toBeCloseTo(0.95, 12);
  // 1.71 bar and 48 degC in the box, 1.01 bar and 22 degC outside: density ratio 1.5559.
  expect(fillingOf(boosted, 1.5)).toBeCloseTo(1.5 / (1.71 / 321.15 / (1.01 / 295.15)), 9);
  expect(strangeFillings(boosted, at(1.5, 1.8))).toEqual([]);
  expect(strangeFillings(engine, at(0.39, 0.41, 1.39, 1.41)).map(({ speed }) => speed)).toEqual([
    3000, 6000,
  ]);
});

it('is not judged with the throttle part shut, nor where a point failed', () => {
  const { intake } = engine;
  const shut = { ...engine, intake: { ...intake, throttle: { ...intake.throttle, angle: 20 } } };
  expect(strangeFillings(shut, at(0.1))).toEqual([]);
  expect(strangeFillings(engine, [{ speed: 3000, failure: 'x' }])).toEqual([]);
});

it('names the worst point and what to do', () => {
  expect(fillingCautions(engine, at(0.9, 1))).toEqual([]);
  const [words, ...more] = fillingCautions(engine, at(0.9, 0.036, 1.5));
  expect(more).toEqual([]);
  expect(words).toContain('At 2 points');
  expect(words).toContain('0.04 at 4000 rpm');
  expect(words).toContain('Check the file');
});
