/** What comes in and goes out beside results: standard input, escapes, progress, quiet, odd folders. */
import { spawn } from 'node:child_process';
import { PassThrough } from 'node:stream';
import { text as textOf } from 'node:stream/consumers';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { progressOn } from '../../sim/cli/progress.ts';
import type { Output } from '../../sim/cli/terminal.ts';
import { chanceWorkers } from '../golden/chance.ts';
import { answer, answerFrom, coarseText, ended, fileOf, start } from './commandLine.ts';

const HILL = 'scenarios/hill-climb.yaml';

describe('what commands a terminal', () => {
  const odd = '"\\e[31mred\\e]0;x\\a \\x9b2J \\u202Eback"';
  const shown = '\\u001b[31mred\\u001b]0;x\\u0007 \\u009b2J \\u202eback';
  const file = fileOf(coarseText().replace(/^title: .*/m, `title: ${odd}`));

  test('a title is shown as text', async () => {
    const { stdout } = await answer('check', file);
    expect(stdout.startsWith(`${shown}\n`)).toBe(true);
  });

  test('as JSON it is the same title', async () => {
    const { stdout } = await answer('check', file, '--json');
    expect(stdout).toMatch(/^[ -~\n°²³–’]*$/u);
    expect(JSON.parse(stdout).scenario.title).toBe('\x1b[31mred\x1b]0;x\x07 \x9b2J \u202eback');
  });

  test('so are keys and values that are wrong, and names of files', async () => {
    const wrong = `${coarseText()}\n"\\e[2Jkey": 3\n`;
    const { stderr } = await answer('check', fileOf(wrong, 'a\x1b[2Jb.yaml'));
    expect(stderr).toContain('a\\u001b[2Jb.yaml:');
    expect(stderr).toContain('\\u001b[2Jkey');
    expect(stderr).not.toContain('\x1b');
  });
});

describe('a file that is no UTF-8', () => {
  const text = coarseText().replace(/^title: .*/m, 'title: "Übung, Größe"');
  const [first] = text.split('\n').flatMap((line, i) => (/^title/.test(line) ? [i + 1] : []));

  test.each<[string, Uint8Array, string]>([
    [
      'of old Windows',
      Buffer.from(text, 'latin1'),
      `:${first}:9 byte 0xdc is not UTF-8; in the older encoding of western Windows it is "Ü"`,
    ],
    [
      'of two bytes',
      Buffer.from(`\ufeff${text}`, 'utf16le'),
      ':1:1 the file is UTF-16 (little-endian) text',
    ],
    ['cut inside a letter', Buffer.from('title: ä').subarray(0, -1), ':1:8 byte 0xc3 is not UTF-8'],
    ['a picture', Uint8Array.of(0x89, 0x50, 0, 0xff), ':1:1 the file is no text'],
  ])('%s', async (_, bytes, says) => {
    const file = fileOf(bytes);
    const { code, stderr } = await answer('check', file);
    expect(code).toBe(2);
    expect(stderr).toContain(`${file}${says}`);
  });
});

describe('standard input', () => {
  const piped = async (text: string, ...words: string[]) => {
    const program = start(...words);
    program.stdin!.end(text);
    return ended(program);
  };

  test('- is the scenario that is piped in', async () => {
    const told = await piped(coarseText(), 'check', '-', '--json');
    const file = await answer('check', fileOf(coarseText()), '--json');
    expect(told).toEqual(file);
  });

  test('its mistakes are told of stdin', async () => {
    const { code, stderr } = await piped('title: 3\n', 'check', '-');
    expect(code).toBe(2);
    expect(stderr).toMatch(/^stdin:1:/);
  });

  test('without end it is not read for ever', async () => {
    const program = start('check', '-');
    const yes = spawn('yes');
    yes.stdout.pipe(program.stdin!);
    program.stdin!.on('error', () => yes.kill());
    const { code, stderr } = await ended(program);
    yes.kill();
    expect({ code, stderr }).toEqual({
      code: 2,
      stderr: 'error: stdin is too large for a scenario\n',
    });
  });
});

describe('a folder that cannot be', () => {
  test.each([
    ['', /--out names no folder/],
    ['/proc/nowhere/deep', /\/proc\/nowhere: no folder can be made there/],
    [`${HILL}/x`, /a part of the path is a file/],
    [HILL, /there is a file of that name/],
    ['x'.repeat(300), /the name is too long/],
  ])('%s', async (folder, says) => {
    const { code, stderr } = await answerFrom(chanceWorkers, 'curve', HILL, '--out', folder);
    expect(stderr).toMatch(says);
    expect(code).toBe(2);
  });
});

describe('progress', () => {
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllEnvs();
  });

  /** What a job of four points writes, the clock put on by a minute after each. */
  async function written(terminal: Partial<Output>): Promise<string> {
    vi.useFakeTimers();
    const stream = Object.assign(new PassThrough(), terminal);
    const progress = progressOn(stream);
    progress.onTotal!(4);
    for (let i = 0; i < 4; i++) {
      progress.onPoint!(0 as never, 0 as never, 0 as never);
      vi.advanceTimersByTime(60_000);
    }
    progress.stop();
    stream.end();
    return textOf(stream);
  }

  const LINES = '1 of 4 points\n2 of 4 points\n3 of 4 points\n4 of 4 points\n';

  test('a line a minute where there is no terminal', async () => {
    expect(await written({})).toBe(LINES);
  });

  test('the same on a terminal that cannot go back', async () => {
    vi.stubEnv('TERM', 'dumb');
    expect(await written({ isTTY: true, columns: 80 })).toBe(LINES);
  });

  test.each([24, 50, 80, 200])('a bar fits %i columns', async (columns) => {
    vi.stubEnv('TERM', 'xterm');
    const cursorTo = vi.fn();
    const said = await written({ isTTY: true, columns, cursorTo, clearLine: vi.fn() } as object);
    expect(said).toContain('of 4 points');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: what a bar is drawn with.
    const drawn = said.split(/\x1b\[[^A-Za-z]*[A-Za-z]|\r|\n/);
    expect(Math.max(...drawn.map((line) => line.length))).toBeLessThanOrEqual(columns);
  });
});

test('--quiet leaves results and errors', async () => {
  const unusual = coarseText().replace('compressionRatio: 12.4', 'compressionRatio: 17');
  const words = ['curve', fileOf(unusual), '--json'];
  const loud = await answerFrom(chanceWorkers, ...words);
  const quiet = await answerFrom(chanceWorkers, ...words, '--quiet');
  expect(loud.stderr).toContain('warning: engine.compressionRatio');
  expect(quiet.stdout).toBe(loud.stdout);
  expect(quiet.stderr).toBe('');
  const wrong = await answer('sweep', 'none.yaml', '--quiet');
  expect(wrong.stderr).toContain('none.yaml: there is no such file');
});
