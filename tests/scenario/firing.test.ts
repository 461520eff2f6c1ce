/** Firing and joints in a file: what they come to, and what is said of those that cannot be. */
import { describe, expect, it } from 'vitest';
import { ScenarioError } from '../../sim/errors.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { demoText } from '../toy.ts';

const FOUR = demoText('hill-climb');
const SIX = demoText('endurance-six');

/** A file whose engine fires as said, and whose pipes meet as said in place of `joined`. */
function text(firing: string, joint = '  joined: 4', base = FOUR): string {
  const fired = firing === '' ? '' : `  firing:\n${firing.replace(/^/gm, '    ')}\n`;
  return base
    .replace(/^ {2}bore:.*$/m, (line) => `${fired}${line}`)
    .replace(/^ {2}joined:.*$/m, () => joint);
}

const engineOf = (file: string) => readScenario(file, 'engine.yaml').engine;

const angles = (file: string) =>
  engineOf(file).firing?.map(({ cylinder, angle }) => [cylinder, angle]);

describe('what a file says', () => {
  it('nothing of firing: nothing is kept, and all is as it was', () => {
    expect(engineOf(FOUR)).not.toHaveProperty('firing');
    expect(engineOf(FOUR).exhaust).not.toHaveProperty('groups');
  });

  it('an order alone fires at even steps', () => {
    expect(angles(text('order: 1-2-4-3'))).toEqual([
      [1, 0],
      [2, 180],
      [4, 360],
      [3, 540],
    ]);
  });

  it('intervals count from one cylinder of the order to the next; spaces and commas will do', () => {
    const said = 'order: 1, 3, 2, 4\nintervals: [90 deg, 270 deg, 90 deg, 270 deg]';
    expect(angles(text(said))).toEqual([
      [1, 0],
      [3, 90],
      [2, 360],
      [4, 450],
    ]);
  });

  it('angles say when each cylinder fires, from cylinder 1', () => {
    expect(angles(text('angles: [100 deg, 640 deg, 280 deg, 460 deg]'))).toEqual([
      [1, 0],
      [3, 180],
      [4, 360],
      [2, 540],
    ]);
  });

  it('intervals without an order take the usual one, and say so', () => {
    const said = text('intervals: [90 deg, 270 deg, 90 deg, 270 deg]');
    const { engine, defaultsUsed } = readScenario(said, 'engine.yaml');
    expect(engine.firing!.map(({ cylinder }) => cylinder)).toEqual([1, 3, 4, 2]);
    expect(defaultsUsed).toContainEqual(
      expect.objectContaining({ path: 'engine.firing.order', value: '1-3-4-2' }),
    );
  });

  it('groups name cylinders, with secondaries inside them, a step and a collector', () => {
    const pipe = (name: string, length: number) =>
      `  ${name}:\n    length: ${length} mm\n    diameter: 46 mm`;
    const secondary = `${pipe('secondary', 400)}\n    groups: [1-4, 2-3]`;
    const joint = `  groups: [1-2-3-4]\n${secondary}\n${pipe('step', 300)}\n${pipe('collector', 120)}`;
    const { exhaust } = engineOf(text('', joint));
    expect(exhaust).toMatchObject({
      joined: 4,
      groups: [[1, 2, 3, 4]],
      secondary: {
        joined: 2,
        groups: [
          [1, 4],
          [2, 3],
        ],
        length: 0.4,
      },
      step: { length: 0.3 },
      collector: { length: 0.12 },
    });
  });
});

it('facts tell how far apart the cylinders of each tail fire', () => {
  const fact = (name: string) =>
    readScenario(demoText(name), name)
      .facts.flatMap(({ facts }) => facts)
      .find(({ label }) => label === 'fire into each tail')?.text;
  expect(fact('cross-plane-eight')).toBe(
    '1-3-5-7 270, 180, 90, 180 deg apart; 8-4-6-2 90, 180, 270, 180 deg apart',
  );
  expect(fact('uneven-twin')).toBe('1-2 270, 450 deg apart');
  expect(fact('hill-climb')).toBeUndefined();
});

