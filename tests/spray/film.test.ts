/** Films set ahead between cycles: they come to where what leaves is what lands, and stay there. */
import { expect, test } from 'vitest';
import { runPoint } from '../../sim/engine/point.ts';
import { FilmBooks, followed } from '../../sim/spray/filmBooks.ts';
import { sprayed } from './engine.ts';

/** Mass that just wets a patch [kg]. */
const THIN = [1e-6, 1e-6, 1e-6];
/** Of a cycle of 20 ms. */
const TIME = 0.02;

/** Books of a cycle in which `film` [kg] lay there by patch, one component; the last patch is the valve's. */
function books(film: number[], sums: Partial<Record<keyof FilmBooks, number[]>>): FilmBooks {
  const made = new FilmBooks(film.length, 1);
  made.add(
    film.map((m) => Float64Array.of(m)),
    TIME,
  );
  for (const key of ['landed', 'vapour', 'ahead', 'back', 'runOff'] as const)
    sums[key]?.forEach((m, k) => {
      made[key][k]![0] = m;
    });
  return made;
}

const after = (made: FilmBooks, time: number) => made.after(time, THIN).later.map((row) => row[0]!);

test.each([
  ['thin', [2e-7, 3e-7, 1e-7]],
  ['thick', [5e-5, 8e-5, 2e-5]],
])('a %s film whose cycle takes what it brings stays to the last digits', (_name, film) => {
  const balanced = books(film, {
    landed: [6e-8, 1e-8, 2e-8],
    vapour: [2e-8, 3e-8, 2e-8],
    ahead: [5e-8, 0, 0],
    back: [0, 1e-8, 0],
    runOff: [0, 2e-8, 0],
  });
  after(balanced, 100).forEach((m, k) => {
    expect(m / film[k]!).toBeCloseTo(1, 12);
  });
});

test('a patchy film gives off in proportion: twice what it loses lands, so twice as much will lie there', () => {
  const [m] = after(books([2e-7, 0, 0], { landed: [4e-8], vapour: [2e-8] }), 100);
  expect(m! / 4e-7).toBeCloseTo(1, 9);
});

test('a thick film is carried off by its square: four times what it loses lands, and it grows to twice', () => {
  const [m] = after(books([5e-5, 0, 0], { landed: [4e-8], ahead: [1e-8] }), 10_000);
  expect(m! / 1e-4).toBeCloseTo(1, 6);
});

test('what is carried ahead arrives at the next patch, and at the seat in the cylinder', () => {
  const moved = books([2e-7, 2e-7, 0], { landed: [2e-8], ahead: [2e-8], runOff: [0, 1e-8] });
  expect(after(moved, 100)[1]! / 4e-7).toBeCloseTo(1, 9);
  expect(after(moved, 100)[2]).toBe(0);
});

test('a film follows its mean, and never below nothing', () => {
  expect(followed(3, 2, 5)).toBe(6);
  expect(followed(3, 6, 2)).toBe(1);
  expect(followed(3, 6, 0)).toBe(0);
});

test.each([0, 0.5, 1])(
  'a settled point held its last cycle with films left alone: %d above',
  (share) => {
    const { settled, spray } = runPoint(sprayed(share, { parcels: 30 }), 6000);
    expect(settled).toBe(true);
    expect(spray!.filmAdjusted).toBe(0);
    expect(spray!.filmImbalance).toBeLessThan(0.02);
    expect(Math.abs(spray!.delivered / spray!.needed - 1)).toBeLessThan(0.02);
  },
);
