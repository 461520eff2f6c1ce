/** The command line: its commands, their options, and how every end becomes an exit code. */
import { Command, CommanderError, Option } from 'commander';
import {
  ComputationError,
  errorDocument,
  InputError,
  PROGRAM,
  ScenarioError,
  STUDIES,
  type Study,
} from '../index.ts';
import { EXIT, Interrupted } from './exit.ts';
import { status } from './status.ts';
import { merge, type Options, runStudy } from './study.ts';
import { complain, printJson, type Terminal } from './terminal.ts';

/**
 * Runs one command.
 *
 * @param words what follows the program's name
 * @param added commands that do not come with the program
 * @returns the exit code
 */
export async function runCommandLine(
  words: readonly string[],
  streams: Streams,
  added: readonly AddCommand[] = [],
): Promise<number> {
  // Known before anything is parsed, so that a wrong option too is told in the form asked for.
  const terminal: Terminal = {
    ...streams,
    json: words.includes('--json'),
    quiet: words.includes('--quiet'),
  };
  const end = { code: EXIT.done as number };
  try {
    const root = program(terminal, end);
    for (const add of added) add(root, terminal, end);
    await root.parseAsync(words, { from: 'user' });
    return end.code;
  } catch (error) {
    return failed(terminal, error);
  }
}

type Streams = Omit<Terminal, 'json' | 'quiet'>;

/** Adds a command; its action leaves the exit code in `end`. */
export type AddCommand = (root: Command, terminal: Terminal, end: { code: number }) => void;

function program(terminal: Terminal, end: { code: number }): Command {
  const root = new Command('trumpetry')
    .description(
      'For individual throttle bodies: which trumpets to cut, what they gain and what they cost elsewhere; ' +
        'and how to fuel, balance and sense what breathes through them.',
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
  for (const study of STUDIES) {
    const command = studyCommand(root, study, study.name, study.help);
    if (study.stored) storing(command);
    command.action(async (file: string, options: Options) => {
      end.code = await runStudy(terminal, study, file, options);
    });
  }
  dealtOut(root, terminal, end);
  return root;
}

/** Commands on the points that shards leave in the folder of --out. */
function dealtOut(root: Command, terminal: Terminal, end: { code: number }): void {
  const dealt = STUDIES.filter(({ merge: name }) => name !== undefined);
  const plain = dealt.find(({ mergedBy }) => mergedBy === undefined)!;
  const marks = dealt.flatMap((study) =>
    study.options.filter(({ flags }) => flags.startsWith(`--${study.mergedBy} `)),
  );
  const either = { ...plain, options: [...plain.options, ...marks] };
  const asked = (options: Options) =>
    dealt.find(({ mergedBy }) => mergedBy !== undefined && options[mergedBy] !== undefined) ??
    plain;
  const deciding = 'decide from the points that shards have left in the folder of --out';
  studyCommand(root, either, plain.merge!, deciding).action(
    async (file: string, options: Options) => {
      end.code = await merge(terminal, asked(options), file, options);
    },
  );
  const telling = 'what is there, missing, failed in the folder of --out; computes nothing';
  studyCommand(root, either, 'status', telling).action((file: string, options: Options) => {
    end.code = status(terminal, asked(options), file, options);
  });
}

const json = () => new Option('--json', 'print one JSON document and nothing else');

/** A command on a scenario file with the options that its study describes. */
function studyCommand(root: Command, study: Study, name: string, help: string): Command {
  const command = root
    .command(name)
    .description(help)
    .argument('FILE', 'scenario file, YAML; - for standard input')
    .addOption(json());
  if (!study.reads) {
    command
      .option(
        '--out <folder>',
        'write result files there (default: out/NAME for NAME.yaml; with --json none)',
      )
      .option(
        '--workers <number>',
        'worker threads (default: one a core); results do not depend on it',
      )
      .option('--quiet', 'no progress and no remarks, only results and errors');
  }
  for (const { flags, help: words, many } of study.options) {
    const option = new Option(flags, words);
    if (many) option.argParser((text: string, earlier: string[] = []) => [...earlier, text]);
    command.addOption(option);
  }
  return command;
}

function storing(command: Command): void {
  command
    .option('--resume', 'go on with the points that the folder of --out holds')
    .option(
      '--shard <i/n>',
      'compute the i-th of n shares into the folder of --out, without deciding',
    );
}

const HELP = `
Lengths run from the rim plane of the mouth to the throttle body face, bellmouth included.
Exit codes: 0 done, 1 failed or not settled, 2 the input is wrong, 130 stopped by Ctrl-C.`;

/** Tells an error once, without a stack trace where the user can mend it, and gives the exit code. */
function failed(terminal: Terminal, error: unknown): number {
  if (error instanceof CommanderError) return commandFailed(terminal, error);
  if (error instanceof ScenarioError) {
    const message = `${counted(error.issues.length)} in ${error.source}`;
    complain(terminal, `${error.message}\n${message}; nothing was computed.`);
    printJson(terminal, errorDocument('input', message, error.issues));
    return EXIT.inputWrong;
  }
  if (error instanceof InputError) return told(terminal, 'input', error.message, EXIT.inputWrong);
  if (error instanceof Interrupted) {
    complain(terminal, error.message);
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
  complain(terminal, `error: ${message}`);
  printJson(terminal, errorDocument(kind, message));
  return code;
}

function counted(problems: number): string {
  return `${problems} problem${problems === 1 ? '' : 's'}`;
}
