/**
 * A big job merged: 25,000 rows at four speeds, whose 100,000 points are made up and stored by `table --rows`; then
 * `merge` in a process of its own, its processor time and its greatest memory. Takes two minutes:
 *
 *   node --import tsx tests/bench/bigMerge.ts
 */
import { spawnSync } from 'node:child_process';
import { answerFrom, fileOf, freshFolder } from '../cli/commandLine.ts';
import { chanceWorkers } from '../golden/chance.ts';
import { cheapText } from '../golden/cheap.ts';

const ROWS = 25_000;
const [out, file, rows] = process.argv.slice(2);

if (out && file && rows) {
  const { code } = await answerFrom(chanceWorkers, ...words('merge', file, rows, out));
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  const seconds = (userCPUTime + systemCPUTime) / 1e6;
  console.log(
    `merged: ${seconds.toFixed(0)} s of processor time, ${(maxRSS / 1024).toFixed(0)} MB`,
  );
  process.exitCode = code ?? 1;
} else {
  const scenario = fileOf(cheapText('hill-climb'), 'hill-climb.yaml');
  const lines = Array.from({ length: ROWS }, (_, i) => `${80 + i / 125},${11 + i / 1e5}`);
  const head = 'intake.trumpet.length [mm],engine.compressionRatio';
  const variants = fileOf([head, ...lines].join('\n'), 'variants.csv');
  const folder = freshFolder();
  const stored = await answerFrom(chanceWorkers, ...words('table', scenario, variants, folder));
  if (stored.code !== 0) throw new Error(stored.stderr);
  const again = [import.meta.filename, folder, scenario, variants];
  spawnSync(process.execPath, ['--import', 'tsx', ...again], { stdio: 'inherit' });
}

function words(command: string, scenario: string, variants: string, folder: string): string[] {
  return [command, scenario, '--rows', variants, '--out', folder, '--quiet'];
}
