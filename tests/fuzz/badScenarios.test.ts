/**
 * Broken scenario files. Whatever is wrong, the reader answers with a ScenarioError that names the
 * line and a remedy for every problem, and with nothing else.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ScenarioError, type ScenarioIssue } from '../../sim/errors.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { SLOW } from '../slow.ts';

const GOOD = readFileSync('scenarios/hill-climb.yaml', 'utf8');
const BOOSTED = readFileSync('scenarios/boosted-four.yaml', 'utf8');
const SIX = readFileSync('scenarios/endurance-six.yaml', 'utf8');

/** Issues of a text; fails where it reads, and where it throws anything but a ScenarioError. */
function issuesOf(text: string): readonly ScenarioIssue[] {
  try {
    readScenario(text, 'bad.yaml');
  } catch (error) {
    if (error instanceof ScenarioError) return error.issues;
    throw error;
  }
  throw new Error('the file reads, though it is broken');
}

/** The text with one piece replaced; the piece must be there. */
/** Damaged copies of each file. */
const COPIES = SLOW ? 400 : 100;

function edit(text: string, from: string | RegExp, to: string): string {
  const edited = text.replace(from, () => to);
  if (edited === text) throw new Error(`nothing to replace: ${from}`);
  return edited;
}

/** Line, counted from 1, on which a piece of text begins. */
function lineOf(text: string, piece: string): number {
  const at = text.indexOf(piece);
  if (at < 0) throw new Error(`not in the text: ${piece}`);
  return text.slice(0, at).split('\n').length;
}

interface Edit {
  name: string;
  from: string | RegExp;
  to: string;
  /** Key that the first issue must name. */
  path: string;
  /** What the message must say. */
  says: string;
  /** A piece of the edited text on the line that must be named; `to` where absent. */
  at?: string;
  base?: string;
}

