/** Engines patched into a file that was read once are those of a file that says so. */
import { describe, expect, it } from 'vitest';
import type { Change } from '../../sim/scenario/change.ts';
import { insideText } from '../../sim/scenario/change.ts';
import { type Leaf, limitsOf } from '../../sim/scenario/key.ts';
import { keyAt } from '../../sim/scenario/keyPath.ts';
import { engineReader, openScenario, readScenario } from '../../sim/scenario/read.ts';
import { scenarioKeys } from '../../sim/scenario/schema.ts';
import { LeafPlace } from '../../sim/scenario/view.ts';
import { demoText } from '../toy.ts';

/** Numbers from 0 to 1, the same for the same seed (mulberry32). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** The engine, or what the reader says against it. */
function outcome(read: () => unknown): unknown {
  try {
    return read();
  } catch (error) {
    return String(error);
  }
}

const DEMOS = ['hill-climb', 'sprint-single', 'endurance-six', 'boosted-four'];

/** Keys of the engine with the number they have, given or by default. */
function numbersOf(text: string): { path: string; leaf: Leaf; value: number }[] {
  return openScenario(text, 'x').places.flatMap((place) => {
    if (!(place instanceof LeafPlace) || !/^(ambient|engine|in|ex|fuel|inj)/.test(place.path)) {
      return [];
    }
    const value = place.given ?? place.taken;
    return value === undefined ? [] : [{ path: place.path, leaf: place.key, value }];
  });
}

describe.each(DEMOS)('%s', (demo) => {
  const text = demoText(demo);
  const numbers = numbersOf(text);

  it('patched engines are those of the file read anew, refusals included', () => {
    const random = seeded(demo.length);
    let refused = 0;
    for (let set = 0; set < 12; set++) {
      const keys = Array.from({ length: 1 + Math.floor(4 * random()) }, () => {
        return numbers[Math.floor(random() * numbers.length)]!;
      });
      const changesAt = (width: number): Change[] =>
        keys.map(({ path, leaf, value }) => {
          const [low, high] = limitsOf(leaf);
          const moved = value + width * (random() - 0.5) * (high - low);
          return { path, text: insideText(leaf.whole ? Math.round(moved) : moved, leaf) };
        });
      const reader = outcome(() => engineReader(text, demo, changesAt(0)));
      for (const width of [0, 1e-3, 0.1, 1]) {
        const changes = changesAt(width);
        const anew = outcome(() => readScenario(text, demo, changes).engine);
        const patched = outcome(() => (reader as ReturnType<typeof engineReader>)(changes));
        expect(patched).toEqual(anew);
        refused += typeof anew === 'string' ? 1 : 0;
      }
    }
    expect(refused).toBeGreaterThan(2);
    expect(refused).toBeLessThan(40);
  });
});

it('keys of a section that the file lacks are told missing', () => {
  const changes = [{ path: 'exhaust.tail.length', text: '2 m' }];
  const text = demoText('sprint-single');
  const anew = outcome(() => readScenario(text, 'x', changes));
  expect(anew).toContain('exhaust.tail: the diameter is missing');
  expect(outcome(() => engineReader(text, 'x', changes)(changes))).toBe(anew);
});

it('a thousand patched engines take less than a hundred read anew', () => {
  const text = demoText('hill-climb');
  const changes = (i: number) => [{ path: 'intake.trumpet.length', text: `${60 + i / 100} mm` }];
  const took = (work: () => void) => {
    const start = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(start);
    return user + system;
  };
  const reader = engineReader(text, 'x', changes(0));
  const patched = took(() => {
    for (let i = 0; i < 1000; i++) reader(changes(i));
  });
  const anew = took(() => {
    for (let i = 0; i < 100; i++) readScenario(text, 'x', changes(i));
  });
  expect(patched).toBeLessThan(anew);
});

it('every leaf is found at its path', () => {
  for (const { path, leaf } of numbersOf(demoText('endurance-six'))) {
    expect(keyAt(scenarioKeys, path)).toBe(leaf);
  }
});
