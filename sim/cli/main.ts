/** Entry of the command line. */
import { EXIT } from './exit.ts';
import { runCommandLine } from './program.ts';
import { storageProblem } from './storage.ts';

const { stdout: out, stderr: err } = process;

/**
 * A reader that has seen enough, as in `trumpetry check FILE | head`, is no failure; whatever files
 * were asked for are written all the same. A full disk behind `> file` is one.
 */
let untold = false;
out.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE' || untold) return;
  untold = true;
  process.exitCode = EXIT.failed;
  err.write(`error: the result could not be printed: ${storageProblem(error) ?? error.message}\n`);
});
err.on('error', () => {}); // nowhere is left to say so

const code = await runCommandLine(process.argv.slice(2), { out, err });
process.exitCode = untold ? EXIT.failed : code;
