/** The command line as a program: its arguments, its streams, its exit code. */
import { EXIT } from './exit.ts';
import { type AddCommand, runCommandLine } from './program.ts';
import { storageProblem } from './storage.ts';

/** Runs what the program was called with, and with it the commands that are added. */
export async function runProgram(added: readonly AddCommand[] = []): Promise<void> {
  const { stdout: out, stderr: err } = process;
  const unprinted = watchOutput();
  const code = await runCommandLine(process.argv.slice(2), { out, err }, added);
  process.exitCode = unprinted.known ? EXIT.failed : code;
}

/**
 * A reader that has seen enough, as in `trumpetry check FILE | head`, is no failure; whatever files
 * were asked for are written all the same. A full disk behind `> file` is one.
 */
function watchOutput(): { known: boolean } {
  const { stdout: out, stderr: err } = process;
  const unprinted = { known: false };
  out.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE' || unprinted.known) return;
    unprinted.known = true;
    process.exitCode = EXIT.failed;
    const problem = storageProblem(error) ?? error.message;
    err.write(`error: the result could not be printed: ${problem}\n`);
  });
  err.on('error', () => {}); // nowhere is left to say so
  return unprinted;
}
