/**
 * `prove`: every published value beside ours. The checks are tests, so the command is added to the
 * program in the repository only (main.ts beside); they are loaded when it is called.
 */
import { type Command, Option } from 'commander';
import type { Terminal } from '../../sim/cli/terminal.ts';
import type { ProofOptions, runProof } from './run.ts';

type Prove = Parameters<typeof runProof>[2];

export function addProve(
  root: Command,
  terminal: Terminal,
  end: { code: number },
  checks?: Prove,
): void {
  root
    .command('prove')
    .description('every published value beside what this program computes (in the repository)')
    .addOption(new Option('--json', 'print one JSON document and nothing else'))
    .option('--out <folder>', 'write proof.json there')
    .option('--pages <folder>', 'write proof.md there, and of slow studies studies.md')
    .option('--slow', 'slow studies too, many minutes')
    .action(async (options: ProofOptions) => {
      const { runProof } = await import('./run.ts');
      end.code = runProof(terminal, options, checks);
    });
}
