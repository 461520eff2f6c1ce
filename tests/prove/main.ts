/** The program as the repository runs it: what is shipped, and the proof. */
import { runProgram } from '../../sim/cli/entry.ts';
import { addProve } from './command.ts';

await runProgram([addProve]);