const EDITS: Edit[] = [
  {
    name: 'a unit of the wrong kind',
    from: 'bore: 86 mm',
    to: 'bore: 86 kPa',
    path: 'engine.bore',
    says: 'is a pressure, not a length',
  },
  {
    name: 'an unknown unit',
    from: 'stroke: 86 mm',
    to: 'stroke: 86 ells',
    path: 'engine.stroke',
    says: '"ells" is not a unit of length',
  },
  {
    name: 'a number without a unit',
    from: 'bore: 86 mm',
    to: 'bore: 86',
    path: 'engine.bore',
    says: '86 has no unit',
  },
  {
    name: 'a unit without a number',
    from: 'bore: 86 mm',
    to: 'bore: mm',
    path: 'engine.bore',
    says: 'cannot read "mm"',
  },
  {
    name: 'an expression',
    from: 'bore: 86 mm',
    to: 'bore: 2 * 43 mm',
    path: 'engine.bore',
    says: 'cannot read "2 * 43 mm"',
  },
  {
    name: 'a decimal comma',
    from: 'bore: 86 mm',
    to: 'bore: 86,5 mm',
    path: 'engine.bore',
    says: 'cannot read "86,5 mm"',
  },
  {
    name: 'thousands with a comma',
    from: 'to: 8600 rpm',
    to: 'to: 8,600 rpm',
    path: 'speeds.to',
    says: 'cannot read "8,600 rpm"',
  },
  {
    name: 'bore 0',
    from: 'bore: 86 mm',
    to: 'bore: 0 mm',
    path: 'engine.bore',
    says: '0 mm is out of range',
  },
  {
    name: 'a negative length',
    from: 'length: 90 mm',
    to: 'length: -90 mm',
    path: 'intake.trumpet.length',
    says: '-90 mm is out of range',
  },
  {
    name: 'compression 1',
    from: 'compressionRatio: 12.4',
    to: 'compressionRatio: 1',
    path: 'engine.compressionRatio',
    says: '1 is out of range',
  },
  {
    name: 'not a number',
    from: 'compressionRatio: 12.4',
    to: 'compressionRatio: .nan',
    path: 'engine.compressionRatio',
    says: 'NaN is not a finite number',
  },
  {
    name: 'infinity',
    from: 'compressionRatio: 12.4',
    to: 'compressionRatio: .inf',
    path: 'engine.compressionRatio',
    says: 'Infinity is not a finite number',
  },
  {
    name: 'a number too large for the machine',
    from: 'bore: 86 mm',
    to: 'bore: 1e999 mm',
    path: 'engine.bore',
    says: 'Infinity is not a finite number',
  },
  {
    name: 'the word NaN',
    from: 'bore: 86 mm',
    to: 'bore: NaN mm',
    path: 'engine.bore',
    says: 'cannot read "NaN mm"',
  },
  {
    name: 'half a cylinder',
    from: 'cylinders: 4',
    to: 'cylinders: 3.5',
    path: 'engine.cylinders',
    says: '3.5 is not a whole number',
  },
  {
    name: 'humidity in percent without the sign',
    from: 'humidity: 55 %',
    to: 'humidity: 55',
    path: 'ambient.humidity',
    says: '55 is out of range',
  },
  {
    name: 'a percentage for a length',
    from: 'bore: 86 mm',
    to: 'bore: 86 %',
    path: 'engine.bore',
    says: 'is a plain number, not a length',
  },
  {
    name: 'a missing key',
    from: /^ {2}stroke: .*\n/m,
    to: '',
    path: 'engine.stroke',
    says: 'is missing',
    at: 'engine:',
  },
  {
    name: 'a missing section',
    from: /^exhaust:[\s\S]*?(?=^fuel)/m,
    to: '',
    path: 'exhaust',
    says: 'is missing',
    at: 'title:',
  },
  {
    name: 'a misspelt key',
    from: 'humidity:',
    to: 'humidty:',
    path: 'ambient.humidty',
    says: '"humidty" is not a key',
  },
  {
    name: 'a key in two words',
    from: 'shaftPosition:',
    to: 'shaft position:',
    path: 'intake.throttle.shaft position',
    says: 'is not a key',
  },
  {
    name: 'a key of another section',
    from: '  joined: 4',
    to: '  bore: 86 mm\n  joined: 4',
    path: 'exhaust.bore',
    says: '"bore" is not a key',
    at: 'bore: 86 mm\n  joined',
  },
  {
    name: 'a key with nothing behind it',
    from: 'bore: 86 mm',
    to: 'bore:',
    path: 'engine.bore',
    says: 'found nothing',
  },
  {
    name: 'null',
    from: 'bore: 86 mm',
    to: 'bore: null',
    path: 'engine.bore',
    says: 'found nothing',
  },
  {
    name: 'a section with nothing in it',
    from: /^speeds:[\s\S]*?(?=^sweep)/m,
    to: 'speeds:\n',
    path: 'speeds',
    says: 'must be a section of keys, found nothing',
    at: 'speeds:',
  },
  {
    name: 'a list where a value belongs',
    from: 'bore: 86 mm',
    to: 'bore: [86 mm, 87 mm]',
    path: 'engine.bore',
    says: 'found a list',
  },
  {
    name: 'a section where a value belongs',
    from: 'bore: 86 mm',
    to: 'bore: { mm: 86 }',
    path: 'engine.bore',
    says: 'found a section of keys',
  },
  {
    name: 'a list where a section belongs',
    from: /ambient:[\s\S]*?(?=\nengine)/,
    to: 'ambient: []\n',
    path: 'ambient',
    says: 'must be a section of keys',
    at: 'ambient: []',
  },
  {
    name: 'a section where a list belongs',
    from: /points:\n( +- .*\n)+/,
    to: 'points: { lift: 3 mm, flow: 91 cfm }\n',
    path: 'intake.valves.flowBench.points',
    says: 'must be a list of rows',
    at: 'points: {',
  },
  {
    name: 'a value where a section belongs',
    from: 'fuel:\n',
    to: 'fuel: petrol\nnotfuel:\n',
    path: 'fuel',
    says: 'must be a section of keys',
    at: 'fuel: petrol',
  },
  {
    name: 'a list of one row',
    from: /points:\n( +- .*\n)+/,
    to: 'points:\n        - { lift: 3 mm, flow: 91 cfm }\n',
    path: 'intake.valves.flowBench.points',
    says: 'too few rows',
    at: '- { lift: 3 mm',
  },
  {
    name: 'a title that is a number',
    from: /title: .*/,
    to: 'title: 2000',
    path: 'title',
    says: 'must be text, found 2000',
  },
  {
    name: 'an empty title',
    from: /title: .*/,
    to: "title: ''",
    path: 'title',
    says: 'the text is empty',
  },
  {
    name: 'an unknown fuel',
    from: 'name: petrol',
    to: 'name: petrl',
    path: 'fuel.name',
    says: '"petrl" is not known here',
  },
  {
    name: 'a valve closing before it opens',
    from: 'close: 60 deg ABDC',
    to: 'close: 60 deg BTDC',
    path: 'intake.valves.lift.close',
    says: 'closes at 300 deg, before it opens at 332 deg',
  },
  {
    name: 'a valve open for more than a turn and a bit',
    from: 'open: 28 deg BTDC',
    to: 'open: 178 deg BTDC',
    path: 'intake.valves.lift.close',
    says: 'open for 418 deg',
    at: 'close: 60 deg',
  },
  {
    name: 'a gauge word on an angle',
    from: 'close: 60 deg ABDC',
    to: 'close: 60 deg gauge',
    path: 'intake.valves.lift.close',
    says: '"gauge" has no meaning here',
  },
  {
    name: 'timing without its check lift',
    from: /^ {6}checkLift: .*\n/m,
    to: '',
    path: 'intake.valves.lift',
    says: 'checkLift is missing',
    at: 'open: 28',
  },
  {
    name: 'timing given twice',
    from: 'open: 28 deg BTDC',
    to: 'centre: 106 deg ATDC\n      open: 28 deg BTDC',
    path: 'intake.valves.lift.centre',
    says: 'the lift is given twice',
    at: 'centre:',
  },
  {
    name: 'a check lift above the full lift',
    from: 'maximum: 10.8 mm',
    to: 'maximum: 1 mm',
    path: 'intake.valves.lift.maximum',
    says: 'does not exceed the check lift',
  },
  {
    name: 'more lift than the valve is wide',
    from: 'maximum: 10.8 mm',
    to: 'maximum: 28 mm',
    path: 'intake.valves.lift.maximum',
    says: 'of the seat diameter',
  },
  {
    name: 'a seat wider than its valve',
    from: 'seatDiameter: 32.5 mm',
    to: 'seatDiameter: 36 mm',
    path: 'intake.valves.seatDiameter',
    says: 'wider than the valve head',
  },
  {
    name: 'valves that do not fit into the bore',
    from: 'headDiameter: 35 mm',
    to: 'headDiameter: 55 mm',
    path: 'intake.valves.headDiameter',
    says: 'they do not fit',
  },
  {
    name: 'a valve wider than the bore',
    from: 'headDiameter: 35 mm',
    to: 'headDiameter: 88 mm',
    path: 'intake.valves.headDiameter',
    says: 'wider than the bore',
  },
  {
    name: 'a rod shorter than the throw',
    from: 'rod: 143 mm',
    to: 'rod: 43 mm',
    path: 'engine.rod',
    says: 'not longer than the throw',
  },
  {
    name: 'a shaft as wide as the bore',
    from: 'shaftDiameter: 8 mm',
    to: 'shaftDiameter: 45 mm',
    path: 'intake.throttle.shaftDiameter',
    says: 'fills half the bore',
  },
  {
    name: 'a shaft outside the body',
    from: 'shaftPosition: 27 mm',
    to: 'shaftPosition: 80 mm',
    path: 'intake.throttle.shaftPosition',
    says: 'outside the body',
  },
  {
    name: 'a plate that is shut',
    from: 'closedAngle: 8 deg',
    to: 'closedAngle: 8 deg\n    angle: 5 deg',
    path: 'intake.throttle.angle',
    says: 'the plate is shut',
    at: 'angle: 5 deg',
  },
  {
    name: 'a baseline shorter than its flare',
    from: 'length: 90 mm',
    to: 'length: 14 mm',
    path: 'intake.trumpet.length',
    says: 'shorter than its bellmouth',
  },
  {
    name: 'swept lengths shorter than the flare',
    from: 'from: 60 mm',
    to: 'from: 0.5 in',
    path: 'sweep.lengths.from',
    says: 'shorter than its bellmouth',
  },
  {
    name: 'half a flare',
    from: 'radius: 12 mm',
    to: 'depth: 12 mm',
    path: 'intake.trumpet.bellmouth',
    says: 'overhang is missing',
  },
  {
    name: 'a flare described twice',
    from: 'radius: 12 mm',
    to: 'radius: 12 mm\n      depth: 12 mm',
    path: 'intake.trumpet.bellmouth.radius',
    says: 'the flare is given twice',
    at: 'radius: 12 mm',
  },
  {
    name: 'a pipe without a diameter',
    from: /^ {4}diameter: 41 mm.*\n/m,
    to: '',
    path: 'exhaust.primary',
    says: 'the diameter is missing',
    at: 'length: 820',
  },
  {
    name: 'a taper with one end',
    from: 'diameter: 41 mm',
    to: 'diameterAirEnd: 41 mm',
    path: 'exhaust.primary',
    says: 'diameterValveEnd is missing',
    at: 'length: 820',
  },
  {
    name: 'five primaries of four cylinders',
    from: 'joined: 4',
    to: 'joined: 3',
    path: 'exhaust.joined',
    says: '4 cylinders cannot be shared out',
  },
  {
    name: 'a joint that leads nowhere',
    from: /^ {2}tail:[\s\S]*?(?=^ {2}silencer)/m,
    to: '',
    path: 'exhaust.joined',
    says: 'no tail leads on',
    at: 'joined: 4',
  },
  {
    name: 'bench points out of order',
    from: 'lift: 9 mm, flow: 221',
    to: 'lift: 7.5 mm, flow: 221',
    path: 'intake.valves.flowBench.points.8.lift',
    says: 'does not rise',
  },
  {
    name: 'a bench flow that no valve passes',
    from: 'flow: 121 cfm',
    to: 'flow: 321 cfm',
    path: 'intake.valves.flowBench.points.3.flow',
    says: 'more than the valves pass',
  },
  {
    name: 'bench and coefficients both',
    from: 'flowBench: # the head',
    to: 'flowCoefficient: { reference: seat, points: [{ liftRatio: 0.1, coefficient: 0.3 }, { liftRatio: 0.3, coefficient: 0.5 }] }\n    flowBench: # the head',
    path: 'intake.valves.flowCoefficient',
    says: 'the flow is given twice',
    at: 'flowCoefficient:',
  },
  {
    name: 'a coefficient above 1',
    base: BOOSTED,
    from: 'coefficient: 0.57',
    to: 'coefficient: 1.2',
    path: 'intake.valves.flowCoefficient.points.5.coefficient',
    says: '1.2 is out of range',
  },
  {
    name: 'a box at vacuum',
    base: BOOSTED,
    from: '0.7 bar gauge',
    to: '-0.9 bar gauge',
    path: 'intake.feed.pressure',
    says: '0.110 bar absolute is out of range',
  },
  {
    name: 'a lift table that begins open',
    base: SIX,
    from: 'lift: 0.00 mm',
    to: 'lift: 0.50 mm',
    path: 'intake.valves.lift.table.0.lift',
    says: 'does not begin and end shut',
  },
  {
    name: 'a lift table that runs back',
    base: SIX,
    from: '10 deg ATDC',
    to: '10 deg BTDC',
    path: 'intake.valves.lift.table.7.angle',
    says: 'does not rise',
    at: 'lift: 4.75 mm',
  },
  {
    name: 'a row without its lift',
    base: SIX,
    from: ', lift: 3.70 mm',
    to: '',
    path: 'intake.valves.lift.table.6.lift',
    says: 'is missing',
    at: '{ angle: 0 deg',
  },
  {
    name: 'weights that are all 0',
    base: SIX,
    from: /weight: \d/g,
    to: 'weight: 0',
    path: 'target.weights',
    says: 'all weights are 0',
    at: '- { speed: 4500',
  },
  {
    name: 'a band outside the speeds',
    from: 'to: 7400 rpm',
    to: 'to: 9400 rpm',
    path: 'target.to',
    says: 'outside the speeds computed',
  },
  {
    name: 'an empty band',
    from: 'from: 5400 rpm',
    to: 'from: 7600 rpm',
    path: 'target.to',
    says: 'the band is empty',
    at: 'to: 7400 rpm',
  },
  {
    name: 'a band with one speed in it',
    from: 'from: 5400 rpm',
    to: 'from: 7200 rpm',
    path: 'target',
    says: 'only 1 of the speeds',
  },
  {
    name: 'speeds that run backwards',
    from: 'from: 3000 rpm',
    to: 'from: 9000 rpm',
    path: 'speeds.to',
    says: 'runs backwards',
    at: 'to: 8600 rpm',
  },
  {
    name: 'a step that does not divide the range',
    from: 'step: 400 rpm',
    to: 'step: 450 rpm',
    path: 'speeds.step',
    says: '12.44 steps long',
  },
  {
    name: 'a range of lengths without its step',
    from: /^ {4}step: 20 mm\n/m,
    to: '',
    path: 'sweep.lengths',
    says: 'step is missing',
    at: 'from: 60',
  },
  {
    name: 'a list of speeds with a step',
    from: /^speeds:[\s\S]*?(?=^sweep)/m,
    to: 'speeds:\n  at: [5000 rpm, 6000 rpm, 7000 rpm]\n  step: 100 rpm\n\n',
    path: 'speeds.step',
    says: 'a list has no step',
    at: 'step: 100 rpm',
  },
  {
    name: 'too many points',
    from: 'step: 20 mm',
    to: 'step: 0.5 mm',
    path: 'sweep.lengths',
    says: '481 lengths at 15 speeds make 7215 points',
    at: 'from: 60 mm',
  },
  {
    name: 'a key that JavaScript knows',
    from: 'ambient:',
    to: 'constructor: { prototype: 1 }\nambient:',
    path: 'constructor',
    says: '"constructor" is not a key',
    at: 'constructor',
  },
  {
    name: 'a key that JavaScript abuses',
    from: 'ambient:',
    to: '__proto__: { polluted: 1 }\nambient:',
    path: '__proto__',
    says: '"__proto__" is not a key',
    at: '__proto__',
  },
  {
    name: 'the same key twice',
    from: '  stroke: 86 mm',
    to: '  bore: 87 mm\n  stroke: 86 mm',
    path: '',
    says: 'stands here twice',
    at: 'bore: 87 mm',
  },
  {
    name: 'tabs',
    from: '  bore: 86 mm',
    to: '\tbore: 86 mm',
    path: '',
    says: 'Tabs are not allowed',
    at: '\tbore',
  },
  {
    name: 'indentation out of step',
    from: '  stroke: 86 mm',
    to: '   stroke: 86 mm',
    path: '',
    says: '',
    at: '   stroke',
  },
  {
    name: 'a bracket left open',
    from: '{ lift: 1 mm, flow: 29 cfm }',
    to: '{ lift: 1 mm, flow: 29 cfm',
    path: '',
    says: '',
    at: '- { lift: 2 mm',
  },
  {
    name: 'a tag',
    from: 'bore: 86 mm',
    to: 'bore: !!js/function "86 mm"',
    path: '',
    says: 'Unresolved tag',
  },
  {
    name: 'a second document',
    from: 'speeds:',
    to: '---\nspeeds:',
    path: '',
    says: 'several documents',
    at: '---',
  },
];

