/** The command line: its commands, their options, and how every end becomes an exit code. */
import { Command, CommanderError, Option } from 'commander';
import { errorDocument, PROGRAM, ScenarioError, UNKNOWN_NAMES } from '../index.ts';
import { check } from './commands/check.ts';
import { type CompareOptions, compare } from './commands/compare.ts';
import { type CurveOptions, curve } from './commands/curve.ts';
import { inject } from './commands/inject.ts';
import { type ProveOptions, prove } from './commands/prove.ts';
import { merge, type SweepOptions, sweep } from './commands/sweep.ts';
import { type TraceOptions, trace } from './commands/trace.ts';
import { ComputationError, EXIT, InputError, Interrupted } from './exit.ts';
import { printJson, remark, type Terminal } from './terminal.ts';

/**
 * Runs one command.
 *
 * @param words what follows the program's name
 * @returns the exit code
 */
export async function runCommandLine(words: readonly string[], streams: Streams): Promise<number> {
  // Known before anything is parsed, so that a wrong option too is told in the form asked for.
  const terminal: Terminal = { ...streams, json: words.includes('--json') };
  const end = { code: EXIT.done as number };
  try {
    await program(terminal, end).parseAsync(words, { from: 'user' });
    return end.code;
  } catch (error) {
    return failed(terminal, error);
  }
}

type Streams = Omit<Terminal, 'json'>;

function program(terminal: Terminal, end: { code: number }): Command {
  const root = new Command('trumpetry')
    .description(
      'Which trumpet length fills the cylinders best in the band that matters, what it gains, and ' +
        'what it costs elsewhere.',
    )
    .version(PROGRAM.version)
    .exitOverride()
    .showSuggestionAfterError()
    .configureOutput({
      writeOut: (text) => terminal.out.write(text),
      writeErr: (text) => terminal.err.write(text),
      outputError: () => {}, // told once, in failed()
    })
    .addHelpText('after', HELP);
  const command = (name: string, description: string) =>
    root.command(name).description(description).argument('FILE', 'scenario file, YAML');

  command('check', 'read a scenario and say what it was understood to be')
    .addOption(json())
    .action((file: string) => {
      end.code = check(terminal, file);
    });
  sweeping(
    command('sweep', 'try every length of the scenario, or values of other keys, and decide'),
  )
    .option('--resume', 'go on with the points that the folder of --out holds')
    .option(
      '--shard <i/n>',
      'compute the i-th of n shares into the folder of --out, without deciding',
    )
    .action(async (file: string, options: SweepOptions) => {
      end.code = await sweep(terminal, file, options);
    });
  sweeping(
    command('merge', 'decide from the points that shards have left in the folder of --out'),
  ).action(async (file: string, options: SweepOptions) => {
    end.code = await merge(terminal, file, options);
  });
  computing(command('curve', 'one length at every speed'))
    .addOption(length())
    .action(async (file: string, options: CurveOptions) => {
      end.code = await curve(terminal, file, options);
    });
  computing(command('trace', 'one cycle at one speed against crank angle'))
    .addOption(length())
    .option('--speed <speed>', 'engine speed, for example 6000rpm (default: middle of the band)')
    .option(
      '--stations <list>',
      'where to look: mouth, port, exhaust, or a share of the way along a duct such as runner:50%',
    )
    .action(async (file: string, options: TraceOptions) => {
      end.code = await trace(terminal, file, options);
    });
  computing(
    command('inject', 'injectors near the valve, above the trumpet, or both, over speed'),
  ).action(async (file: string, options) => {
    end.code = await inject(terminal, file, options);
  });
  computing(command('compare', 'a run off the dyno beside the prediction, and what it tells'))
    .option('--measured <run>', 'CSV of the run: speed and torque, power or volumetric efficiency')
    .addOption(length())
    .option('--fit <list>', `fit one to three of: ${UNKNOWN_NAMES.join(', ')}`)
    .option('--noise <percent>', 'standard uncertainty of a measured figure (default: 1%)')
    .option('--write <file>', 'write a copy of the scenario with the values found')
    .action(async (file: string, options: CompareOptions) => {
      end.code = await compare(terminal, file, options);
    });
  root
    .command('prove')
    .description('every published value beside what this program computes (in the repository)')
    .addOption(json())
    .option('--out <folder>', 'write proof.json there (default: out; with --json none)')
    .option('--slow', 'slow studies too, many minutes')
    .action(async (options: ProveOptions) => {
      end.code = await prove(terminal, options);
    });
  return root;
}

const json = () => new Option('--json', 'print one JSON document and nothing else');
const length = () =>
  new Option('--length <length>', 'trumpet length, for example 180mm (default: as fitted now)');

function computing(command: Command): Command {
  return command
    .addOption(json())
    .option('--out <folder>', 'write result files there (default: out; with --json none)')
    .option(
      '--workers <number>',
      'worker threads (default: one a core); results do not depend on it',
    );
}

function sweeping(command: Command): Command {
  return computing(command)
    .option(
      '--vary <KEY=VALUES>',
      'vary another key in place of the length; twice for two keys. Values: a list, or FIRST..LAST/STEP, for example intake.trumpet.diameter=42mm..48mm/2mm',
      (text: string, earlier: string[] = []) => [...earlier, text],
    )
    .option(
      '--uncertainty',
      'carry the spreads of the inputs through: bands, odds, what to measure',
    )
    .option(
      '--samples <number>',
      'engines drawn from the spreads (default: 64, or as the file says)',
    )
    .option('--seed <number>', 'whole number that fixes the sample (default: 1)');
}

const HELP = `
Lengths run from the rim plane of the mouth to the throttle body face, bellmouth included.
Exit codes: 0 done, 1 failed or not settled, 2 the input is wrong, 130 stopped by Ctrl-C.`;

/** Tells an error once, without a stack trace where the user can mend it, and gives the exit code. */
function failed(terminal: Terminal, error: unknown): number {
  if (error instanceof CommanderError) return commandFailed(terminal, error);
  if (error instanceof ScenarioError) {
    const message = `${counted(error.issues.length)} in ${error.source}`;
    remark(terminal, `${error.message}\n${message}; nothing was computed.`);
    printJson(terminal, errorDocument('input', message, error.issues));
    return EXIT.inputWrong;
  }
  if (error instanceof InputError) return told(terminal, 'input', error.message, EXIT.inputWrong);
  if (error instanceof Interrupted) {
    remark(terminal, error.message);
    return error.exitCode;
  }
  if (error instanceof ComputationError) {
    return told(terminal, 'computation', error.message, EXIT.failed);
  }
  const fault = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return told(
    terminal,
    'computation',
    `a fault of the program, please report it: ${fault}`,
    EXIT.failed,
  );
}

/** Help and version end well; whatever else commander throws is a wrong command. */
function commandFailed(terminal: Terminal, error: CommanderError): number {
  if (error.exitCode === 0) return EXIT.done;
  if (error.code === 'commander.help') return EXIT.inputWrong;
  const message = error.message.replace(/^error: /, '');
  return told(terminal, 'input', `${message}; see trumpetry --help`, EXIT.inputWrong);
}

function told(
  terminal: Terminal,
  kind: 'input' | 'computation',
  message: string,
  code: number,
): number {
  remark(terminal, `error: ${message}`);
  printJson(terminal, errorDocument(kind, message));
  return code;
}

function counted(problems: number): string {
  return `${problems} problem${problems === 1 ? '' : 's'}`;
}
