/** What the documents say, the program does. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checkDocument, curveDocument, lengthStudy, sweepDocument } from '../sim/index.ts';
import { answer } from './cli/commandLine.ts';
import { SECTIONS, sectionOf } from './readmeSections.ts';
import { readDemo, toyRunner } from './toy.ts';

const read = (file: string) => readFileSync(file, 'utf8');
const readme = read('README.md');
const DOCUMENTS = ['README.md', 'DEVELOPERS.md', 'docs/cli.md'];

test.each(Object.entries(SECTIONS))('README: %s as the program says it', (name, text) => {
  expect(sectionOf(readme, name)).toBe(text);
});

describe('README: the example', () => {
  const lines = sectionOf(readme, 'example').split('\n').slice(1, -1);
  const scenario = readDemo('hill-climb');

  test('begins with the engine and the decision', () => {
    expect(lines[0]).toBe(scenario.title);
    expect(lines[2]).toMatch(
      /^Make the trumpets longer: \d+ mm, in place of the 90 mm fitted now\.$/,
    );
    expect(lines[3]).toMatch(
      /^In the band from 5400 to 7400 rpm the trumpets give \d+\.\d % more: mean/,
    );
  });

  test('has a row for every length, the recommended one marked', () => {
    const rows = lines.flatMap((line) => /^ +(\d+) +\d\.\d{3} /.exec(line)?.[1] ?? []).map(Number);
    const tried = scenario.sweep.lengths.map((length) => Math.round(length * 1e3));
    for (const length of [...tried, 90]) expect(rows).toContain(length);
    const [, cut] = /^Make the trumpets longer: (\d+) mm/.exec(lines[2]!)!;
    expect(lines.find((line) => line.trimStart().startsWith(`${cut} `))).toMatch(/take this$/);
  });
});

describe('docs/cli.md', () => {
  const text = read('docs/cli.md');
  const scenario = readDemo('hill-climb');
  const { engine, speeds, sweep, target } = scenario;
  const runner = toyRunner(({ length, speed }) => 1 - ((speed - 9000 + 12e3 * length) / 1e4) ** 2);
  const documented = (keys: string[]) => keys.filter((key) => !text.includes(`\`${key}\``));

  test('names every key of the documents of sweep and curve', async () => {
    const question = { engine, lengths: sweep.lengths, speeds, target, refine: true };
    const study = await lengthStudy(question, runner);
    const whole = sweepDocument(study, scenario);
    const curve = curveDocument(study.baseline, scenario);
    const keys = [whole, whole.target, whole.recommended, whole.audit, curve].flatMap(Object.keys);
    expect(keys.length).toBeGreaterThan(40);
    expect(documented(keys)).toEqual([]);
  });

  test('names every key of the document of check', () => {
    expect(documented(Object.keys(checkDocument(scenario)))).toEqual([]);
  });

  test('names every option of every command', async () => {
    const { stdout } = await answer('--help');
    const commands = [...stdout.matchAll(/^ {2}(\w+) .*FILE/gm)].map(([, name]) => name!);
    expect(commands).toContain('sweep');
    for (const command of commands) {
      expect(text).toContain(`\`${command}\``);
      const help = await answer(command, '--help');
      const options = [...help.stdout.matchAll(/^ {2}(?:-\w, )?(--[a-z]+)/gm)].map(
        ([, name]) => name!,
      );
      for (const option of options.filter((name) => name !== '--help')) {
        expect(text, `${command} ${option}`).toMatch(new RegExp(`\`${option}\\b`));
      }
    }
  });
});

describe.each(DOCUMENTS)('%s', (file) => {
  const text = read(file);

  test('links to files that are there', () => {
    for (const [, link] of text.matchAll(/\]\((?!https?:|#)([^)#]+)/g)) {
      expect(existsSync(join(dirname(file), link!)), `${file} links to ${link}`).toBe(true);
    }
  });

  test('names scripts of package.json, and files that are there', () => {
    const { scripts } = JSON.parse(read('package.json'));
    const named = [...text.matchAll(/npm run (?:-s )?(?!-)([\w:-]+)/g)].map(([, name]) => name);
    for (const name of named) expect(Object.keys(scripts)).toContain(name);
    for (const [, path] of text.matchAll(/`((?:sim|tests|scenarios|docs|web)\/[\w./-]+)`/g)) {
      expect(existsSync(path!), `${file} names ${path}`).toBe(true);
    }
  });

  test('names commands and options that are there', async () => {
    for (const [, command, rest] of text.matchAll(/trumpetry -- (\w+) ([^`\n]*)/g)) {
      const { code, stdout } = await answer(command!, '--help');
      expect(code).toBe(0);
      for (const [option] of rest!.matchAll(/--[a-z]+/g)) expect(stdout).toContain(option);
    }
  });
});

test.each([
  ...DOCUMENTS.slice(0, 2),
  'CHANGELOG.md',
  ...readdirSync('docs').map((name) => `docs/${name}`),
])('what %s links and names is there', (file) => {
  const text = read(file);
  const links = [...text.matchAll(/\]\((?!https?:)([^)#\s]+)/g)].map(([, to]) =>
    join(dirname(file), to!),
  );
  const names = [...text.matchAll(/`((?:sim|tests|scenarios|docs|web)\/[\w./-]+)`/g)].map(
    ([, path]) => path!,
  );
  expect([...links, ...names].filter((path) => !existsSync(path))).toEqual([]);
});