describe('one thing wrong in a good file', () => {
  test.each(EDITS)('$name', ({ base = GOOD, from, to, path, says, at }) => {
    const text = edit(base, from, to);
    const issues = issuesOf(text);
    const issue = issues.find((one) => one.path === path);
    expect(issues.map((one) => one.path)).toContain(path);
    expect(issue?.message).toContain(says);
    expect(issue?.line).toBe(lineOf(text, at ?? to));
    expect(issue?.column).toBeGreaterThan(0);
    expect(issue?.remedy.length).toBeGreaterThan(5);
    expect(issue?.file).toBe('bad.yaml');
  });
});

describe('no scenario at all', () => {
  const nested = (levels: number) => `a: ${'['.repeat(levels)}${']'.repeat(levels)}`;
  const bomb = Array.from({ length: 30 }, (_, i) => {
    return `k${i}: &k${i} [${i === 0 ? 'lol' : `*k${i - 1}, *k${i - 1}, *k${i - 1}`}]`;
  }).join('\n');
  test.each<[string, string, string]>([
    ['nothing', '', 'nothing instead of named sections'],
    ['blanks', '  \n\n ', 'nothing instead of named sections'],
    ['a remark', '# title: none\n', 'nothing instead of named sections'],
    ['null', '~', 'nothing instead of named sections'],
    ['a number', '42', 'bare text'],
    ['a sentence', 'an engine with four cylinders', 'bare text'],
    ['a list', '- title\n- engine\n', 'a list instead'],
    ['bytes of a picture', '\u0089PNG\r\n\u001a\n\0\0\0\rIHDR\0\0', ''],
    ['zero bytes', '\0'.repeat(100), ''],
    ['a byte order mark alone', '\ufeff', 'nothing instead of named sections'],
    ['broken surrogates', '\ud800: \udfff', '"\ud800" is not a key'],
    ['JSON of something else', '{"name": "x", "version": 1}', '"version" is not a key'],
    ['markup', '<html><body>title: x</body></html>', ''],
    ['a table', 'rpm,ve\n3000,0.9\n', ''],
    ['keys that are no text', '? [a, b]\n: c\n', ''],
    ['numbers as keys', '1: 2\n', ''],
    ['a text too long', `title: ${'x'.repeat(300_000)}`, 'characters'],
    ['a megabyte of brackets', '['.repeat(1 << 20), 'characters'],
    ['200,000 brackets', '['.repeat(200_000), 'nested too deeply'],
    ['200,000 dashes', '- '.repeat(100_000), 'nested too deeply'],
    ['100 levels', nested(100), 'nested too deeply'],
    ['21 levels', nested(21), 'nested too deeply'],
    ['an alias bomb', bomb, 'repeats another place'],
    ['an alias to itself', 'a: &a [*a]', 'repeats another place'],
    ['an alias to nothing', 'a: *b', ''],
    ['a merge of sections', 'a: &a { b: 1 }\nc:\n  <<: *a\n', 'repeats another place'],
    ['4,000 equal keys', 'a: 1\n'.repeat(4000), 'stands here twice'],
    ['20,000 equal keys', 'a: 1\n'.repeat(20_000), 'keys and values'],
    [
      '4,000 unknown keys',
      Array.from({ length: 4000 }, (_, i) => `k${i}: 1`).join('\n'),
      'not a key',
    ],
  ])('%s', (_, text, says) => {
    const issues = issuesOf(text);
    expect(issues.length).toBeGreaterThan(0);
    expect(issues.some((issue) => issue.message.includes(says))).toBe(true);
    const placed = issues.every(({ line, column, remedy }) => line > 0 && column > 0 && remedy);
    expect(placed).toBe(true);
  });

  test('a title of 201 characters', () => {
    const text = edit(GOOD, /title: .*/, `title: ${'x'.repeat(201)}`);
    expect(issuesOf(text)[0]).toMatchObject({ path: 'title', limit: 'at most 200 characters' });
  });

  test('20 levels pass the bound on depth', () => {
    expect(issuesOf(nested(19)).some((issue) => issue.message.includes('deeply'))).toBe(false);
  });

  test('a polluting key pollutes nothing', () => {
    issuesOf(`__proto__:\n  polluted: 1\n${GOOD}`);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

describe('an engine of another kind gets one refusal', () => {
  test.each([
    ['strokes: 2', /^ {2}cylinders: 4/m, '  strokes: 2\n  cylinders: 4', 'engine.strokes'],
    ['a kind in words', /^ {2}cylinders: 4/m, '  type: two-stroke\n  cylinders: 4', 'engine.type'],
    ['so many strokes', /^ {2}cylinders: 4/m, '  type: 2 stroke\n  cylinders: 4', 'engine.type'],
    ['rotors', /^engine:\n[\s\S]*?(?=^intake)/m, 'engine:\n  rotors: 2\n', 'engine.rotors'],
    ['kind: wankel', /^ {2}cylinders: 4/m, '  kind: wankel\n  cylinders: 4', 'engine.kind'],
    ['kind: twin rotor', /^ {2}cylinders: 4/m, '  kind: twin rotor\n  cylinders: 4', 'engine.kind'],
    [
      'cycleType: 2-stroke',
      /^ {2}cylinders: 4/m,
      '  cycleType: 2-stroke\n  cylinders: 4',
      'engine.cycleType',
    ],
    ['a kind above all', /^engine:/m, 'kind: wankel\nengine:', 'kind'],
    ['rotary', /^engine:\n[\s\S]*?(?=^intake)/m, 'engine: rotary\n', 'engine'],
  ])('%s', (_, from, to, path) => {
    const issues = issuesOf(edit(GOOD, from, to));
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({
      path,
      message: 'two-stroke and rotary engines are not computed',
    });
    expect(issues[0]!.line).toBeGreaterThan(10);
  });

  test.each(['strokes: 4', 'cycle: four-stroke', 'type: 4 stroke'])(
    '%s goes without saying',
    (said) => {
      const issues = issuesOf(edit(GOOD, /^ {2}cylinders: 4/m, `  ${said}\n  cylinders: 4`));
      expect(issues).toHaveLength(1);
      expect(issues[0]).toMatchObject({
        message: 'four strokes go without saying: no other engine is computed',
        remedy: 'leave the line out',
      });
    },
  );
});

describe('an angle that names no dead centre', () => {
  test.each([
    ['close: 60 deg ABDC', 'close: 60 deg', 'did you mean 60 deg ABDC?'],
    ['open: 58 deg BBDC', 'open: 58 deg', 'did you mean 58 deg BBDC?'],
  ])('%s written %s', (from, to, remedy) => {
    const [issue, ...others] = issuesOf(edit(GOOD, from, to));
    expect(others).toEqual([]);
    expect(issue!.message).toContain('names no dead centre');
    expect(issue!.remedy).toContain(remedy);
  });

  test.each([
    ['open: 28 deg BTDC', 'open: 28', '28 deg BTDC'],
    ['open: 58 deg BBDC', 'open: 58', '58 deg BBDC'],
  ])('%s written %s, without a unit too', (from, to, example) => {
    const [issue, ...others] = issuesOf(edit(GOOD, from, to));
    expect(others).toEqual([]);
    expect(issue!.remedy).toContain(`for example: ${example}`);
  });

  test('a burn counts from its own dead centre', () => {
    const late = edit(GOOD, 'burn50: 9 deg ATDC', 'burn50: 30 deg');
    expect(readScenario(late, 'x').engine.combustion.burn50).toBe(30);
  });

  test('a lobe centre of 106 deg', () => {
    const single = readFileSync('scenarios/sprint-single.yaml', 'utf8');
    const exhaust = issuesOf(edit(single, 'centre: 106 deg BTDC', 'centre: 106 deg'));
    expect(exhaust[0]!.remedy).toContain('did you mean 106 deg BTDC?');
    const intake = issuesOf(edit(single, 'centre: 104 deg ATDC', 'centre: 104 deg'));
    expect(intake[0]!.remedy).toContain('did you mean 104 deg ATDC?');
    const whole = readScenario(edit(single, 'centre: 106 deg BTDC', 'centre: 254 deg'), 'x');
    expect(whole.engine).toEqual(readScenario(single, 'x').engine);
  });
});

describe('several things wrong', () => {
  const several = [
    ['bore: 86 mm', 'bore: 0 mm'],
    ['rod: 143 mm', 'rodd: 143 mm'],
    ['pressure: 985 mbar', 'pressure: 985 km'],
    ['close: 60 deg ABDC', 'close: 60 deg BTDC'],
    ['joined: 4', 'joined: 3'],
    ['to: 7400 rpm', 'to: 9400 rpm'],
  ].reduce((text, [from, to]) => edit(text, from!, to!), GOOD);

  test('all come at once, in the order of the file', () => {
    const issues = issuesOf(several);
    expect(issues.map(({ path }) => path)).toEqual([
      'ambient.pressure',
      'engine.rod',
      'engine.bore',
      'engine.rodd',
      'intake.valves.lift.close',
      'exhaust.joined',
      'target.to',
    ]);
    const lines = issues.map(({ line }) => line);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
  });

  test('as data: file, place, path, value, limit and remedy', () => {
    expect(issuesOf(several)[2]).toEqual({
      file: 'bad.yaml',
      line: lineOf(several, 'bore: 0 mm'),
      column: 9,
      path: 'engine.bore',
      value: '0 mm',
      message: '0 mm is out of range',
      limit: '10 mm to 300 mm',
      remedy: 'keep within the limit. Cylinder bore, by bore gauge.',
    });
  });

  test('as text: place and problem, limit, remedy', () => {
    const error = new ScenarioError(issuesOf(several).slice(2, 4));
    expect(error.message).toBe(
      [
        `bad.yaml:${lineOf(several, 'bore: 0 mm')}:9 engine.bore: 0 mm is out of range`,
        '    limit: 10 mm to 300 mm',
        '    remedy: keep within the limit. Cylinder bore, by bore gauge.',
        `bad.yaml:${lineOf(several, 'rodd')}:3 engine.rodd: "rodd" is not a key of this section`,
        '    remedy: did you mean "rod"?',
      ].join('\n'),
    );
  });

  test('the text stops after forty; the data holds all', () => {
    const { message, issues } = new ScenarioError(issuesOf('a: 1\n'.repeat(100)));
    expect(issues).toHaveLength(99);
    expect(message).toMatch(/and 59 more$/);
  });
});

describe('random damage', () => {
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

  /** Bytes changed, cut out, doubled or swapped, decoded as a file would be. */
  function damaged(text: string, random: () => number): string {
    const bytes = [...Buffer.from(text)];
    const at = () => Math.floor(random() * bytes.length);
    for (let hits = 1 + Math.floor(random() * 8); hits > 0; hits--) {
      const kind = Math.floor(random() * 5);
      const length = 1 + Math.floor(random() * 40);
      if (kind === 0) bytes[at()] = Math.floor(random() * 256);
      else if (kind === 1) bytes.splice(at(), length);
      else if (kind === 2) bytes.splice(at(), 0, ...bytes.slice(at(), at() + length));
      else if (kind === 3) bytes[at()] = ':-[]{}#&*!|>%@`\'",\t\n 0'.charCodeAt(length % 23);
      else bytes.splice(at(), 0, bytes[at()] ?? 0);
    }
    return Buffer.from(bytes).toString('utf8');
  }

  test.each([
    ['hill-climb', GOOD, 1],
    ['endurance-six', SIX, 2],
    ['boosted-four', BOOSTED, 3],
  ])(`${COPIES} damaged copies of %s read or give a ScenarioError`, (_, text, seed) => {
    const random = seeded(seed);
    let refused = 0;
    for (let copy = 0; copy < COPIES; copy++) {
      const bad = damaged(text, random);
      try {
        const { engine } = readScenario(bad, 'bad.yaml');
        expect(Number.isFinite(engine.cylinder.bore)).toBe(true);
      } catch (error) {
        expect(error, bad).toBeInstanceOf(ScenarioError);
        const { issues } = error as ScenarioError;
        expect(issues.every(({ line, column, remedy }) => line > 0 && column > 0 && remedy)).toBe(
          true,
        );
        refused++;
      }
    }
    expect(refused).toBeGreaterThan(COPIES / 2);
    expect(refused).toBeLessThan(COPIES);
  });
});