const SECONDARY = '  secondary:\n    length: 400 mm\n    diameter: 46 mm';

describe('what is refused, with line and remedy', () => {
  it.each([
    ['an order that leaves one out', text('order: 1-3-4'), 'firing.order', 'misses 2', 'order:'],
    ['one named twice', text('order: 1-3-4-2-3'), 'firing.order', 'names 3 twice', 'order:'],
    ['a fifth of four', text('order: 1-3-4-5'), 'firing.order', '5, which is not among', 'order:'],
    ['words for an order', text('order: one-two'), 'firing.order', 'not numbers', 'order:'],
    [
      'intervals that make no cycle',
      text('intervals: [90 deg, 270 deg, 90 deg, 200 deg]'),
      'firing.intervals',
      'add up to 650 deg',
      'intervals:',
    ],
    [
      'too few intervals',
      text('intervals: [360 deg, 360 deg]'),
      'firing.intervals',
      '2 intervals for 4',
      'intervals:',
    ],
    [
      'two at once',
      text('angles: [0 deg, 180 deg, 180 deg, 540 deg]'),
      'firing.angles',
      'at once',
      'angles:',
    ],
    [
      'an order and angles',
      text('order: 1-3-4-2\nangles: [0 deg, 180 deg, 270 deg, 540 deg]'),
      'firing.order',
      'given twice',
      'order:',
    ],
    [
      'an interval in doubt',
      text('intervals: [90 deg, 270 deg +- 2 deg, 90 deg, 270 deg]'),
      'firing.intervals.1',
      'cannot be in doubt',
      'intervals:',
    ],
    [
      'groups that overlap',
      text('', '  groups: [1-2-3, 3-4]'),
      'exhaust.groups',
      'names 3 twice',
      'groups:',
    ],
    [
      'groups that forget one',
      text('', '  groups: [1-2, 3-5]'),
      'exhaust.groups',
      'misses 4',
      'groups:',
    ],
    [
      'groups and a count',
      text('', '  joined: 4\n  groups: [1-2, 3-4]'),
      'exhaust.groups',
      'given twice',
      'groups:',
    ],
    [
      'three into one of four',
      text('', `  joined: 4\n${SECONDARY}\n    joined: 3`),
      'secondary.joined',
      'cannot be shared out',
      'joined: 3',
    ],
    [
      'a secondary of single pipes',
      text('', `  joined: 1\n${SECONDARY}`),
      'exhaust.joined',
      'nothing meets',
      'joined: 1',
    ],
    [
      'a secondary that leads to two tails',
      text('', `  groups: [1-2, 3-4]\n${SECONDARY}\n    groups: [1-3, 2-4]`),
      'secondary.groups',
      'leads to two tails',
      'groups: [1-3',
    ],
    [
      'cylinders by number in an eight whose order nobody knows',
      text('', '  groups: [1-3-5-7, 2-4-6-8]').replace('cylinders: 4', 'cylinders: 8'),
      'engine.firing.order',
      'order is not known',
      'engine:',
    ],
    [
      'a secondary without a tail',
      text('', `  joined: 3\n${SECONDARY}\n    joined: 3`, SIX).replace(
        /^ {2}tail:[\s\S]*?(?=^ {2}silencer)/m,
        '',
      ),
      'exhaust.joined',
      'no tail leads on',
      'joined: 3',
    ],
  ])('%s', (_, file, path, says, at) => {
    let issues: ScenarioError['issues'] = [];
    try {
      readScenario(file, 'engine.yaml');
    } catch (error) {
      if (!(error instanceof ScenarioError)) throw error;
      issues = error.issues;
    }
    const issue = issues.find((one) => one.path.endsWith(path));
    expect(issue, JSON.stringify(issues)).toBeDefined();
    expect(issue!.message).toContain(says);
    expect(issue!.remedy.length).toBeGreaterThan(10);
    expect(issue!.line).toBe(file.slice(0, file.indexOf(at)).split('\n').length);
  });
});
