/** Entry of the command line. */
import { runCommandLine } from './program.ts';

/** A reader that has seen enough, as in `trumpetry check FILE | head`, is no failure. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

const { stdout: out, stderr: err } = process;
process.exitCode = await runCommandLine(process.argv.slice(2), { out, err });
