/**
 * Big jobs merged: 100,000 points that are made up and stored, by `table --rows` of 25,000 rows at four speeds and by
 * `sweep --vary` of two keys, 10,000 combinations at ten speeds; then `merge` by the program as it is shipped, its
 * processor time and its greatest memory. Takes minutes:
 *
 *   node --import tsx tests/bench/bigMerge.ts [table|sweep]
 */
import { spawnSync } from 'node:child_process';
import { answerFrom, fileOf, freshFolder } from '../cli/commandLine.ts';
import { chanceWorkers } from '../golden/chance.ts';
import { cheapText } from '../golden/cheap.ts';
import { bundledProgram } from '../sweep/program.ts';

/** Told as the program ends. */
const USAGE = `data:text/javascript,${encodeURIComponent(`
process.on('exit', () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  const seconds = (userCPUTime + systemCPUTime) / 1e6;
  console.error(seconds.toFixed(0) + ' s of processor time, ' + (maxRSS / 1024).toFixed(0) + ' MB');
});`)}`;

const ROWS = 25_000;
const VARIED = [
  '--vary=intake.trumpet.length=80mm..278mm/2mm',
  '--vary=engine.compressionRatio=10..14.95/0.05',
];
const SPEEDS = [4600, 5000, 5400, 5800, 6200, 6600, 7000, 7400, 7800, 8200];

const [job = 'both'] = process.argv.slice(2);

if (job !== 'sweep') await merged('table', [cheap(), '--rows', rows()]);
if (job !== 'table') await merged('sweep', [cheap(SPEEDS), ...VARIED]);

async function merged(command: string, asked: readonly string[]): Promise<void> {
  const all = [...asked, '--out', freshFolder(), '--quiet'];
  const stored = await answerFrom(chanceWorkers, command, ...all);
  if (stored.code !== 0) throw new Error(stored.stderr);
  console.log(`${command}, 100,000 points merged:`);
  const words = ['--import', USAGE, bundledProgram(), 'merge', ...all];
  const { status } = spawnSync(process.execPath, words, { stdio: ['ignore', 'ignore', 'inherit'] });
  if (status !== 0) process.exitCode = 1;
}

function cheap(speeds?: readonly number[]): string {
  const text = cheapText('hill-climb');
  const at = speeds && `speeds:\n  at: [${speeds.map((speed) => `${speed} rpm`).join(', ')}]\n`;
  return fileOf(at ? text.replace(/^speeds:\n(?: .*\n)+/m, at) : text, 'hill-climb.yaml');
}

function rows(): string {
  const lines = Array.from({ length: ROWS }, (_, i) => `${80 + i / 125},${11 + i / 1e5}`);
  const head = 'intake.trumpet.length [mm],engine.compressionRatio';
  return fileOf([head, ...lines].join('\n'), 'variants.csv');
}
